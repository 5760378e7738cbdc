/** Other arrangements of the same bodies, from which a search may find a solution that the present one hides. */
import type { Body } from './problem.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { solveComponent } from './solve-component.ts';
import type { Workspace } from './workspace.ts';

/** Arrangements that are tried for a few bodies; the more bodies, the fewer, because each costs more. */
const MOST_STARTS = 48;
const FEWEST_STARTS = 8;
const SHARED = 160;
/** How many times more are tried before a set is named as one that cannot be met. */
const THOROUGH = 3;
/** Bodies are scattered this far around where they are, metres, beside their own extent. */
const SCATTER = 6;

export type Effort = 'usual' | 'thorough';

interface Extent {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

function extentOf(bodies: readonly Body[]): Extent {
  const x = bodies.reduce((sum, { pose }) => sum + pose.x, 0) / bodies.length;
  const y = bodies.reduce((sum, { pose }) => sum + pose.y, 0) / bodies.length;
  const radius = bodies.reduce((most, { pose }) => Math.max(most, Math.hypot(pose.x - x, pose.y - y)), 0);
  return { x, y, radius };
}

/** A number from 0 to 1 for a start and a coordinate: an integer hash, so the same every time and nowhere related. */
function scattered(start: number, coordinate: number): number {
  let bits = Math.imul(start + 1, 0x9e3779b1) ^ Math.imul(coordinate + 1, 0x85ebca77);
  bits = Math.imul(bits ^ (bits >>> 15), 0x2c1b3c6d);
  bits = Math.imul(bits ^ (bits >>> 12), 0x297a2d39);
  return ((bits ^ (bits >>> 15)) >>> 0) / 2 ** 32;
}

/** The coordinates with every body placed anew by a function of its present ones. */
function placed(start: Float64Array, place: (x: number, y: number, angle: number, b: number) => readonly number[]) {
  const q = Float64Array.from(start);
  for (let b = 0; b < q.length; b += 3) {
    q.set(place(start[b] as number, start[b + 1] as number, start[b + 2] as number, b / 3), b);
  }
  return q;
}

/**
 * Coordinates to start from, the present ones first: turned on the spot, mirrored about both axes, folded together, drawn
 * apart, each body mirrored by itself, and scattered.
 */
export function* starts({ start, component }: Workspace, effort: Effort = 'usual'): Generator<Float64Array> {
  const { x: cx, y: cy, radius } = extentOf([...component.free, ...component.grounded]);
  const count = component.free.length;
  const usual = Math.min(MOST_STARTS, Math.max(FEWEST_STARTS, Math.round(SHARED / Math.max(1, count))));
  const most = effort === 'thorough' ? THOROUGH * usual : usual;
  let made = 0;
  const next = (q: Float64Array) => {
    made += 1;
    return q;
  };
  yield next(Float64Array.from(start));
  for (const turn of [Math.PI / 2, Math.PI, -Math.PI / 2]) yield next(placed(start, (x, y, a) => [x, y, a + turn]));
  yield next(placed(start, (x, y, a) => [2 * cx - x, y, Math.PI - a]));
  yield next(placed(start, (x, y, a) => [x, 2 * cy - y, -a]));
  yield next(placed(start, (x, y, a) => [cx + (x - cx) / 8, cy + (y - cy) / 8, a]));
  yield next(placed(start, (x, y, a) => [cx + (x - cx) * 4, cy + (y - cy) * 4, a]));
  for (let b = 0; b < count && made < most; b += 1) {
    yield next(placed(start, (x, y, a, i) => (i === b ? [2 * cx - x, 2 * cy - y, a] : [x, y, a])));
    if (made < most) yield next(placed(start, (x, y, a, i) => [x, y, i === b ? a + Math.PI / 2 : a]));
  }
  const reach = radius + SCATTER;
  for (let k = 1; made < most; k += 1) {
    const at = (b: number, dimension: number) => scattered(k, 3 * b + dimension);
    yield next(
      placed(start, (_x, _y, _a, b) => [
        cx + (2 * at(b, 0) - 1) * reach,
        cy + (2 * at(b, 1) - 1) * reach,
        (2 * at(b, 2) - 1) * Math.PI,
      ]),
    );
  }
}

/** The result of a search from several arrangements. */
export interface MultiStartResult {
  readonly isMet: boolean;
  readonly tried: number;
}

/** Solves the component from one arrangement after the other until one comes to a solution, which is left in `q`. */
export function solveFromStarts(work: Workspace, effort: Effort = 'usual'): MultiStartResult {
  let tried = 0;
  for (const from of starts(work, effort)) {
    tried += 1;
    if (solveComponent(work, from).maxResidual <= RESIDUAL_TOLERANCE) return { isMet: true, tried };
  }
  return { isMet: false, tried };
}

/** How far the bodies are from where they were, squared and by weight: metres, rotation by the radius of gyration. */
function distanceMoved({ start, q, weight }: Workspace): number {
  let sum = 0;
  for (let i = 0; i < q.length; i += 1) {
    const off = (q[i] as number) - (start[i] as number);
    const least = i % 3 === 2 ? Math.atan2(Math.sin(off), Math.cos(off)) : off;
    sum += (weight[i] as number) * least * least;
  }
  return sum;
}

/** Of the solutions that the arrangements lead to, the one that moves least: left in `q`; false when there is none. */
export function nearestSolution(work: Workspace): boolean {
  let best: Float64Array | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const from of starts(work)) {
    if (solveComponent(work, from).maxResidual > RESIDUAL_TOLERANCE) continue;
    const far = distanceMoved(work);
    if (far < least) {
      least = far;
      best = Float64Array.from(work.q);
    }
  }
  if (best !== undefined) work.q.set(best);
  return best !== undefined;
}
