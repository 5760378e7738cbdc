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

/** What a hand over the arena can do. */
export interface PointerTarget {
  camera(): Camera;
  pointer(touch: PointerInput): void;
  pan(dx: number, dy: number): void;
  zoom(factor: number, about: Point<'screen'>): void;
}

export interface PointerController {
  /** While true, the first button moves the picture instead of the things. */
  setPanMode(moving: boolean): void;
  down(finger: PointerSample): void;
  move(finger: PointerSample): void;
  up(finger: PointerSample): void;
  cancel(finger: PointerSample): void;
}

/**
 * Sorts pointers into touches of the desk and movements of the camera: one pointer touches, the middle button, the
 * space bar and two fingers move. A second finger takes back what the first has begun.
 */
export function createPointerController(target: PointerTarget): PointerController {
  const activePointers = new Map<number, PointerSample>();
  let isPanMode = false;
  let drawingId: number | null = null;
  let panningId: number | null = null;

  const send = (phase: PointerInput['phase'], finger: PointerSample) => {
    const camera = target.camera();
    target.pointer({
      phase,
      pointerId: finger.id,
      at: groundOf(camera, finger.at),
      pickRadius: (finger.kind === 'touch' ? PICK_RADIUS.finger : PICK_RADIUS.mouse) / camera.scale,
      isAdding: finger.shift,
      isSnapOff: finger.alt,
    });
  };
  const pinch = (finger: PointerSample, before: PointerSample) => {
    const other = [...activePointers.values()].find((each) => each.id !== finger.id);
    if (other === undefined) return;
    const middle = (a: Point<'screen'>): Point<'screen'> => ({ x: (a.x + other.at.x) / 2, y: (a.y + other.at.y) / 2 });
    const apart = (a: Point<'screen'>) => Math.hypot(a.x - other.at.x, a.y - other.at.y);
    const was = middle(before.at);
    const is = middle(finger.at);
    target.pan(is.x - was.x, is.y - was.y);
    if (apart(before.at) > 0) target.zoom(apart(finger.at) / apart(before.at), is);
  };
  const release = (finger: PointerSample, phase: 'up' | 'cancel') => {
    activePointers.delete(finger.id);
    if (panningId === finger.id) panningId = null;
    if (drawingId !== finger.id) return;
    drawingId = null;
    send(phase, finger);
  };

  return {
    setPanMode(now) {
      isPanMode = now;
    },
    down(finger) {
      activePointers.set(finger.id, finger);
      if (activePointers.size > 1) {
        const first = drawingId === null ? undefined : activePointers.get(drawingId);
        if (first !== undefined) send('cancel', first);
        drawingId = null;
        panningId = null;
      } else if (isPanMode || finger.button === 1) {
        panningId = finger.id;
      } else if (finger.button === 0) {
        drawingId = finger.id;
        send('down', finger);
      }
    },
    move(finger) {
      const before = activePointers.get(finger.id);
      if (before === undefined) {
        if (finger.kind !== 'touch') send('move', finger);
        return;
      }
      if (panningId === finger.id) target.pan(finger.at.x - before.at.x, finger.at.y - before.at.y);
      else if (activePointers.size === 2) pinch(finger, before);
      else if (drawingId === finger.id) send('move', finger);
      activePointers.set(finger.id, finger);
    },
    up: (finger) => release(finger, 'up'),
    cancel: (finger) => release(finger, 'cancel'),
  };
}
