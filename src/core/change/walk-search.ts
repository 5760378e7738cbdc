import type { Seconds } from '../measure/quantity.ts';
import { seededRandom } from './seeded-random.ts';
import type { Routes, TeamSize, WalkProblem } from './walk.ts';
import { bestPlace, emptyRoutes, objective, put, take, type WorkingRoutes, withRoutes } from './walk-routes.ts';

/** About so many tasks are taken out at once, and at most so many in a row of one team. */
const TAKEN = 8;
const LONGEST_STRING = 10;
/** A place is passed over so often although it is the best. */
const SKIPPED = 0.01;
/** How much worse than the last a plan may be and still be gone on from, seconds: at the start, and at the end. */
const WARM: Seconds = 8;
const COLD: Seconds = 0.2;

const never = () => false;

/** What a search has found, and what it costs. */
export interface Walk {
  readonly routes: Routes;
  readonly cost: Seconds;
}

/** For each task all tasks, those first between which a team walks least. */
function neighbours({ count, metres, pass }: WalkProblem): readonly (readonly number[])[] {
  const size = 2 * count + 1;
  const tasks = Array.from({ length: count }, (_, task) => task);
  const apart = (from: number, to: number) => metres[from * size + to] as number;
  return tasks.map((a) => {
    const far = tasks.map((b) => {
      const near = Math.min(apart(2 * a + 1, 2 * b), apart(2 * b + 1, 2 * a), apart(2 * a, 2 * b));
      return a === b ? -1 : near + (pass[a] === pass[b] ? 0 : 1000);
    });
    return [...tasks].sort((b, c) => (far[b] as number) - (far[c] as number));
  });
}

/**
 * Tasks near a task, taken from the routes in rows: what is left has room to be joined anew (slack induction by string
 * removals, Christiaens and Vanden Berghe 2020).
 */
function nearTasks({ routes }: WorkingRoutes, near: readonly number[], random: () => number): ReadonlySet<number> {
  const orders = routes.map((route) => route.filter((event) => event % 2 === 0).map((event) => event >> 1));
  const longest = Math.max(1, Math.min(LONGEST_STRING, near.length / routes.length));
  let strings = 1 + Math.floor(random() * ((4 * TAKEN) / (1 + longest)));
  const taken = new Set<number>();
  for (const task of near) {
    if (strings === 0) break;
    if (taken.has(task)) continue;
    const order = orders.find((each) => each.includes(task)) ?? [];
    const length = Math.min(1 + Math.floor(random() * longest), order.length);
    const first = Math.max(0, Math.min(order.length - length, order.indexOf(task) - Math.floor(random() * length)));
    for (const each of order.slice(first, first + length)) taken.add(each);
    strings -= 1;
  }
  return taken;
}

/** The order in which tasks are put back: by chance, the bulkiest first, or those first that are far from the truck. */
function putOrder({ count, bulk, metres }: WalkProblem, tasks: readonly number[], random: () => number): number[] {
  const mixed = tasks.map((task) => ({ task, by: random() }));
  const how = random();
  const start = 2 * count * (2 * count + 1);
  const far = (task: number) => metres[start + 2 * task] as number;
  const key = ({ task, by }: { task: number; by: number }) => {
    if (how < 0.5) return by;
    return how < 0.7 ? -(bulk[task] as number) + by : (how < 0.9 ? -1 : 1) * far(task);
  };
  return mixed.sort((a, b) => key(a) - key(b)).map(({ task }) => task);
}

function putBack(working: WorkingRoutes, tasks: readonly number[], skips: () => boolean): void {
  for (const task of tasks) {
    const place = bestPlace(working, task, skips) ?? bestPlace(working, task, never);
    if (place === undefined) throw new Error(`no team of ${working.teams.join(' + ')} can carry task ${task}`);
    put(working, task, place);
  }
}

/** A first plan: pass after pass, each task where it costs least. */
function firstWalk(problem: WalkProblem, teams: readonly TeamSize[]): WorkingRoutes {
  const working = emptyRoutes(problem, teams);
  const tasks = Array.from({ length: problem.count }, (_, task) => task);
  tasks.sort((a, b) => (problem.pass[a] as number) - (problem.pass[b] as number) || a - b);
  putBack(working, tasks, never);
  return working;
}

/**
 * A short walk, by taking tasks out and putting them back where they cost least, so many times (large neighbourhood
 * search with simulated annealing). The same problem gives the same walk. `from` goes on from an earlier one.
 */
export function searchedWalk(
  problem: WalkProblem,
  teams: readonly TeamSize[],
  { rounds, from, seed = 1 }: { readonly rounds: number; readonly from?: Walk; readonly seed?: number },
): Walk {
  const random = seededRandom(seed);
  const near = neighbours(problem);
  let now = from === undefined ? firstWalk(problem, teams) : withRoutes(problem, teams, from.routes);
  let cost = objective(now);
  let best: Walk = { routes: now.routes.map((route) => [...route]), cost };
  const skips = () => random() < SKIPPED;
  for (let round = 0; round < rounds && problem.count > 1; round += 1) {
    const next = { ...now, routes: now.routes, times: [...now.times] };
    const taken = nearTasks(next, near[Math.floor(random() * problem.count)] ?? [], random);
    take(next, taken);
    putBack(next, putOrder(problem, [...taken], random), skips);
    const made = objective(next);
    const heat = WARM * (COLD / WARM) ** (round / rounds);
    if (made < cost - heat * Math.log(1 - random())) {
      now = next;
      cost = made;
    }
    if (made < best.cost - 1e-9) best = { routes: next.routes.map((route) => [...route]), cost: made };
  }
  return best;
}
