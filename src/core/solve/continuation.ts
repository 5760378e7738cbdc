import type { Metres } from '../measure/quantity.ts';
import { normalizeAngle } from '../plane/pose.ts';
import { solveNewton } from './newton.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { evaluate, inconsistency, prepare, step } from './system.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/**
 * Step length of the targets on the way, metres (rotation times the radius of gyration), and radians that a body turns
 * between two of them.
 */
const GOAL_DISTANCE = 0.6;
const GOAL_TURN = 0.15;
const MOST_GOALS = 32;
/**
 * No free body moves further than this for each metre of the target: more means that the constraints are at full
 * stretch.
 */
const RATIO = 4;
/** When the constraints resist by more than this share of the step, they cannot follow. */
const RESIST = 0.05;
/** Residuals allowed on the way, metres or radians. */
const SLIP = 0.02;
/** A prediction that is off by more than this is made again in two halves, metres or radians; so often at the most. */
const MISS = 0.1;
const MOST_HALVINGS = 4;
/** Newton steps that bring the residuals back to zero at the end; 2 or 3 are usual, more where several bounds are met. */
const MOST_STEPS = 40;

/**
 * Moves the dragged bodies exactly to their targets when the rest can follow: numerical continuation along the straight
 * way. Each predictor step moves the others least and meets the constraints to first order; a corrector follows. False,
 * with `q` left anywhere, when the target is out of reach.
 */
export function trackToTarget(work: Workspace, targets: readonly DragTarget[]): boolean {
  const { start, q, weight, inverseWeight } = work;
  q.set(start);
  for (let i = 0; i < q.length; i++) inverseWeight[i] = 1 / (weight[i] as number);
  let count = 1;
  let distance = 0;
  for (const { x, y, angle, radiusOfGyration, at } of targets) {
    inverseWeight.fill(0, at, at + 3);
    const turn = normalizeAngle(angle - (start[at + 2] as number));
    const far = Math.hypot(x - (start[at] as number), y - (start[at + 1] as number));
    // The longer a body is, the further a turn moves what is constrained to it.
    distance = Math.max(distance, far + Math.max(radiusOfGyration, span(start, at)) * Math.abs(turn));
    count = Math.max(count, far / GOAL_DISTANCE, Math.abs(turn) / GOAL_TURN);
  }
  // Whole steps and a last one for what is left: a target that moves a little further does not change the steps before.
  const whole = Math.min(count, MOST_GOALS);
  for (let k = 1; k < whole + 1; k++) {
    if (!advance(work, { targets, distance, from: (k - 1) / whole, to: Math.min(1, k / whole), halvings: 0 }))
      return false;
  }
  for (const { x, y, angle, at } of targets) {
    q[at] = x;
    q[at + 1] = y;
    q[at + 2] = (start[at + 2] as number) + normalizeAngle(angle - (start[at + 2] as number));
  }
  return solveNewton(work, { steps: MOST_STEPS }).maxResidual <= RESIDUAL_TOLERANCE;
}

/** One step of the way: the targets from one fraction of it to another. */
interface Advance {
  readonly targets: readonly DragTarget[];
  /** The whole way, metres. */
  readonly distance: Metres;
  readonly from: number;
  readonly to: number;
  readonly halvings: number;
}

/**
 * A corrector, then a predictor step. Where the prediction misses by more than `MISS` the step is halved: constraints
 * that curve, or a bound that is met on the way, would otherwise let a body jump to another solution. False when the
 * constraints cannot follow.
 */
function advance(work: Workspace, { targets, distance, from, to, halvings }: Advance): boolean {
  const { system, start, q, inverseWeight, desiredStep, move } = work;
  if (from > 0) corrector(work);
  const before = Float64Array.from(q);
  desiredStep.fill(0);
  for (const { x, y, angle, at } of targets) {
    desiredStep[at] = (start[at] as number) + to * (x - (start[at] as number)) - (q[at] as number);
    desiredStep[at + 1] = (start[at + 1] as number) + to * (y - (start[at + 1] as number)) - (q[at + 1] as number);
    const turn = normalizeAngle(angle - (start[at + 2] as number));
    desiredStep[at + 2] = (start[at + 2] as number) + to * turn - (q[at + 2] as number);
  }
  evaluate(system, q);
  prepare(system, inverseWeight, 0);
  step(system, inverseWeight, desiredStep, move);
  const gone = distance * (to - from);
  const isTaut = inconsistency(system, move) > RESIST * gone + SLIP || longestMove(work) > RATIO * gone + 0.2;
  if (!isTaut) for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
  if (isTaut || evaluate(system, q) > MISS) {
    if (halvings === MOST_HALVINGS) return !isTaut;
    q.set(before);
    const middle = (from + to) / 2;
    return (
      advance(work, { targets, distance, from, to: middle, halvings: halvings + 1 }) &&
      advance(work, { targets, distance, from: middle, to, halvings: halvings + 1 })
    );
  }
  return true;
}

/**
 * The corrector: brings the residuals back to nearly zero before the next step, so that a body that turns far does not
 * jump to another solution.
 */
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

/** The longest way of any body in the step, metres (rotation times the radius of gyration). */
export function longestMove({ component, move }: Workspace): number {
  let most = 0;
  for (let b = 0; b < component.free.length; b++) {
    const turn = (component.free[b]?.radiusOfGyration ?? 1) * (move[3 * b + 2] as number);
    const far = Math.hypot(move[3 * b] as number, move[3 * b + 1] as number, turn);
    if (far > most) most = far;
  }
  return most;
}
