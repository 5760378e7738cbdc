import { normalizeAngle } from '../plane/pose.ts';
import { longestMove } from './continuation.ts';
import { MAX_STEP, stepScale, sumOfSquares } from './newton.ts';
import { stiffness } from './stiffness.ts';
import { evaluate, prepare, step } from './system.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/** How much heavier a dragged body is than the others. */
const DRAG_WEIGHT = 1e4;
/** Distance of the intermediate targets, metres (rotation times the radius of gyration). */
const GOAL_DISTANCE = 0.4;
/** Most rounds in which a target is followed; 5 to 10 are usual where it can be reached. */
const MOST_ROUNDS = 64;
/** The drag ends when a step moves nothing by more than this, metres. */
const FOLLOWED = 1e-6;
/** A multiplier below this share of a weight, per metre, is too small to matter for curvature. */
const SLACK = 0.3;
/**
 * At most this many rounds after that, in which the others no longer pull, until nothing moves by more than `AT_REST`.
 */
const POLISH = 8;
const AT_REST = 1e-9;

/** The curvature of the constraints under load, and the multipliers for which it was worked out. */
interface StepState {
  stiffness: Float64Array;
  multipliers: Float64Array;
  /** Longest step of any body, metres. */
  readonly maxStep: number;
  /** Weights during the drag, and the smallest of them. */
  readonly weight: Float64Array;
  readonly smallestWeight: number;
  /** Workspace for the correction of the residuals. */
  readonly restoringStep: Float64Array;
}

/** A long step, shortened: a part of the way to the targets, but all of the correction of the residuals. */
function shorten(work: Workspace, { maxStep, restoringStep }: StepState): void {
  const { system, inverseWeight, move, trial } = work;
  const part = stepScale(move, maxStep);
  if (part === 1) return;
  trial.fill(0);
  step(system, inverseWeight, trial, restoringStep);
  const backPart = stepScale(restoringStep, maxStep);
  for (let i = 0; i < move.length; i++) {
    move[i] = part * (move[i] as number) + (1 - part) * backPart * (restoringStep[i] as number);
  }
}

/**
 * Into `move`: the step from `q` that meets the constraints to first order and is nearest to `desiredStep` by weight. Where
 * constraints resist strongly, the coordinates that they curve are made heavier, and the step is worked out again.
 */
function constrainedStep(work: Workspace, state: StepState): void {
  const { component, system, inverseWeight, desiredStep, move, trial } = work;
  for (let again = 0; ; again++) {
    for (let i = 0; i < desiredStep.length; i++) {
      const weight = state.weight[i] as number;
      inverseWeight[i] = 1 / (weight + (state.stiffness[i] as number));
      // A body with infinite weight moves just as desired.
      const eased = weight === Number.POSITIVE_INFINITY ? 1 : weight * (inverseWeight[i] as number);
      trial[i] = (desiredStep[i] as number) * eased;
    }
    prepare(system, inverseWeight, 0);
    step(system, inverseWeight, trial, move);
    let harder = false;
    for (let r = 0; r < system.multipliers.length && !harder; r++) {
      const multiplier = Math.abs(system.multipliers[r] as number);
      harder = multiplier > 2 * Math.abs(state.multipliers[r] as number) + SLACK * state.smallestWeight;
    }
    // Weights that were raised for an earlier load would only slow the rest.
    if (harder || 4 * sumOfSquares(system.multipliers) < sumOfSquares(state.multipliers)) {
      state.multipliers.set(system.multipliers);
      state.stiffness = stiffness(
        system,
        component.free.map((body) => body.radiusOfGyration),
        state.multipliers,
      );
    }
    if (!harder || again === 2) break;
  }
  shorten(work, state);
}

/**
 * Writes the step from `q` towards the target into `desiredStep`, at most `limit` metres; returns the whole distance, metres.
 */
function stepTowards(
  { x, y, angle, radiusOfGyration, at }: DragTarget,
  { q, desiredStep }: Workspace,
  limit: number,
): number {
  const dx = x - (q[at] as number);
  const dy = y - (q[at + 1] as number);
  const turn = normalizeAngle(angle - (q[at + 2] as number));
  const distance = Math.hypot(dx, dy, radiusOfGyration * turn);
  const part = distance > limit ? limit / distance : 1;
  desiredStep[at] = part * dx;
  desiredStep[at + 1] = part * dy;
  desiredStep[at + 2] = part * turn;
  return distance;
}

function farthest(targets: readonly DragTarget[], work: Workspace, limit: number): number {
  let most = 0;
  for (const target of targets) most = Math.max(most, stepTowards(target, work, limit));
  return most;
}

/** Weights with the dragged bodies made heavy, and heavier by `turning` against rotation. */
export function dragWeights({ weight }: Workspace, targets: readonly DragTarget[], turning: number): Float64Array {
  const made = Float64Array.from(weight);
  for (const { at } of targets) {
    for (let k = 0; k < 3; k++) made[at + k] = DRAG_WEIGHT * (k === 2 ? turning : 1) * (made[at + k] as number);
  }
  return made;
}

/**
 * From the start towards the targets as far as the constraints allow, the other bodies staying near where they were. A
 * far target is followed over intermediate targets, so that what is constrained to the body comes along; once the
 * constraints resist, the target itself is used, and the bodies come to rest where they are nearest to it. `weight`: by
 * coordinate, dragged bodies heavy.
 */
export function dragTowards(work: Workspace, targets: readonly DragTarget[], weight: Float64Array): void {
  const { system, q, desiredStep, move } = work;
  q.set(work.start);
  const start = Float64Array.from(q);
  const all = farthest(targets, work, Number.POSITIVE_INFINITY);
  const state: StepState = {
    stiffness: new Float64Array(q.length),
    multipliers: new Float64Array(system.multipliers.length),
    maxStep: Math.max(MAX_STEP, all / 8),
    weight,
    smallestWeight: weight.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY),
    restoringStep: new Float64Array(q.length),
  };
  let goalDistance = Math.max(GOAL_DISTANCE, all / 24);
  let left = Number.POSITIVE_INFINITY;
  let restRounds = 0;
  for (let round = 0; round < MOST_ROUNDS && restRounds <= POLISH; round++) {
    for (let i = 0; i < q.length; i++) desiredStep[i] = (start[i] as number) - (q[i] as number);
    const distance = farthest(targets, work, goalDistance);
    if (distance > goalDistance && left - distance < goalDistance / 2) goalDistance = Number.POSITIVE_INFINITY;
    left = distance;
    evaluate(system, q);
    constrainedStep(work, state);
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
    const far = longestMove(work);
    if (restRounds > 0 && far < AT_REST) break;
    // The others pull the dragged body back a little: once it has arrived, let them stay where they are.
    if (restRounds > 0 || far < FOLLOWED) {
      restRounds += 1;
      start.set(q);
    }
  }
}
