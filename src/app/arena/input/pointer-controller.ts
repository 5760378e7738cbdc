import type { Point } from '../../../core/plane/point.ts';
import type { PointerInput } from '../../../desk/input.ts';
import { type Camera, groundOf } from '../camera.ts';
import { PICK_RADIUS } from './pick-radius.ts';

/** One pointer event in the arena's own pixels. */
export interface PointerSample {
  readonly id: number;
  readonly kind: string;
  readonly at: Point<'screen'>;
  /** 0 the first button or a touch, 1 the middle button, 2 the second button. */
  readonly button: number;
  readonly shift: boolean;
  readonly alt: boolean;
}

/** What pointers over the arena can do. */
export interface PointerTarget {
  camera(): Camera;
  pointer(touch: PointerInput): void;
  /** Whether a finger that goes down here takes hold of what is chosen; otherwise it pans. */
  grasps?(touch: PointerInput): boolean;
  pan(dx: number, dy: number): void;
  zoom(factor: number, about: Point<'screen'>): void;
  /** A finger that drags something is here; null: no finger does any more. */
  fingerAt?(at: Point<'screen'> | null): void;
  /** A finger stayed on one place. */
  menu?(at: Point<'screen'>): void;
}

export interface PointerController {
  /** While true, the first button pans instead of dragging things. */
  setPanMode(moving: boolean): void;
  down(sample: PointerSample): void;
  move(sample: PointerSample): void;
  up(sample: PointerSample): void;
  cancel(sample: PointerSample): void;
}

/** A finger that has moved this far no longer taps or holds, pixels. */
const STIR = 10;
/** A finger that stays this long asks for the menu, milliseconds. */
const LONG_PRESS_MS = 500;

/** What the pointer that went down first does. A `tap` does nothing yet: it becomes a pan when it stirs. */
interface Hand {
  readonly id: number;
  readonly down: PointerSample;
  doing: 'draw' | 'pan' | 'tap' | 'nothing';
  hasStirred: boolean;
}

/**
 * Sends pointers to the desk or to the camera. A mouse edits; its middle button and the space bar move the camera. One
 * finger drags what is chosen and pans everywhere else, a tap chooses, a long press asks for the menu, and two fingers
 * pinch: the second one cancels what the first has begun.
 */
export function createPointerController(target: PointerTarget): PointerController {
  const activePointers = new Map<number, PointerSample>();
  let isPanMode = false;
  let hand: Hand | null = null;
  let longPress: ReturnType<typeof setTimeout> | undefined;

  const inputOf = (phase: PointerInput['phase'], sample: PointerSample): PointerInput => {
    const camera = target.camera();
    return {
      phase,
      pointerId: sample.id,
      at: groundOf(camera, sample.at),
      pickRadius: (sample.kind === 'touch' ? PICK_RADIUS.finger : PICK_RADIUS.mouse) / camera.scale,
      isAdding: sample.shift,
      isSnapOff: sample.alt,
    };
  };
  const send = (phase: PointerInput['phase'], sample: PointerSample) => target.pointer(inputOf(phase, sample));
  const cancelHand = () => {
    clearTimeout(longPress);
    target.fingerAt?.(null);
    if (hand === null) return;
    if (hand.doing === 'draw') send('cancel', activePointers.get(hand.id) ?? hand.down);
    hand.doing = 'nothing';
  };
  const pinch = (sample: PointerSample, before: PointerSample) => {
    const other = [...activePointers.values()].find((each) => each.id !== sample.id);
    if (other === undefined) return;
    const middle = (a: Point<'screen'>): Point<'screen'> => ({ x: (a.x + other.at.x) / 2, y: (a.y + other.at.y) / 2 });
    const apart = (a: Point<'screen'>) => Math.hypot(a.x - other.at.x, a.y - other.at.y);
    const was = middle(before.at);
    const is = middle(sample.at);
    target.pan(is.x - was.x, is.y - was.y);
    if (apart(before.at) > 0) target.zoom(apart(sample.at) / apart(before.at), is);
  };
  const release = (sample: PointerSample, phase: 'up' | 'cancel') => {
    activePointers.delete(sample.id);
    if (hand?.id !== sample.id) return;
    clearTimeout(longPress);
    const { doing, down } = hand;
    hand = null;
    target.fingerAt?.(null);
    if (doing === 'draw') send(phase, sample);
    if (doing === 'tap' && phase === 'up') {
      send('down', down);
      send('up', down);
    }
  };
  const touched = (sample: PointerSample) => {
    const isGrasp = !isPanMode && (target.grasps?.(inputOf('down', sample)) ?? false);
    hand = { id: sample.id, down: sample, doing: isPanMode ? 'pan' : isGrasp ? 'draw' : 'tap', hasStirred: false };
    if (isGrasp) send('down', sample);
    longPress = setTimeout(() => {
      cancelHand();
      target.menu?.(sample.at);
    }, LONG_PRESS_MS);
  };

  return {
    setPanMode(now) {
      isPanMode = now;
    },
    down(sample) {
      activePointers.set(sample.id, sample);
      if (activePointers.size > 1) cancelHand();
      else if (sample.kind === 'touch') touched(sample);
      else if (isPanMode || sample.button === 1) {
        hand = { id: sample.id, down: sample, doing: 'pan', hasStirred: true };
      } else if (sample.button === 0) {
        hand = { id: sample.id, down: sample, doing: 'draw', hasStirred: true };
        send('down', sample);
      }
    },
    move(sample) {
      const before = activePointers.get(sample.id);
      if (before === undefined) {
        if (sample.kind !== 'touch') send('move', sample);
        return;
      }
      activePointers.set(sample.id, sample);
      if (activePointers.size === 2) return pinch(sample, before);
      if (hand?.id !== sample.id) return;
      if (!hand.hasStirred) {
        if (Math.hypot(sample.at.x - hand.down.at.x, sample.at.y - hand.down.at.y) < STIR) return;
        hand.hasStirred = true;
        clearTimeout(longPress);
        if (hand.doing === 'tap') hand.doing = 'pan';
      }
      if (hand.doing === 'pan') target.pan(sample.at.x - before.at.x, sample.at.y - before.at.y);
      if (hand.doing !== 'draw') return;
      send('move', sample);
      if (sample.kind === 'touch') target.fingerAt?.(sample.at);
    },
    up: (sample) => release(sample, 'up'),
    cancel: (sample) => release(sample, 'cancel'),
  };
}
