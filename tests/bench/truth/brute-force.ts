/** Whether constraints can be met at all: a plain Levenberg–Marquardt search from hundreds of scattered starts. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import type { ConstraintEquations, Problem } from '../../../src/core/solve/problem.ts';

const STARTS = 240;
const ROUNDS = 60;
const MET = 1e-8;

/** Solves the small dense system in place by elimination with partial pivoting; undefined where it is singular. */
function solveDense(a: number[][], b: number[]): number[] | undefined {
  const n = b.length;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(a[i]?.[k] ?? 0) > Math.abs(a[pivot]?.[k] ?? 0)) pivot = i;
    [a[k], a[pivot]] = [a[pivot] ?? [], a[k] ?? []];
    [b[k], b[pivot]] = [b[pivot] ?? 0, b[k] ?? 0];
    const row = a[k] ?? [];
    const head = row[k] ?? 0;
    if (Math.abs(head) < 1e-14) return undefined;
    for (let i = k + 1; i < n; i += 1) {
      const other = a[i] ?? [];
      const factor = (other[k] ?? 0) / head;
      if (factor === 0) continue;
      for (let j = k; j < n; j += 1) other[j] = (other[j] ?? 0) - factor * (row[j] ?? 0);
      b[i] = (b[i] ?? 0) - factor * (b[k] ?? 0);
    }
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    const row = a[k] ?? [];
    let sum = b[k] ?? 0;
    for (let j = k + 1; j < n; j += 1) sum -= (row[j] ?? 0) * (b[j] ?? 0);
    b[k] = sum / (row[k] ?? 1);
  }
  return b;
}

/** The residuals and their derivatives by the coordinates of the bodies that move. */
function rowsAt(problem: Problem, subset: readonly ConstraintEquations[], q: readonly number[]) {
  const moving = problem.bodies.filter(({ weight }) => Number.isFinite(weight));
  const index = new Map(moving.map(({ id }, i) => [id, 3 * i]));
  const poses = new Map(
    problem.bodies.map(({ id, pose }) => {
      const at = index.get(id);
      return [id, at === undefined ? pose : { x: q[at] ?? 0, y: q[at + 1] ?? 0, angle: q[at + 2] ?? 0 }] as const;
    }),
  );
  return subset.flatMap((each) =>
    each.residuals(each.bodies.map((id) => poses.get(id) ?? { x: 0, y: 0, angle: 0 })).map(({ value, gradient }) => {
      const row = new Array<number>(q.length).fill(0);
      each.bodies.forEach((id, i) => {
        const at = index.get(id);
        if (at === undefined) return;
        (gradient[i] ?? []).forEach((slope, k) => {
          row[at + k] = (row[at + k] ?? 0) + slope;
        });
      });
      return { value, row };
    }),
  );
}

const sumOf = (rows: readonly { readonly value: number }[]) => rows.reduce((sum, { value }) => sum + value * value, 0);

function search(problem: Problem, subset: readonly ConstraintEquations[], from: readonly number[]): boolean {
  let q = [...from];
  let rows = rowsAt(problem, subset, q);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (Math.max(...rows.map(({ value }) => Math.abs(value))) < MET) return true;
    const n = q.length;
    const a = Array.from({ length: n }, () => new Array<number>(n).fill(0));
    const b = new Array<number>(n).fill(0);
    for (const { value, row } of rows) {
      for (let i = 0; i < n; i += 1) {
        const gi = row[i] ?? 0;
        if (gi === 0) continue;
        b[i] = (b[i] ?? 0) - gi * value;
        const line = a[i] ?? [];
        for (let j = 0; j < n; j += 1) line[j] = (line[j] ?? 0) + gi * (row[j] ?? 0);
      }
    }
    for (let i = 0; i < n; i += 1) {
      const line = a[i] ?? [];
      line[i] = (line[i] ?? 0) + damping;
    }
    const move = solveDense(a, b);
    if (move === undefined) return false;
    const tried = q.map((value, i) => value + (move[i] ?? 0));
    const next = rowsAt(problem, subset, tried);
    if (sumOf(next) < sumOf(rows)) {
      q = tried;
      rows = next;
      damping = Math.max(1e-12, damping / 5);
    } else {
      damping *= 5;
      if (damping > 1e8) return false;
    }
  }
  return false;
}

/** Whether any start leads to a solution of the subset. */
export function canBeMet(problem: Problem, subset: readonly ConstraintEquations[], seed: number): boolean {
  const roll = seededRandom(seed);
  const moving = problem.bodies.filter(({ weight }) => Number.isFinite(weight));
  for (let k = 0; k < STARTS; k += 1) {
    const from = moving.flatMap(({ pose }) =>
      k === 0
        ? [pose.x, pose.y, pose.angle]
        : [pose.x + (roll() - 0.5) * 16, pose.y + (roll() - 0.5) * 16, (roll() - 0.5) * 2 * Math.PI],
    );
    if (search(problem, subset, from)) return true;
  }
  return false;
}

/** The number of constraints in a smallest set that cannot be met, looked for below `limit`; `limit` when there is none. */
export function smallestUnmet(problem: Problem, limit: number, seed: number): number {
  const all = problem.constraints;
  for (let size = 1; size < limit; size += 1) {
    for (let mask = 0; mask < 2 ** all.length; mask += 1) {
      const subset = all.filter((_, i) => (mask >> i) % 2 === 1);
      if (subset.length === size && !canBeMet(problem, subset, seed)) return size;
    }
  }
  return limit;
}
