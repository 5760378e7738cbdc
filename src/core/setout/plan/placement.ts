/**
 * One piece is determined by three observations. Everything here is linear in small errors: of the observations, and of the
 * pieces that lie already. Poses are errors (x, y, angle) in metres and radians.
 */

/** The linear form of one observation: its value changes by `own`·dx of the piece and by `held`·dx of the piece it is made to. */
export interface LinearObservation {
  readonly own: readonly [number, number, number];
  /** Index of the piece that lies already; −1: a wall, or nothing. */
  readonly index: number;
  readonly held: readonly [number, number, number];
  readonly sigma: number;
}

/** Covariance of the poses of all that lie, 3 rows and columns a piece, in the order of laying. */
export interface Covariance {
  readonly count: number;
  readonly values: Float64Array;
}

export const NOTHING_LAID: Covariance = { count: 0, values: new Float64Array(0) };

type Triple = readonly [number, number, number];
/** Rows of a 3 × 3 matrix. */
export type Matrix = readonly [Triple, Triple, Triple];

/** The covariance of two directions of two pieces that lie: aᵀ Σᵢⱼ b. */
export function covarianceOf(
  of: Covariance,
  [i, a]: readonly [number, Triple],
  [j, b]: readonly [number, Triple],
): number {
  if (i < 0 || j < 0) return 0;
  const width = 3 * of.count;
  let sum = 0;
  for (let r = 0; r < 3; r += 1) {
    const row = (3 * i + r) * width + 3 * j;
    const { values } = of;
    sum +=
      (a[r] as number) *
      ((values[row] as number) * b[0] + (values[row + 1] as number) * b[1] + (values[row + 2] as number) * b[2]);
  }
  return sum;
}

/** The inverse of the matrix of the rows; undefined where the observations do not determine a pose. */
export function inverse([a, b, c]: Matrix): Matrix | undefined {
  const bc: Triple = [b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2], b[0] * c[1] - b[1] * c[0]];
  const det = a[0] * bc[0] + a[1] * bc[1] + a[2] * bc[2];
  if (Math.abs(det) < 1e-6) return undefined;
  const ca: Triple = [c[1] * a[2] - c[2] * a[1], c[2] * a[0] - c[0] * a[2], c[0] * a[1] - c[1] * a[0]];
  const ab: Triple = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  return [
    [bc[0] / det, ca[0] / det, ab[0] / det],
    [bc[1] / det, ca[1] / det, ab[1] / det],
    [bc[2] / det, ca[2] / det, ab[2] / det],
  ];
}

export function timesMatrix(row: Triple, [a, b, c]: Matrix): Triple {
  return [
    row[0] * a[0] + row[1] * b[0] + row[2] * c[0],
    row[0] * a[1] + row[1] * b[1] + row[2] * c[1],
    row[0] * a[2] + row[1] * b[2] + row[2] * c[2],
  ];
}

/** aᵀ M b, with M as rows. */
export function quadratic(a: Triple, m: Matrix, b: Triple): number {
  const row = timesMatrix(a, m);
  return row[0] * b[0] + row[1] * b[1] + row[2] * b[2];
}

/** The noise of two observations together: their own, and what comes from where their held pieces lie. */
export function noise(of: Covariance, a: LinearObservation, b: LinearObservation): number {
  const own = a === b ? a.sigma ** 2 : 0;
  return own + covarianceOf(of, [a.index, a.held], [b.index, b.held]);
}

/** The least angle at which two observations should meet, radians: surveying handbooks ask for 60° to 120°. */
export const LEAST_MEETING = Math.PI / 3;

/** The three observations of one piece, solved. */
export interface Solved {
  readonly chosen: readonly [LinearObservation, LinearObservation, LinearObservation];
  /** How the pose answers to the three values. */
  readonly gain: Matrix;
  /** Covariance of the three values. */
  readonly noise: Matrix;
}

export function solved(of: Covariance, chosen: Solved['chosen']): Solved | undefined {
  const [a, b, c] = chosen;
  const gain = inverse([a.own, b.own, c.own]);
  if (gain === undefined) return undefined;
  const [ab, ac, bc] = [noise(of, a, b), noise(of, a, c), noise(of, b, c)];
  return {
    chosen,
    gain,
    noise: [
      [noise(of, a, a), ab, ac],
      [ab, noise(of, b, b), bc],
      [ac, bc, noise(of, c, c)],
    ],
  };
}

/** Variance of a direction of the new piece: vᵀ·dx. */
export function ownVariance({ gain, noise }: Solved, direction: Triple): number {
  const answers = timesMatrix(direction, gain);
  return quadratic(answers, noise, answers);
}

/** The covariance with the new piece as the last. */
export function extended(of: Covariance, by: Solved): Covariance {
  const { count } = of;
  const [old, width] = [3 * count, 3 * (count + 1)];
  const values = new Float64Array(width * width);
  for (let row = 0; row < old; row += 1) values.set(of.values.subarray(row * old, (row + 1) * old), row * width);
  const unit = (which: number): Triple => [which === 0 ? 1 : 0, which === 1 ? 1 : 0, which === 2 ? 1 : 0];
  for (let r = 0; r < 3; r += 1) {
    const answers = by.gain[r] as Triple;
    for (let column = 0; column < old; column += 1) {
      const value = by.chosen.reduce(
        (sum, each, i) =>
          sum -
          (answers[i] as number) *
            covarianceOf(of, [each.index, each.held], [Math.floor(column / 3), unit(column % 3)]),
        0,
      );
      values[(old + r) * width + column] = value;
      values[column * width + old + r] = value;
    }
    for (let c = 0; c < 3; c += 1) {
      values[(old + r) * width + old + c] = quadratic(answers, by.noise, by.gain[c] as Triple);
    }
  }
  return { count: count + 1, values };
}
