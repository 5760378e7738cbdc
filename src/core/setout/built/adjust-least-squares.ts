/** One observation equation: what was observed, how sure it is, and how its value follows from the unknowns. */
export interface ObservationEquation {
  /** The unknowns that it depends on, by their places in the list of all. */
  readonly unknowns: readonly number[];
  readonly observed: number;
  /** Standard error, above 0. */
  readonly sigma: number;
  /** Its value where the unknowns are, and its gradient by `unknowns`, in their order. */
  at(values: readonly number[]): { readonly value: number; readonly gradient: readonly number[] };
}

/** How one observation came out. */
export interface ObservationResidual {
  /** Adjusted less observed, in the observation's own unit. */
  readonly residual: number;
  /** The share of an error in it that shows in its own residual, 0 … 1. */
  readonly redundancy: number;
  /** Baarda's w: the residual in its own standard errors; normally distributed with variance 1 when nothing is wrong. */
  readonly w: number;
}

/** Unknowns that make the weighted sum of squared residuals least. */
export interface LeastSquares {
  readonly values: readonly number[];
  /** Of the unknowns, by rows. */
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly ObservationResidual[];
  /** The weighted sum of squared residuals: near the number of observations less that of unknowns when nothing is wrong. */
  readonly sum: number;
  /** False where the iteration did not come to rest. */
  readonly isSettled: boolean;
}

const MOST_STEPS = 60;
const MOST_HALVINGS = 20;
/** The iteration rests when no unknown moves further, metres or radians. */
const AT_REST = 1e-7;
/** Below it nothing of an error in an observation shows: its w is only rounding. */
const LEAST_REDUNDANCY = 1e-9;

/** Lower triangle L of N = L·Lᵀ. Throws where the observations do not determine an unknown. */
function cholesky(normal: readonly Float64Array[]): readonly Float64Array[] {
  const lower = normal.map((row) => new Float64Array(row.length));
  for (const [i, row] of lower.entries()) {
    for (let j = 0; j <= i; j += 1) {
      const other = lower[j] as Float64Array;
      let sum = normal[i]?.[j] as number;
      for (let k = 0; k < j; k += 1) sum -= (row[k] as number) * (other[k] as number);
      if (j < i) row[j] = sum / (other[j] as number);
      else if (sum > 1e-12 * (normal[i]?.[i] as number)) row[i] = Math.sqrt(sum);
      else throw new Error(`leastSquares: the observations do not determine unknown ${i}`);
    }
  }
  return lower;
}

function solved(lower: readonly Float64Array[], right: Float64Array): Float64Array {
  const found = Float64Array.from(right);
  const size = found.length;
  for (let i = 0; i < size; i += 1) {
    const row = lower[i] as Float64Array;
    for (let k = 0; k < i; k += 1) found[i] = (found[i] as number) - (row[k] as number) * (found[k] as number);
    found[i] = (found[i] as number) / (row[i] as number);
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < size; k += 1) {
      found[i] = (found[i] as number) - (lower[k]?.[i] as number) * (found[k] as number);
    }
    found[i] = (found[i] as number) / (lower[i]?.[i] as number);
  }
  return found;
}

/** The equations where the unknowns are, each divided by its standard error. */
function weighted(equations: readonly ObservationEquation[], values: readonly number[]) {
  return equations.map(({ observed, sigma, unknowns, at }) => {
    const { value, gradient } = at(values);
    return { unknowns, residual: (value - observed) / sigma, gradient: gradient.map((slope) => slope / sigma) };
  });
}

type Weighted = ReturnType<typeof weighted>;

function sumOf(rows: Weighted): number {
  return rows.reduce((sum, { residual }) => sum + residual * residual, 0);
}

/** The normal equations: the lower triangle's factor, and the right-hand side. */
function normalEquations(rows: Weighted, count: number) {
  const normal = Array.from({ length: count }, () => new Float64Array(count));
  const right = new Float64Array(count);
  for (const { unknowns, gradient, residual } of rows) {
    for (const [p, i] of unknowns.entries()) {
      const slope = gradient[p] as number;
      right[i] = (right[i] as number) - slope * residual;
      const row = normal[i] as Float64Array;
      for (const [q, j] of unknowns.entries()) row[j] = (row[j] as number) + slope * (gradient[q] as number);
    }
  }
  return { lower: cholesky(normal), right };
}

/** The unknowns, with the weighted equations there. */
interface Iterate {
  readonly values: readonly number[];
  readonly rows: Weighted;
}

/** One step, halved until the sum of squares grows no more; undefined where no part of it helps. */
function stepped(
  equations: readonly ObservationEquation[],
  { values, rows }: Iterate,
  step: Float64Array,
): Iterate | undefined {
  const before = sumOf(rows);
  for (let halving = 0, share = 1; halving <= MOST_HALVINGS; halving += 1, share /= 2) {
    const next = values.map((value, i) => value + share * (step[i] as number));
    const there = { values: next, rows: weighted(equations, next) };
    if (sumOf(there.rows) <= before * (1 + 1e-12) + 1e-18) return there;
  }
  return undefined;
}

/** The variance that the covariance gives an equation with this gradient. */
export function varianceOf(
  covariance: readonly (readonly number[])[],
  unknowns: readonly number[],
  gradient: readonly number[],
): number {
  let sum = 0;
  for (const [p, i] of unknowns.entries()) {
    for (const [q, j] of unknowns.entries()) {
      sum += (gradient[p] as number) * (covariance[i]?.[j] as number) * (gradient[q] as number);
    }
  }
  return sum;
}

/**
 * Adjustment by least squares of observation equations, as surveying has it: Gauss-Newton from `start`, the step halved
 * where it goes too far. Throws where the equations leave an unknown open.
 *
 * Residuals, redundancy numbers and w: W. Baarda, A testing procedure for use in geodetic networks, 1968.
 */
export function leastSquares(start: readonly number[], equations: readonly ObservationEquation[]): LeastSquares {
  let there: Iterate = { values: start, rows: weighted(equations, start) };
  let isSettled = false;
  for (let count = 0; count < MOST_STEPS && !isSettled; count += 1) {
    const { lower, right } = normalEquations(there.rows, start.length);
    const step = solved(lower, right);
    isSettled = step.every((by) => Math.abs(by) <= AT_REST);

    const next = stepped(equations, there, step);
    if (next === undefined) break;
    there = next;
  }
  const { values, rows } = there;
  const { lower } = normalEquations(rows, start.length);
  const covariance = start.map((_, i) => {
    const unit = new Float64Array(start.length);
    unit[i] = 1;
    return Array.from(solved(lower, unit));
  });
  const residuals = rows.map(({ unknowns, gradient, residual }, i): ObservationResidual => {
    const redundancy = Math.min(1, Math.max(0, 1 - varianceOf(covariance, unknowns, gradient)));
    return {
      residual: residual * (equations[i]?.sigma as number),
      redundancy,
      w: redundancy < LEAST_REDUNDANCY ? 0 : residual / Math.sqrt(redundancy),
    };
  });
  return { values, covariance, residuals, sum: sumOf(rows), isSettled };
}
