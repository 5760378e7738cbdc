import { firm, follow } from './follow.ts';
import { type Landing, land } from './land.ts';
import { lead } from './lead.ts';
import { MET } from './problem.ts';
import type { Wished, Workbench } from './workbench.ts';

function landed(bench: Workbench, weight: Float64Array): Landing {
  for (let i = 0; i < weight.length; i++) bench.mobility[i] = 1 / (weight[i] as number);
  return land(bench);
}

/** Brings the group from home to where its ties hold, moving least; the coordinates are left in `q`. */
export function meet(bench: Workbench): Landing {
  bench.q.set(bench.home);
  return landed(bench, bench.weight);
}

/**
 * Brings the group to where its ties hold and its wishes are followed as far as they allow: exactly there if the rest can
 * come along. A wish that leads nowhere is followed half the way, a quarter …, and at last not at all.
 */
export function meetWishes(bench: Workbench, wishes: readonly Wished[]): Landing {
  if (lead(bench, wishes)) return { worst: 0, stuck: false };
  const weight = firm(bench, wishes);
  for (let part = 1; part > 0.1; part /= 2) {
    follow(
      bench,
      wishes.map((wish) => towards(wish, bench.home, part)),
    );
    const landing = landed(bench, weight);
    if (landing.worst <= MET) return landing;
  }
  return meet(bench);
}

function towards(wish: Wished, home: Float64Array, part: number): Wished {
  if (part === 1) return wish;
  const from = (k: number) => home[wish.at + k] as number;
  return {
    ...wish,
    x: from(0) + part * (wish.x - from(0)),
    y: from(1) + part * (wish.y - from(1)),
    angle: from(2) + part * Math.atan2(Math.sin(wish.angle - from(2)), Math.cos(wish.angle - from(2))),
  };
}
