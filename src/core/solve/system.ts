import type { Pose } from '../plane/pose.ts';
import type { Component } from './components.ts';
import { type Envelope, envelope, factor, substitute } from './envelope.ts';
import type { ConstraintEquations, Residual } from './problem.ts';

/** A component as arrays. Free body b has the coordinates 3b, 3b+1 and 3b+2: x, y and angle. */
export interface System {
  readonly constraints: readonly ConstraintEquations[];
  /** For each constraint, the indices of its bodies in `poses`. */
  readonly bodyIndices: readonly (readonly number[])[];
  /** The free bodies first, whose poses are written over, then the grounded ones. */
  readonly poses: readonly Pose[];
  /** For each constraint, the poses of its bodies: the same objects. */
  readonly lent: readonly (readonly Pose[])[];
  readonly free: number;
  /** For each row, the constraint that it belongs to. */
  readonly constraintOf: readonly number[];
  readonly residuals: Float64Array;
  /** Entries row by row: entry e is about free body `bodies[e]`, with its gradient at 3e, 3e+1 and 3e+2. */
  readonly starts: Int32Array;
  readonly bodies: Int32Array;
  readonly jacobian: Float64Array;
  /** For each row and each body of its constraint in turn, the entry; −1 for a grounded body. */
  readonly entryOf: Int32Array;
  /** For each free body, the entries about it and the rows that those are in, by rising row. */
  readonly about: readonly { readonly entries: Int32Array; readonly rows: Int32Array }[];
  readonly matrix: Envelope;
  /** The Lagrange multiplier of each row in the last step. */
  readonly multipliers: Float64Array;
}

/** Throws when a constraint's gradient does not have one entry for each of its bodies. */
export function systemOf(component: Component): System {
  const all = [...component.free, ...component.grounded];
  const bodyIndex = new Map(all.map((body, i) => [body.id, i]));
  const free = component.free.length;
  const poses = all.map(({ pose: { x, y, angle } }): Pose => ({ x, y, angle }));
  const bodyIndices = component.constraints.map((constraint) => constraint.bodies.map((id) => bodyIndex.get(id) ?? -1));
  const constraintOf: number[] = [];
  const starts = [0];
  const bodies: number[] = [];
  const entryOf: number[] = [];
  const about = component.free.map(() => ({ entries: [] as number[], rows: [] as number[] }));
  const first: number[] = [];
  component.constraints.forEach((constraint, t) => {
    const indices = bodyIndices[t] ?? [];
    const movers = [...new Set(indices)].filter((at) => at < free);
    for (const row of constraint.residuals(indices.map((at) => poses[at] as Pose))) {
      if (row.gradient.length !== indices.length) {
        throw new Error(
          `constraint ${constraint.id} has ${indices.length} bodies, but a gradient for ${row.gradient.length}`,
        );
      }
      const r = constraintOf.length;
      let firstRow = r;
      for (const at of indices) entryOf.push(at < free ? bodies.length + movers.indexOf(at) : -1);
      for (const body of movers) {
        const mine = about[body];
        if (mine === undefined) continue;
        mine.entries.push(bodies.length);
        mine.rows.push(r);
        firstRow = Math.min(firstRow, mine.rows[0] ?? r);
        bodies.push(body);
      }
      starts.push(bodies.length);
      constraintOf.push(t);
      first.push(firstRow);
    }
  });
  return {
    constraints: component.constraints,
    bodyIndices,
    poses,
    lent: bodyIndices.map((indices) => indices.map((at) => poses[at] as Pose)),
    free,
    constraintOf,
    residuals: new Float64Array(constraintOf.length),
    starts: Int32Array.from(starts),
    bodies: Int32Array.from(bodies),
    entryOf: Int32Array.from(entryOf),
    jacobian: new Float64Array(3 * bodies.length),
    about: about.map((each) => ({ entries: Int32Array.from(each.entries), rows: Int32Array.from(each.rows) })),
    matrix: envelope(Int32Array.from(first)),
    multipliers: new Float64Array(constraintOf.length),
  };
}

type Writable = { -readonly [K in keyof Pose]: Pose[K] };

