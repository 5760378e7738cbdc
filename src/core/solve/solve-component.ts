import { lead } from './continuation.ts';
import { firm, follow } from './drag.ts';
import { type Landing, land } from './newton.ts';
import { MET } from './problem.ts';
import { carriedWhole, isRigid } from './rigid-move.ts';
import type { Wished, Workbench } from './workspace.ts';

/** How much more a wished body resists turning than going, while it is to keep its angle. */
const UNTURNED = Number.POSITIVE_INFINITY;
/** It turns when that brings it on by more than so many times as far. */
const WORTH = 10;
/** A gain below this, metres, is none. */
const THERE = 1e-6;

function landed(bench: Workbench, weight: Float64Array): Landing {
  for (let i = 0; i < weight.length; i++) bench.mobility[i] = 1 / (weight[i] as number);
  return land(bench);
}

/** Brings the group from home to where its ties hold, moving least; the coordinates are left in `q`. */
export function meet(bench: Workbench): Landing {
  bench.q.set(bench.home);
  return landed(bench, bench.weight);
}

/** How much nearer to their wishes the bodies are than at home, metres; turning aside. */
function gained({ home, q }: Workbench, wishes: readonly Wished[]): number {
  let gain = 0;
  for (const { x, y, at } of wishes) {
    gain += Math.hypot(x - (home[at] as number), y - (home[at + 1] as number));
    gain -= Math.hypot(x - (q[at] as number), y - (q[at + 1] as number));
  }
  return gain;
}

/**
 * As near to the wishes as the ties allow. A wished body keeps the angle at which it is wished: what is dragged along a
 * wall does not turn to get nearer to the hand. It turns only where it could hardly move otherwise, as an arm that is led
 * around its marker.
 */
function near(bench: Workbench, wishes: readonly Wished[]): Landing {
  follow(bench, wishes, firm(bench, wishes, UNTURNED));
  const kept = landed(bench, firm(bench, wishes, UNTURNED));
  const gain = gained(bench, wishes);
  const q = Float64Array.from(bench.q);
  follow(bench, wishes, firm(bench, wishes, 1));
  const turned = landed(bench, firm(bench, wishes, 1));
  if (kept.worst > MET) return turned;
  if (turned.worst <= MET && gained(bench, wishes) > WORTH * gain + THERE) return turned;
  bench.q.set(q);
  return kept;
}

/**
 * Brings the group to where its ties hold and its wishes are followed as far as they allow: exactly there if the rest can
 * come along. A wish that leads nowhere is followed half the way, a quarter …, and at last not at all.
 */
export function meetWishes(bench: Workbench, wishes: readonly Wished[]): Landing {
  // What is rigid is carried; what is loose is led, and carried only when it is led too far to come along.
  const led = isRigid(bench) ? carriedWhole(bench, wishes) : lead(bench, wishes);
  if (led || carriedWhole(bench, wishes)) return { worst: 0, stuck: false };
  for (let part = 1; part > 0.1; part /= 2) {
    const landing = near(
      bench,
      wishes.map((wish) => towards(wish, bench.home, part)),
    );
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
