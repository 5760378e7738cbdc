import type { Pose } from '../plane/pose.ts';
import { type Envelope, envelope, factor, substitute } from './envelope.ts';
import type { Group } from './groups.ts';
import type { Tie } from './problem.ts';

/** A group as arrays. Free body b has the coordinates 3b, 3b+1 and 3b+2: x, y and angle. */
export interface System {
  readonly ties: readonly Tie[];
  /** For each tie, where its bodies are in `poses`. */
  readonly places: readonly (readonly number[])[];
  /** The free bodies first, then the still ones. */
  readonly poses: Pose[];
  readonly free: number;
  /** For each row, the tie that it belongs to. */
  readonly tieOf: readonly number[];
  readonly values: Float64Array;
  /** Entries row by row: entry e is about free body `bodies[e]`, with its slopes at 3e, 3e+1 and 3e+2. */
  readonly starts: Int32Array;
  readonly bodies: Int32Array;
  readonly slopes: Float64Array;
  /** For each free body, the entries about it and the rows that those are in, by rising row. */
  readonly about: readonly { readonly entries: Int32Array; readonly rows: Int32Array }[];
  readonly matrix: Envelope;
  /** How hard each row pulled in the last step. */
  readonly force: Float64Array;
}

/** Throws when a tie's gradient does not have one slope for each of its bodies. */
export function systemOf(group: Group): System {
  const all = [...group.free, ...group.still];
  const placeOf = new Map(all.map((body, i) => [body.id, i]));
  const free = group.free.length;
  const poses = all.map((body) => body.pose);
  const places = group.ties.map((tie) => tie.bodies.map((id) => placeOf.get(id) ?? -1));
  const tieOf: number[] = [];
  const starts = [0];
  const bodies: number[] = [];
  const about = group.free.map(() => ({ entries: [] as number[], rows: [] as number[] }));
  const first: number[] = [];
  group.ties.forEach((tie, t) => {
    const place = places[t] ?? [];
    const movers = [...new Set(place)].filter((at) => at < free);
    for (const row of tie.rows(place.map((at) => poses[at] as Pose))) {
      if (row.gradient.length !== place.length) {
        throw new Error(`tie ${tie.id} has ${place.length} bodies, but a gradient for ${row.gradient.length}`);
      }
      const r = tieOf.length;
      let reach = r;
      for (const body of movers) {
        const mine = about[body];
        if (mine === undefined) continue;
        mine.entries.push(bodies.length);
        mine.rows.push(r);
        reach = Math.min(reach, mine.rows[0] ?? r);
        bodies.push(body);
      }
      starts.push(bodies.length);
      tieOf.push(t);
      first.push(reach);
    }
  });
  return {
    ties: group.ties,
    places,
    poses,
    free,
    tieOf,
    values: new Float64Array(tieOf.length),
    starts: Int32Array.from(starts),
    bodies: Int32Array.from(bodies),
    slopes: new Float64Array(3 * bodies.length),
    about: about.map((each) => ({ entries: Int32Array.from(each.entries), rows: Int32Array.from(each.rows) })),
    matrix: envelope(Int32Array.from(first)),
    force: new Float64Array(tieOf.length),
  };
}

/** Fills in values and slopes at the coordinates `q`; the answer is the largest residual. */
export function evaluate(system: System, q: Float64Array): number {
  const { poses, slopes, starts, bodies, values } = system;
  for (let b = 0; b < system.free; b++) {
    poses[b] = { x: q[3 * b] as number, y: q[3 * b + 1] as number, angle: q[3 * b + 2] as number };
  }
  slopes.fill(0);
  let r = 0;
  let worst = 0;
  system.ties.forEach((tie, t) => {
    const place = system.places[t] ?? [];
    for (const row of tie.rows(place.map((at) => poses[at] as Pose))) {
      values[r] = row.value;
      const size = Math.abs(row.value);
      if (!(size <= worst)) worst = size;
      for (let i = 0; i < place.length; i++) {
        const body = place[i] as number;
        const gradient = row.gradient[i];
        if (body >= system.free || gradient === undefined) continue;
        let e = starts[r] as number;
        while (bodies[e] !== body) e += 1;
        slopes[3 * e] = (slopes[3 * e] as number) + gradient[0];
        slopes[3 * e + 1] = (slopes[3 * e + 1] as number) + gradient[1];
        slopes[3 * e + 2] = (slopes[3 * e + 2] as number) + gradient[2];
      }
      r += 1;
    }
  });
  return worst;
}

/** Builds and factors J·M·Jᵀ, where `mobility` is the diagonal of M; `lift` damps (0: not at all). */
export function prepare(system: System, mobility: Float64Array, lift: number): void {
  const { matrix, slopes } = system;
  matrix.cells.fill(0);
  for (let b = 0; b < system.free; b++) {
    const { entries, rows } = system.about[b] as System['about'][number];
    const mx = mobility[3 * b] as number;
    const my = mobility[3 * b + 1] as number;
    const mt = mobility[3 * b + 2] as number;
    for (let i = 0; i < entries.length; i++) {
      const e = 3 * (entries[i] as number);
      const gx = mx * (slopes[e] as number);
      const gy = my * (slopes[e + 1] as number);
      const gt = mt * (slopes[e + 2] as number);
      const row = matrix.base[rows[i] as number] as number;
      for (let j = 0; j <= i; j++) {
        const f = 3 * (entries[j] as number);
        const cell = row + (rows[j] as number);
        matrix.cells[cell] =
          (matrix.cells[cell] as number) +
          gx * (slopes[f] as number) +
          gy * (slopes[f + 1] as number) +
          gt * (slopes[f + 2] as number);
      }
    }
  }
  factor(matrix, lift);
}

/**
 * The step that meets the rows to first order and otherwise follows `pull`, the step that nothing hinders:
 * p = pull − M·Jᵀ·λ with J·M·Jᵀ·λ = F + J·pull. Call `prepare` first. Written into `into`.
 */
export function step(system: System, mobility: Float64Array, pull: Float64Array, into: Float64Array): void {
  const { values, starts, bodies, slopes } = system;
  const side = system.force;
  side.set(values);
  for (let r = 0; r < side.length; r++) {
    let sum = side[r] as number;
    for (let e = starts[r] as number; e < (starts[r + 1] as number); e++) {
      const at = 3 * (bodies[e] as number);
      for (let k = 0; k < 3; k++) sum += (slopes[3 * e + k] as number) * (pull[at + k] as number);
    }
    side[r] = sum;
  }
  substitute(system.matrix, side);
  into.set(pull);
  for (let r = 0; r < side.length; r++) {
    const force = side[r] as number;
    if (force === 0) continue;
    for (let e = starts[r] as number; e < (starts[r + 1] as number); e++) {
      const at = 3 * (bodies[e] as number);
      for (let k = 0; k < 3; k++) {
        into[at + k] = (into[at + k] as number) - (mobility[at + k] as number) * (slopes[3 * e + k] as number) * force;
      }
    }
  }
}
