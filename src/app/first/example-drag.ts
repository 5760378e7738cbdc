import type { Course } from '../../core/course/course.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Desk } from '../../desk/desk.ts';

/** No hand has this pointer. */
const POINTER = -1;
/** How far the pole is dragged, metres, and how long each part of the example takes, milliseconds. */
const FAR = 2.5;
const PARTS = { arrive: 700, go: 1500, rest: 700, back: 1100 } as const;
const WHOLE = PARTS.arrive + PARTS.go + PARTS.rest + PARTS.back;

/** A drag that nobody makes: what it takes hold of, and where it is after a time. */
export interface ExampleDrag {
  /** Ground under the mark after so many milliseconds; null once it is over, when everything is as it was. */
  at(elapsed: number): Point | null;
  /** Ends it early: everything is as it was. */
  stop(): void;
}

/** The pole to drag: the second of the first two that are ridden one after the other. */
function poleToDrag(desk: Desk): { readonly key: string; readonly from: Point } | undefined {
  const { survey } = desk.state();
  const key = survey.line.gaps[0]?.keys[1];
  const piece = survey.pieces.find((each) => each.key === key);
  return piece === undefined || piece.piece.fixed ? undefined : { key: piece.key, from: piece.pose };
}

/** Towards the middle of the arena, where there is room. */
function goal(from: Point, { arena }: Course): Point {
  const [dx, dy] = [arena.length / 2 - from.x, arena.width / 2 - from.y];
  const far = Math.hypot(dx, dy);
  return far < 1e-9 ? { x: from.x, y: from.y + FAR } : { x: from.x + (dx / far) * FAR, y: from.y + (dy / far) * FAR };
}

/** Slow at both ends. */
function eased(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * (3 - 2 * t);
}

function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/**
 * Takes hold of one pole with the desk's own gesture, drags it towards the middle and back, and cancels: no step of the
 * history, nothing saved, and what was chosen is chosen again. Undefined where there is no such pole, or somebody is
 * dragging. `pickRadius` in metres.
 */
export function exampleDrag(desk: Desk, pickRadius: number): ExampleDrag | undefined {
  const pole = poleToDrag(desk);
  const { chosen, gesture, tape, course } = desk.state();
  if (pole === undefined || gesture !== null || tape !== null) return undefined;
  const { key, from } = pole;
  const to = goal(from, course);
  const send = (phase: 'down' | 'move' | 'cancel', at: Point) =>
    desk.pointer({ phase, pointerId: POINTER, at, pickRadius, isAdding: false, isSnapOff: true });
  let held: 'not-yet' | 'held' | 'over' = 'not-yet';
  const stop = () => {
    if (held === 'held') {
      send('cancel', from);
      desk.choose(chosen);
    }
    held = 'over';
  };
  return {
    stop,
    at(elapsed) {
      // Somebody has changed the course meanwhile, by another way than an input to this page.
      if (held === 'over' || (held === 'not-yet' && desk.state().course !== course)) return null;
      if (elapsed >= WHOLE) {
        stop();
        return null;
      }
      if (elapsed < PARTS.arrive) return between(to, from, eased(elapsed / PARTS.arrive));
      if (held === 'not-yet') {
        held = 'held';
        desk.choose([key]);
        send('down', from);
      }
      const out = eased((elapsed - PARTS.arrive) / PARTS.go);
      const home = eased((elapsed - PARTS.arrive - PARTS.go - PARTS.rest) / PARTS.back);
      const at = between(from, to, out - home);
      send('move', at);
      return at;
    },
  };
}
