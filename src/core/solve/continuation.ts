import { normalizeAngle } from '../plane/pose.ts';
import { solveNewton } from './newton.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { evaluate, inconsistency, prepare, step } from './system.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/** How far off the goals on the way to a wish are, metres (turning by the lever), and radians that a body turns between. */
const GOAL_DISTANCE = 0.6;
const GOAL_TURN = 0.15;
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
export function trackToTarget(work: Workspace, targets: readonly DragTarget[]): boolean {
  const { system, start, q, weight, inverseWeight, desiredStep, move } = work;
  q.set(start);
  for (let i = 0; i < q.length; i++) inverseWeight[i] = 1 / (weight[i] as number);
  let count = 1;
  let distance = 0;
  for (const { x, y, angle, radiusOfGyration, at } of targets) {
    inverseWeight.fill(0, at, at + 3);
    const turn = normalizeAngle(angle - (start[at + 2] as number));
    const far = Math.hypot(x - (start[at] as number), y - (start[at + 1] as number));
    // A turn swings what hangs on it the further the longer it is.
    distance = Math.max(distance, far + Math.max(radiusOfGyration, span(start, at)) * Math.abs(turn));
    count = Math.max(count, far / GOAL_DISTANCE, Math.abs(turn) / GOAL_TURN);
  }
  // Whole goals and a last one on what is left: a hand that moves a little further does not change those before.
  const whole = Math.min(count, MOST_GOALS);
  for (let k = 1; k < whole + 1; k++) {
    if (k > 1) corrector(work);
    const part = Math.min(1, k / whole);
    const before = (k - 1) / whole;
    desiredStep.fill(0);
    for (const { x, y, angle, at } of targets) {
      desiredStep[at] = (start[at] as number) + part * (x - (start[at] as number)) - (q[at] as number);
      desiredStep[at + 1] = (start[at + 1] as number) + part * (y - (start[at + 1] as number)) - (q[at + 1] as number);
      const turn = normalizeAngle(angle - (start[at + 2] as number));
      desiredStep[at + 2] = (start[at + 2] as number) + part * turn - (q[at + 2] as number);
    }
    evaluate(system, q);
    prepare(system, inverseWeight, 0);
    step(system, inverseWeight, desiredStep, move);
    const gone = distance * (part - before);
    if (inconsistency(system, move) > RESIST * gone + SLIP || longestMove(work) > RATIO * gone + 0.2) return false;
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
  }
  for (const { x, y, angle, at } of targets) {
    q[at] = x;
    q[at + 1] = y;
    q[at + 2] = (start[at + 2] as number) + normalizeAngle(angle - (start[at + 2] as number));
  }
  return solveNewton(work, { steps: MOST_STEPS }).maxResidual <= RESIDUAL_TOLERANCE;
}

/** Brings the ties back to nearly zero before the next goal, so that what swings far does not slip into another shape. */
function corrector({ system, q, inverseWeight, desiredStep, move }: Workspace): void {
  for (let k = 0; k < 3 && evaluate(system, q) > SLIP; k++) {
    desiredStep.fill(0);
    prepare(system, inverseWeight, 0);
    step(system, inverseWeight, desiredStep, move);
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
  }
}

/** How far the farthest body is from one of them, metres. */
function span(start: Float64Array, at: number): number {
  let most = 0;
  for (let b = 0; b < start.length; b += 3) {
    const dx = (start[b] as number) - (start[at] as number);
    const dy = (start[b + 1] as number) - (start[at + 1] as number);
    most = Math.max(most, Math.hypot(dx, dy));
  }
  return most;
}

/** The longest way of any body in the step, metres (turning by the lever). */
export function longestMove({ component, move }: Workspace): number {
  let most = 0;
  for (let b = 0; b < component.free.length; b++) {
    const turn = (component.free[b]?.radiusOfGyration ?? 1) * (move[3 * b + 2] as number);
    const far = Math.hypot(move[3 * b] as number, move[3 * b + 1] as number, turn);
    if (far > most) most = far;
  }
  return most;
}
