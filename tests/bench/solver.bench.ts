/**
 * The solver: one linear step in the envelope beside a full Cholesky of the same system, and whole drags beside the time of
 * a frame. Scene: a chain of poles at two-thirds, the first fixed; a run and a fan, free.
 */
import { groups } from '../../src/core/solve/groups.ts';
import { coordinates } from '../../src/core/solve/meet.ts';
import type { Problem } from '../../src/core/solve/problem.ts';
import { solved } from '../../src/core/solve/solved.ts';
import { evaluate, prepare, type System, step, systemOf } from '../../src/core/solve/system.ts';
import { chain, fan, run, wishing } from '../core/solve/poles.ts';
import { percentile, type Row, row, timed } from './row.ts';

const FRAME_MS = 1000 / 60;

/** The rows as full vectors. */
function full(system: System): Float64Array[] {
  return Array.from(system.values, (_, r) => {
    const line = new Float64Array(3 * system.free);
    for (let e = system.starts[r] ?? 0; e < (system.starts[r + 1] ?? 0); e++) {
      const at = 3 * (system.bodies[e] ?? 0);
      for (let k = 0; k < 3; k++) line[at + k] = system.slopes[3 * e + k] ?? 0;
    }
    return line;
  });
}

/** J·Jᵀ·λ = F by a plain Cholesky over all of it. */
function dense(lines: readonly Float64Array[], values: Float64Array): number {
  const count = lines.length;
  const cells = lines.map((a) =>
    Float64Array.from(lines, (b) => a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0)),
  );
  for (let r = 0; r < count; r++) {
    const mine = cells[r] as Float64Array;
    for (let c = 0; c <= r; c++) {
      const other = cells[c] as Float64Array;
      let sum = mine[c] as number;
      for (let k = 0; k < c; k++) sum -= (mine[k] as number) * (other[k] as number);
      mine[c] = c === r ? Math.sqrt(sum) : sum / (other[c] as number);
    }
  }
  const side = Float64Array.from(values);
  for (let r = 0; r < count; r++) {
    for (let k = 0; k < r; k++) side[r] = (side[r] as number) - (cells[r]?.[k] as number) * (side[k] as number);
    side[r] = (side[r] as number) / (cells[r]?.[r] as number);
  }
  for (let r = count - 1; r >= 0; r--) {
    for (let k = r + 1; k < count; k++) side[r] = (side[r] as number) - (cells[k]?.[r] as number) * (side[k] as number);
    side[r] = (side[r] as number) / (cells[r]?.[r] as number);
  }
  return side[0] as number;
}

function stepRow(count: number): Row {
  const [group] = groups(chain(count)).filter(({ ties }) => ties.length > 0);
  if (group === undefined) throw new Error('the chain has no group');
  const system = systemOf(group);
  evaluate(system, coordinates(group));
  const mobility = new Float64Array(3 * system.free).fill(1);
  const still = new Float64Array(3 * system.free);
  const into = new Float64Array(3 * system.free);
  const times = count > 20 ? 60 : 300;
  const ours = timed(
    times,
    () => undefined,
    () => {
      prepare(system, mobility, 0);
      step(system, mobility, still, into);
    },
  );
  const lines = full(system);
  const anchor = timed(
    times,
    () => undefined,
    () => void dense(lines, system.values),
  );
  return row(`linear step, chain of ${count}`, 'ms p50', {
    ours: percentile(ours, 0.5),
    anchor: percentile(anchor, 0.5),
    anchorName: 'full Cholesky',
  });
}

/** A drag of 60 steps of 2 cm from the same beginning, ten times over. */
function dragRows(name: string, scene: Problem): Row[] {
  const last = scene.bodies[scene.bodies.length - 1];
  if (last === undefined) throw new Error('the scene has no bodies');
  const times = timed(
    600,
    (i) =>
      wishing(scene, last.id, { ...last.pose, x: last.pose.x + 0.012 * (i % 60), y: last.pose.y + 0.016 * (i % 60) }),
    (problem) => {
      const { outcome } = solved(problem);
      if (outcome !== 'met') throw new Error(`${name}: ${outcome}`);
    },
  );
  return [0.5, 0.95].map((share) =>
    row(`drag step, ${name}`, `ms p${share * 100}`, {
      ours: percentile(times, share),
      anchor: FRAME_MS,
      anchorName: 'a frame at 60 Hz',
    }),
  );
}

export async function rows(): Promise<Row[]> {
  return [
    ...[6, 20, 60].map(stepRow),
    ...dragRows('fan of 3', fan(3)),
    ...dragRows('run of 6', run(6)),
    ...[6, 20, 60].flatMap((count) => dragRows(`chain of ${count}`, chain(count))),
  ];
}
