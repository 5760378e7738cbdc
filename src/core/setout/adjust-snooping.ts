import { type LeastSquares, leastSquares, type ObservationEquation, varianceOf } from './adjust-least-squares.ts';
import { normalQuantile } from './adjust-quantile.ts';

/**
 * A reading is tested only where at least so much of an error in it shows in its own residual. Below 0.1 an observation
 * counts as badly controlled (W. Förstner's classes of redundancy numbers, from memory).
 */
export const CONTROLLED = 0.1;

/** Below it a reading is not even a rival of one that is suspected: its w says more of the plan than of the tape. */
const BARELY_CONTROLLED = 0.01;

/** The least squares without the observations that are likely wrong. */
export interface SnoopedSquares {
  readonly fit: LeastSquares;
  /** Places of the equations that were left out, in the order in which they were found. */
  readonly wrong: readonly number[];
  /** One of these is likely wrong, and nothing tells which; they are all kept. Empty: none. */
  readonly undecided: readonly number[];
}

export interface SnoopingLimits {
  /** No |w| above it when nothing is wrong. */
  readonly critical: number;
  /** One reading is more likely wrong than another when its w² is larger by more than this. */
  readonly apart: number;
}

/**
 * By how much the w² of the reading that is wrong exceeds that of any of so many others, but for the chance `level`. For
 * one blunder of any size and two w of any correlation, the chance that a good reading has the larger w² by c or more is
 * at most that of a normal value above √c: w_i − w_j has mean (1 − ρ)δ and variance 2(1 − ρ), and w_i + w_j is near 2δ.
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

/**
 * Data snooping (Baarda 1968): the observation with the largest w above the critical value is left out, and all is
 * adjusted again, until none is above it. Only equations named by `tested` are asked; where others of them could as well
 * be the wrong one, none is left out.
 */
export function snoopedSquares(
  start: readonly number[],
  equations: readonly ObservationEquation[],
  { tested, critical, apart }: SnoopingLimits & { readonly tested: readonly number[] },
): SnoopedSquares {
  const wrong: number[] = [];
  for (;;) {
    const kept = equations.flatMap((_, i) => (wrong.includes(i) ? [] : [i]));
    const part = leastSquares(
      start,
      kept.map((i) => equations[i] as ObservationEquation),
    );
    const none = { residual: 0, redundancy: 0, w: 0 };
    const fit = {
      ...part,
      residuals: equations.map((_, i) => part.residuals[kept.indexOf(i)] ?? none),
    };
    const asked = tested.filter((i) => !wrong.includes(i));
    const size = (i: number): number => Math.abs(fit.residuals[i]?.w ?? 0);
    const redundancy = (i: number): number => fit.residuals[i]?.redundancy ?? 0;
    const worst = asked
      .filter((i) => redundancy(i) >= CONTROLLED)
      .reduce<number | undefined>((most, i) => (most === undefined || size(i) > size(most) ? i : most), undefined);
    if (worst === undefined || size(worst) <= critical) return { fit, wrong, undecided: [] };
    const rivals = asked.filter((i) => redundancy(i) >= BARELY_CONTROLLED && size(i) ** 2 >= size(worst) ** 2 - apart);
    if (rivals.length > 1) return { fit, wrong, undecided: rivals };
    wrong.push(worst);
  }
}