/** Fills in residuals and gradients at the coordinates `q`; returns the largest residual. */
export function evaluate(system: System, q: Float64Array): number {
  const { poses, jacobian, entryOf, residuals, constraints, lent } = system;
  for (let b = 0; b < system.free; b++) {
    const pose: Writable = poses[b] as Pose;
    pose.x = q[3 * b] as number;
    pose.y = q[3 * b + 1] as number;
    pose.angle = q[3 * b + 2] as number;
  }
  jacobian.fill(0);
  let r = 0;
  let next = 0;
  let worst = 0;
  for (let t = 0; t < constraints.length; t++) {
    const rows = (constraints[t] as ConstraintEquations).residuals(lent[t] as readonly Pose[]);
    for (let k = 0; k < rows.length; k++) {
      const { value, gradient } = rows[k] as Residual;
      residuals[r++] = value;
      const size = Math.abs(value);
      // A residual that is not a number counts as infinitely large, and stays so.
      if (!(size <= worst)) worst = Number.isNaN(size) ? Number.POSITIVE_INFINITY : size;
      for (let i = 0; i < gradient.length; i++) {
        const entry = entryOf[next++] as number;
        if (entry < 0) continue;
        const [gx, gy, gt] = gradient[i] as readonly [number, number, number];
        jacobian[3 * entry] = (jacobian[3 * entry] as number) + gx;
        jacobian[3 * entry + 1] = (jacobian[3 * entry + 1] as number) + gy;
        jacobian[3 * entry + 2] = (jacobian[3 * entry + 2] as number) + gt;
      }
    }
  }
  return worst;
}

/** Builds and factors J·M·Jᵀ, where `inverseWeight` is the diagonal of M; `damping` is added (0: none). */
export function prepare(system: System, inverseWeight: Float64Array, damping: number): void {
  const { matrix, jacobian } = system;
  matrix.cells.fill(0);
  for (let b = 0; b < system.free; b++) {
    const { entries, rows } = system.about[b] as System['about'][number];
    const mx = inverseWeight[3 * b] as number;
    const my = inverseWeight[3 * b + 1] as number;
    const mt = inverseWeight[3 * b + 2] as number;
    for (let i = 0; i < entries.length; i++) {
      const e = 3 * (entries[i] as number);
      const gx = mx * (jacobian[e] as number);
      const gy = my * (jacobian[e + 1] as number);
      const gt = mt * (jacobian[e + 2] as number);
      const row = matrix.rowOffset[rows[i] as number] as number;
      for (let j = 0; j <= i; j++) {
        const f = 3 * (entries[j] as number);
        const cell = row + (rows[j] as number);
        matrix.cells[cell] =
          (matrix.cells[cell] as number) +
          gx * (jacobian[f] as number) +
          gy * (jacobian[f + 1] as number) +
          gt * (jacobian[f + 2] as number);
      }
    }
  }
  factor(matrix, damping);
}

/**
 * The step that meets the rows to first order and is otherwise nearest to `desiredStep` d: p = d − M·Jᵀ·λ with J·M·Jᵀ·λ
 * = F + J·d. Call `prepare` first. Written into `into`.
 */
export function step(system: System, inverseWeight: Float64Array, desiredStep: Float64Array, into: Float64Array): void {
  const { residuals, starts, bodies, jacobian } = system;
  const side = system.multipliers;
  side.set(residuals);
  for (let r = 0; r < side.length; r++) {
    let sum = side[r] as number;
    for (let e = starts[r] as number; e < (starts[r + 1] as number); e++) {
      const at = 3 * (bodies[e] as number);
      for (let k = 0; k < 3; k++) sum += (jacobian[3 * e + k] as number) * (desiredStep[at + k] as number);
    }
    side[r] = sum;
  }
  substitute(system.matrix, side);
  into.set(desiredStep);
  for (let r = 0; r < side.length; r++) {
    const multiplier = side[r] as number;
    if (multiplier === 0) continue;
    for (let e = starts[r] as number; e < (starts[r + 1] as number); e++) {
      const at = 3 * (bodies[e] as number);
      for (let k = 0; k < 3; k++) {
        into[at + k] =
          (into[at + k] as number) - (inverseWeight[at + k] as number) * (jacobian[3 * e + k] as number) * multiplier;
      }
    }
  }
}

/**
 * The largest residual that a step leaves in rows which the factorisation left out, to first order: the inconsistent
 * part.
 */
export function inconsistency(system: System, move: Float64Array): number {
  const { residuals, starts, bodies, jacobian, matrix } = system;
  let most = 0;
  for (let r = 0; r < residuals.length; r++) {
    if (matrix.inverse[r] !== 0 || matrix.size[r] === 0) continue;
    let sum = residuals[r] as number;
    for (let e = starts[r] as number; e < (starts[r + 1] as number); e++) {
      const at = 3 * (bodies[e] as number);
      for (let k = 0; k < 3; k++) sum += (jacobian[3 * e + k] as number) * (move[at + k] as number);
    }
    most = Math.max(most, Math.abs(sum));
  }
  return most;
}
