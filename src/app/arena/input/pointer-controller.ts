import type { Point } from '../../../core/plane/point.ts';
import type { PointerInput } from '../../../desk/input.ts';
import { type Camera, groundOf } from '../camera.ts';
import { PICK_RADIUS } from './pick-radius.ts';

/** One pointer event in the arena's own pixels. */
export interface PointerSample {
  readonly id: number;
  readonly kind: string;
  readonly at: Point<'screen'>;
  /** 0 the first button or a touch, 1 the middle button. */
  readonly button: number;
  readonly shift: boolean;
  readonly alt: boolean;
}

/** What pointers over the arena can do. */
export interface PointerTarget {
  camera(): Camera;
  pointer(touch: PointerInput): void;
  pan(dx: number, dy: number): void;
  zoom(factor: number, about: Point<'screen'>): void;
}

export interface PointerController {
  /** While true, the first button pans instead of dragging things. */
  setPanMode(moving: boolean): void;
  down(sample: PointerSample): void;
  move(sample: PointerSample): void;
  up(sample: PointerSample): void;
  cancel(sample: PointerSample): void;
}

/**
 * Sends pointers to the desk or to the camera: one pointer edits; the middle button, the space bar and two fingers move
 * the camera. A second finger cancels what the first has begun.
 */
export function createPointerController(target: PointerTarget): PointerController {
  const activePointers = new Map<number, PointerSample>();
  let isPanMode = false;
  let drawingId: number | null = null;
  let panningId: number | null = null;

  const send = (phase: PointerInput['phase'], sample: PointerSample) => {
    const camera = target.camera();
    target.pointer({
      phase,
      pointerId: sample.id,
      at: groundOf(camera, sample.at),
      pickRadius: (sample.kind === 'touch' ? PICK_RADIUS.finger : PICK_RADIUS.mouse) / camera.scale,
      isAdding: sample.shift,
      isSnapOff: sample.alt,
    });
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
    if (panningId === sample.id) panningId = null;
    if (drawingId !== sample.id) return;
    drawingId = null;
    send(phase, sample);
  };

  return {
    setPanMode(now) {
      isPanMode = now;
    },
    down(sample) {
      activePointers.set(sample.id, sample);
      if (activePointers.size > 1) {
        const first = drawingId === null ? undefined : activePointers.get(drawingId);
        if (first !== undefined) send('cancel', first);
        drawingId = null;
        panningId = null;
      } else if (isPanMode || sample.button === 1) {
        panningId = sample.id;
      } else if (sample.button === 0) {
        drawingId = sample.id;
        send('down', sample);
      }
    },
    move(sample) {
      const before = activePointers.get(sample.id);
      if (before === undefined) {
        if (sample.kind !== 'touch') send('move', sample);
        return;
      }
      if (panningId === sample.id) target.pan(sample.at.x - before.at.x, sample.at.y - before.at.y);
      else if (activePointers.size === 2) pinch(sample, before);
      else if (drawingId === sample.id) send('move', sample);
      activePointers.set(sample.id, sample);
    },
    up: (sample) => release(sample, 'up'),
    cancel: (sample) => release(sample, 'cancel'),
  };
}
