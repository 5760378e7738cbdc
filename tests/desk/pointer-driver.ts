import { point } from '../../src/core/plane/point.ts';
import type { Desk, Stroke, Touch } from '../../src/desk/desk.ts';

/** A scripted hand: says where its finger goes, and after each phase `after` looks at the desk. */
export interface Hand {
  down(x: number, y: number): Hand;
  move(x: number, y: number): Hand;
  /** Lifts the finger where it is. */
  up(): Hand;
  cancel(): Hand;
  tap(x: number, y: number): Hand;
  /** Down, four moves on the straight way, up. */
  drag(from: readonly [number, number], to: readonly [number, number]): Hand;
  /** `Ctrl+Shift+Z`, `Escape`, `n`. */
  press(keys: string): Hand;
}

export interface HandOptions {
  readonly pointer?: number;
  readonly reach?: number;
  readonly adding?: true;
  readonly loose?: true;
  readonly after?: (desk: Desk) => void;
}

/** `Ctrl+Shift+Z` as a stroke. */
export function strokeOf(keys: string): Stroke {
  const parts = keys.split('+');
  const held = new Set(parts.slice(0, -1));
  return {
    key: parts.at(-1) ?? '',
    mod: held.has('Ctrl'),
    shift: held.has('Shift'),
    alt: held.has('Alt'),
  };
}

export function hand(desk: Desk, options: HandOptions = {}): Hand {
  const { pointer = 1, reach = 0.3, after = () => undefined } = options;
  let [atX, atY] = [0, 0];
  const phase = (name: Touch['phase'], x: number, y: number): Hand => {
    [atX, atY] = [x, y];
    desk.touch({
      phase: name,
      pointer,
      at: point(x, y),
      reach,
      adding: options.adding ?? false,
      loose: options.loose ?? false,
    });
    after(desk);
    return self;
  };
  const self: Hand = {
    down: (x, y) => phase('down', x, y),
    move: (x, y) => phase('move', x, y),
    up: () => phase('up', atX, atY),
    cancel: () => phase('cancel', atX, atY),
    tap: (x, y) => self.down(x, y).up(),
    drag: ([x, y], [endX, endY]) => {
      self.down(x, y);
      for (const part of [0.25, 0.5, 0.75, 1]) self.move(x + (endX - x) * part, y + (endY - y) * part);
      return self.up();
    },
    press: (keys) => {
      desk.press(strokeOf(keys));
      after(desk);
      return self;
    },
  };
  return self;
}
