import {
  type LeastSquares,
  leastSquares,
  type ObservationEquation,
  type ObservationResidual,
  varianceOf,
} from './adjust-least-squares.ts';
import { normalQuantile } from './adjust-quantile.ts';

/**
 * A reading is tested only where at least so much of an error in it shows in its own residual. Below 0.1 an observation
 * counts as badly controlled (W. Förstner's classes of redundancy numbers, from memory).
 */
export const CONTROLLED = 0.1;

/** Of readings whose w is a smaller share of the largest, leaving one out cannot explain what is wrong. Estimate. */
const SHARE = 0.2;
/** No more are tried as the wrong one: each is a least squares of its own. */
const MOST_RIVALS = 16;

/** The least squares without the observations that are likely wrong. */
export interface SnoopedSquares {
  readonly fit: LeastSquares;
  /** Places of the equations that are likely wrong, in the order in which they were found. */
  readonly wrong: readonly number[];
  /**
   * Sets of places: in each, one is likely wrong, and the others of the observations do not tell which. The first is
   * likeliest, because without it everything is nearest to the drawing; it was left out as well.
   */
  readonly undecided: readonly (readonly number[])[];
}

/** The places of the equations that took no part. */
export function leftOut({ wrong, undecided }: Pick<SnoopedSquares, 'wrong' | 'undecided'>): readonly number[] {
  return [...wrong, ...undecided.map(([first]) => first as number)];
}

export interface SnoopingLimits {
  /** No |w| above it when nothing is wrong. */
  readonly critical: number;
  /** One reading is more likely wrong than another when the sum of squares without it is less by more than this. */
  readonly apart: number;
}

/**
 * By how much the sum of squares without the reading that is wrong lies below that without any of so many others, but for the
 * chance `level`. In a linear adjustment that is the difference of their w². For one blunder of any size and two w of any
 * correlation, the chance that a good reading has the larger w² by c or more is at most that of a normal value above √c:
 * w_i − w_j has mean (1 − ρ)δ and variance 2(1 − ρ), and w_i + w_j is near 2δ.
 */
export function apartBy(level: number, tests: number): number {
  return normalQuantile(Math.min(0.5, level / Math.max(1, tests - 1))) ** 2;
}

/** How one observation stands to the least squares, whether it took part in them or not. */
export function standingOf(
  { fit }: Pick<SnoopedSquares, 'fit'>,
  equation: ObservationEquation,
): { readonly residual: number; readonly w: number } {
  const { value, gradient } = equation.at(fit.values);
  const residual = value - equation.observed;
  const spread = Math.sqrt(equation.sigma ** 2 + varianceOf(fit.covariance, equation.unknowns, gradient));
  return { residual, w: residual / spread };
}

function without(equations: readonly ObservationEquation[], left: readonly number[]): readonly number[] {
  return equations.flatMap((_, i) => (left.includes(i) ? [] : [i]));
}

/** The least squares of some of the equations; the others have no residual. */
function fitOf(
  start: readonly number[],
  equations: readonly ObservationEquation[],
  left: readonly number[],
): LeastSquares {
  const kept = without(equations, left);
  const part = leastSquares(
    start,
    kept.map((i) => equations[i] as ObservationEquation),
  );
  const none: ObservationResidual = { residual: 0, redundancy: 0, w: 0 };
  return { ...part, residuals: equations.map((_, i) => part.residuals[kept.indexOf(i)] ?? none) };
}

/**
 * Data snooping (Baarda 1968): while some w lies above the critical value, the observation is left out without which the rest
 * agrees best, and all is adjusted again. Each is left out on trial from the start, because a large blunder bends what is
 * linear. Only equations named by `tested` are asked.
 */
export function snoopedSquares(
  start: readonly number[],
  equations: readonly ObservationEquation[],
  { tested, critical, apart }: SnoopingLimits & { readonly tested: readonly number[] },
): SnoopedSquares {
  const wrong: number[] = [];
  const undecided: (readonly number[])[] = [];
  for (;;) {
    const left = leftOut({ wrong, undecided });
    const fit = fitOf(start, equations, left);
    const asked = tested.filter((i) => !left.includes(i));
    const size = (i: number): number => Math.abs(fit.residuals[i]?.w ?? 0);
    const worst = Math.max(0, ...asked.filter((i) => (fit.residuals[i]?.redundancy ?? 0) >= CONTROLLED).map(size));
    if (worst <= critical) return { fit, wrong, undecided };
    const tried = asked
      .filter((i) => size(i) >= SHARE * worst)
      .toSorted((a, b) => size(b) - size(a))
      .slice(0, MOST_RIVALS)
      .map((i) => ({ i, sum: fitOf(start, equations, [...left, i]).sum }))
      .toSorted((a, b) => a.sum - b.sum);
    const least = tried[0]?.sum ?? 0;
    const rivals = tried.filter(({ sum }) => sum <= least + apart).map(({ i }) => i);
    if (rivals.length === 1) wrong.push(...rivals);
    else undecided.push(rivals);
  }
}
