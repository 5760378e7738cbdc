import { wrapped } from '../plane/pose.ts';
import { land } from './newton.ts';
import { MET } from './problem.ts';
import { evaluate, prepare, refused, step } from './system.ts';
import type { Wished, Workbench } from './workspace.ts';

/** How far off the goals on the way to a wish are, metres (turning by the lever), and radians that a body turns between. */
const REACH = 0.6;
const TURN = 0.15;
const MOST_GOALS = 32;
/** What is led along goes no further for each metre that the hand leads it: more means that the ties are stretched taut. */
const RATIO = 4;
/** Ties that resist by more than this share of the way cannot follow. */
const RESIST = 0.05;
/** Ties may be off by this on the way, metres or radians. */
const SLIP = 0.02;
/** Steps that may bring the ties back to zero at the end; 2 or 3 are usual. */
const MOST_STEPS = 9;

/**
 * Puts the wished bodies exactly where they are wished, if the rest can come along: from goal to goal on the straight way,
 * each time with the least motion of the others that meets the ties to first order. False, with `q` left anywhere, when
 * they cannot: the wish is out of reach.
 */
export function lead(bench: Workbench, wishes: readonly Wished[]): boolean {
  const { system, home, q, weight, mobility, pull, move } = bench;
  q.set(home);
  for (let i = 0; i < q.length; i++) mobility[i] = 1 / (weight[i] as number);
  let count = 1;
  let way = 0;
  for (const { x, y, angle, lever, at } of wishes) {
    mobility.fill(0, at, at + 3);
    const turn = wrapped(angle - (home[at + 2] as number));
    const far = Math.hypot(x - (home[at] as number), y - (home[at + 1] as number));
    // A turn swings what hangs on it the further the longer it is.
    way = Math.max(way, far + Math.max(lever, span(home, at)) * Math.abs(turn));
    count = Math.max(count, far / REACH, Math.abs(turn) / TURN);
  }
  // Whole goals and a last one on what is left: a hand that moves a little further does not change those before.
  const whole = Math.min(count, MOST_GOALS);
  for (let k = 1; k < whole + 1; k++) {
    if (k > 1) steady(bench);
    const part = Math.min(1, k / whole);
    const before = (k - 1) / whole;
    pull.fill(0);
    for (const { x, y, angle, at } of wishes) {
      pull[at] = (home[at] as number) + part * (x - (home[at] as number)) - (q[at] as number);
      pull[at + 1] = (home[at + 1] as number) + part * (y - (home[at + 1] as number)) - (q[at + 1] as number);
      const turn = wrapped(angle - (home[at + 2] as number));
      pull[at + 2] = (home[at + 2] as number) + part * turn - (q[at + 2] as number);
    }
    evaluate(system, q);
    prepare(system, mobility, 0);
    step(system, mobility, pull, move);
    const gone = way * (part - before);
    if (refused(system, move) > RESIST * gone + SLIP || longest(bench) > RATIO * gone + 0.2) return false;
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
  }
  for (const { x, y, angle, at } of wishes) {
    q[at] = x;
    q[at + 1] = y;
    q[at + 2] = (home[at + 2] as number) + wrapped(angle - (home[at + 2] as number));
  }
  return land(bench, { steps: MOST_STEPS }).worst <= MET;
}

/** Brings the ties back to nearly zero before the next goal, so that what swings far does not slip into another shape. */
function steady({ system, q, mobility, pull, move }: Workbench): void {
  for (let k = 0; k < 3 && evaluate(system, q) > SLIP; k++) {
    pull.fill(0);
    prepare(system, mobility, 0);
    step(system, mobility, pull, move);
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
  }
}

/** How far the farthest body is from one of them, metres. */
function span(home: Float64Array, at: number): number {
  let most = 0;
  for (let b = 0; b < home.length; b += 3) {
    const dx = (home[b] as number) - (home[at] as number);
    const dy = (home[b + 1] as number) - (home[at + 1] as number);
    most = Math.max(most, Math.hypot(dx, dy));
  }
  return most;
}

/** The longest way of any body in the step, metres (turning by the lever). */
export function longest({ group, move }: Workbench): number {
  let most = 0;
  for (let b = 0; b < group.free.length; b++) {
    const turn = (group.free[b]?.lever ?? 1) * (move[3 * b + 2] as number);
    const far = Math.hypot(move[3 * b] as number, move[3 * b + 1] as number, turn);
    if (far > most) most = far;
  }
  return most;
}
