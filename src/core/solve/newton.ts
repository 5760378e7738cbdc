import { RESIDUAL_TOLERANCE } from './problem.ts';
import { evaluate, prepare, step } from './system.ts';
import type { Workspace } from './workspace.ts';

/** Newton steps that bring the residuals to zero; 3 to 6 are usual. */
const MAX_ITERATIONS = 60;
/** Residuals are reduced to this where floating point allows it. */
const FINE = 1e-13;
/** No body goes further in one step, metres, nor turns by more, radians. */
export const MAX_STEP = 0.5;
const MAX_TURN = 0.5;
/** Damping of a step that did not help, relative to the size of each row (Levenberg–Marquardt). */
const MIN_DAMPING = 1e-8;
const MAX_DAMPING = 1e4;

/** The result for a component: the largest residual, and whether no further step would reduce it. */
export interface SolveResult {
  readonly maxResidual: number;
  readonly stalled: boolean;
}

/**
 * The share of a step that is short enough: no body turns by more than `MAX_TURN` or moves further than `maxStep` metres.
 */
export function stepScale(move: Float64Array, maxStep: number): number {
  let most = 1;
  for (let i = 0; i < move.length; i++) {
    const size = Math.abs(move[i] as number) / (i % 3 === 2 ? MAX_TURN : maxStep);
    if (size > most) most = size;
  }
  return 1 / most;
}

export function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i] as number) ** 2;
  return sum;
}

/**
 * From `q` to residuals of zero with the least motion: damped Gauss–Newton steps of least norm, halved until they help.
 * `inverseWeight`: by coordinate, how freely it moves. `steps`: the most that are tried.
 */
export function solveNewton(
  work: Workspace,
  { steps = MAX_ITERATIONS }: { readonly steps?: number } = {},
): SolveResult {
  const { system, q, inverseWeight, desiredStep, move, trial } = work;
  desiredStep.fill(0);
  let maxResidual = evaluate(system, q);
  let sum = sumOfSquares(system.residuals);
  let damping = 0;
  for (let round = 0; round < steps; round++) {
    if (maxResidual <= FINE) break;
    prepare(system, inverseWeight, damping);
    step(system, inverseWeight, desiredStep, move);
    const whole = stepScale(move, MAX_STEP);
    let part = 1;
    let better = false;
    for (; part > 0.05 && !better; part /= 2) {
      for (let i = 0; i < q.length; i++) trial[i] = (q[i] as number) + part * whole * (move[i] as number);
      const reached = evaluate(system, trial);
      const left = sumOfSquares(system.residuals);
      if (left < sum) {
        better = true;
        const gained = 1 - left / sum;
        q.set(trial);
        maxResidual = reached;
        sum = left;
        if (gained < 1e-9 && maxResidual > RESIDUAL_TOLERANCE) return { maxResidual, stalled: true };
      }
    }
    if (better) {
      damping = part >= 0.5 ? (damping > MIN_DAMPING ? damping / 10 : 0) : Math.max(damping * 10, MIN_DAMPING);
      continue;
    }
    // Residuals and gradients are those of the last trial: bring back those of the best.
    maxResidual = evaluate(system, q);
    if (maxResidual <= RESIDUAL_TOLERANCE || damping >= MAX_DAMPING)
      return { maxResidual, stalled: maxResidual > RESIDUAL_TOLERANCE };
    damping = Math.max(damping * 10, MIN_DAMPING);
  }
  return { maxResidual, stalled: false };
}
