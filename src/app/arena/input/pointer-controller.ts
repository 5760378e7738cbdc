import type { Point } from '../../../core/plane/point.ts';
import type { Touch } from '../../../desk/desk.ts';
import { type Camera, groundOf } from '../camera.ts';
import { REACH } from './pick-radius.ts';

/** One pointer event in the arena's own pixels. */
export interface Finger {
  readonly id: number;
  readonly kind: string;
  readonly at: Point<'screen'>;
  /** 0 the first button or a touch, 1 the middle button. */
  readonly button: number;
  readonly shift: boolean;
  readonly alt: boolean;
}

/** What a hand over the arena can do. */
export interface Reached {
  camera(): Camera;
  touch(touch: Touch): void;
  pan(dx: number, dy: number): void;
  zoom(factor: number, about: Point<'screen'>): void;
}

export interface Hand {
  /** While true, the first button moves the picture instead of the things. */
  hold(moving: boolean): void;
  down(finger: Finger): void;
  move(finger: Finger): void;
  up(finger: Finger): void;
  cancel(finger: Finger): void;
}

/**
 * Sorts pointers into touches of the desk and movements of the camera: one pointer touches, the middle button, the
 * space bar and two fingers move. A second finger takes back what the first has begun.
 */
export function createHand(reached: Reached): Hand {
  const fingers = new Map<number, Finger>();
  let moving = false;
  let touching: number | null = null;
  let panning: number | null = null;

  const tell = (phase: Touch['phase'], finger: Finger) => {
    const camera = reached.camera();
    reached.touch({
      phase,
      pointer: finger.id,
      at: groundOf(camera, finger.at),
      reach: (finger.kind === 'touch' ? REACH.finger : REACH.mouse) / camera.scale,
      adding: finger.shift,
      loose: finger.alt,
    });
  };
  const pinch = (finger: Finger, before: Finger) => {
    const other = [...fingers.values()].find((each) => each.id !== finger.id);
    if (other === undefined) return;
    const middle = (a: Point<'screen'>): Point<'screen'> => ({ x: (a.x + other.at.x) / 2, y: (a.y + other.at.y) / 2 });
    const apart = (a: Point<'screen'>) => Math.hypot(a.x - other.at.x, a.y - other.at.y);
    const was = middle(before.at);
    const is = middle(finger.at);
    reached.pan(is.x - was.x, is.y - was.y);
    if (apart(before.at) > 0) reached.zoom(apart(finger.at) / apart(before.at), is);
  };
  const left = (finger: Finger, phase: 'up' | 'cancel') => {
    fingers.delete(finger.id);
    if (panning === finger.id) panning = null;
    if (touching !== finger.id) return;
    touching = null;
    tell(phase, finger);
  };

  return {
    hold(now) {
      moving = now;
    },
    down(finger) {
      fingers.set(finger.id, finger);
      if (fingers.size > 1) {
        const first = touching === null ? undefined : fingers.get(touching);
        if (first !== undefined) tell('cancel', first);
        touching = null;
        panning = null;
      } else if (moving || finger.button === 1) {
        panning = finger.id;
      } else if (finger.button === 0) {
        touching = finger.id;
        tell('down', finger);
      }
    },
    move(finger) {
      const before = fingers.get(finger.id);
      if (before === undefined) {
        if (finger.kind !== 'touch') tell('move', finger);
        return;
      }
      if (panning === finger.id) reached.pan(finger.at.x - before.at.x, finger.at.y - before.at.y);
      else if (fingers.size === 2) pinch(finger, before);
      else if (touching === finger.id) tell('move', finger);
      fingers.set(finger.id, finger);
    },
    up: (finger) => left(finger, 'up'),
    cancel: (finger) => left(finger, 'cancel'),
  };
}
