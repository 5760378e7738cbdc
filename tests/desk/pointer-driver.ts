import { point } from '../../src/core/plane/point.ts';
import type { Desk } from '../../src/desk/desk.ts';
import type { KeyPress, PointerInput } from '../../src/desk/input.ts';

/** A scripted pointer: says where it goes, and after each phase `after` looks at the desk. */
export interface PointerDriver {
  down(x: number, y: number): PointerDriver;
  move(x: number, y: number): PointerDriver;
  /** Lifts the finger where it is. */
  up(): PointerDriver;
  cancel(): PointerDriver;
  tap(x: number, y: number): PointerDriver;
  /** Down, four moves on the straight way, up. */
  drag(from: readonly [number, number], to: readonly [number, number]): PointerDriver;
  /** `Ctrl+Shift+Z`, `Escape`, `n`. */
  press(keys: string): PointerDriver;
}

export interface PointerDriverOptions {
  readonly pointer?: number;
  readonly pickRadius?: number;
  readonly adding?: true;
  readonly loose?: true;
  readonly after?: (desk: Desk) => void;
}

/** `Ctrl+Shift+Z` as a stroke. */
export function keyPressFor(keys: string): KeyPress {
  const parts = keys.split('+');
  const held = new Set(parts.slice(0, -1));
  return {
    key: parts.at(-1) ?? '',
    mod: held.has('Ctrl'),
    shift: held.has('Shift'),
    alt: held.has('Alt'),
  };
}

export function pointerDriver(desk: Desk, options: PointerDriverOptions = {}): PointerDriver {
  const { pointer = 1, pickRadius = 0.3, after = () => undefined } = options;
  let [atX, atY] = [0, 0];
  const phase = (name: PointerInput['phase'], x: number, y: number): PointerDriver => {
    [atX, atY] = [x, y];
    desk.pointer({
      phase: name,
      pointerId: pointer,
      at: point(x, y),
      pickRadius,
      isAdding: options.adding ?? false,
      isSnapOff: options.loose ?? false,
    });
    after(desk);
    return self;
  };
  const self: PointerDriver = {
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
      desk.press(keyPressFor(keys));
      after(desk);
      return self;
    },
  };
  return self;
}
