import { MET } from './problem.ts';
import { evaluate, prepare, step } from './system.ts';
import type { Workbench } from './workspace.ts';

/** Steps that bring residuals to zero; 3 to 6 are usual. */
const MOST_STEPS = 60;
/** Residuals are pressed down to here where the numbers allow it. */
const FINE = 1e-13;
/** No body goes further in one step, metres, nor turns by more, radians. */
export const STRIDE = 0.5;
const TURN = 0.5;
/** Damping of a step that did not help, relative to the size of each row. */
const LEAST_LIFT = 1e-8;
const MOST_LIFT = 1e4;

/** How a group came out: the largest residual, and whether no further step would make it smaller. */
export interface Landing {
  readonly worst: number;
  readonly stuck: boolean;
}

/** The part of a step that is short enough: no body turns by more than `TURN` or goes further than `stride` metres. */
export function share(move: Float64Array, stride: number): number {
  let most = 1;
  for (let i = 0; i < move.length; i++) {
    const size = Math.abs(move[i] as number) / (i % 3 === 2 ? TURN : stride);
    if (size > most) most = size;
  }
  return 1 / most;
}

export function squares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i] as number) ** 2;
  return sum;
}

/**
 * From `q` to residuals of zero, moving as little as possible on the way; `mobility` says what moves how freely.
 * `steps`: give up after so many.
 */
export function land(bench: Workbench, { steps = MOST_STEPS }: { readonly steps?: number } = {}): Landing {
  const { system, q, mobility, pull, move, tried } = bench;
  pull.fill(0);
  let worst = evaluate(system, q);
  let sum = squares(system.values);
  let lift = 0;
  for (let round = 0; round < steps; round++) {
    if (worst <= FINE) break;
    prepare(system, mobility, lift);
    step(system, mobility, pull, move);
    const whole = share(move, STRIDE);
    let part = 1;
    let better = false;
    for (; part > 0.05 && !better; part /= 2) {
      for (let i = 0; i < q.length; i++) tried[i] = (q[i] as number) + part * whole * (move[i] as number);
      const reached = evaluate(system, tried);
      const left = squares(system.values);
      if (left < sum) {
        better = true;
        const gained = 1 - left / sum;
        q.set(tried);
        worst = reached;
        sum = left;
        if (gained < 1e-9 && worst > MET) return { worst, stuck: true };
      }
    }
    if (better) {
      lift = part >= 0.5 ? (lift > LEAST_LIFT ? lift / 10 : 0) : Math.max(lift * 10, LEAST_LIFT);
      continue;
    }
    // Values and slopes are those of the last trial: bring back those of the best.
    worst = evaluate(system, q);
    if (worst <= MET || lift >= MOST_LIFT) return { worst, stuck: worst > MET };
    lift = Math.max(lift * 10, LEAST_LIFT);
  }
  return { worst, stuck: false };
}
