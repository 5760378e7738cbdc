/** Routes that are being changed: how long each team takes in each pass, and the best place for one more task. */
import type { Seconds } from '../measure/quantity.ts';
import { type Routes, schedule, type TeamSize, type WalkProblem } from './walk.ts';

/** What a second of a team that is not the last of its pass counts: enough to prefer the shorter of two equal plans. */
const IDLE = 0.001;

/** Where a task goes: the events go in at these places of the route as it is now, the pick-up first. */
interface Place {
  readonly team: number;
  readonly lift: number;
  readonly lay: number;
  readonly cost: Seconds;
}

export interface WorkingRoutes {
  readonly problem: WalkProblem;
  readonly teams: readonly TeamSize[];
  routes: number[][];
  /** Seconds by team and pass. */
  times: Seconds[][];
}

export function emptyRoutes(problem: WalkProblem, teams: readonly TeamSize[]): WorkingRoutes {
  return withRoutes(
    problem,
    teams,
    teams.map(() => []),
  );
}

export function withRoutes(problem: WalkProblem, teams: readonly TeamSize[], routes: Routes): WorkingRoutes {
  const copied = routes.map((route) => [...route]);
  return {
    problem,
    teams,
    routes: copied,
    times: copied.map((route, team) => routeTimes(problem, route, teams[team])),
  };
}

/** Seconds that one team spends in each pass. */
function routeTimes(problem: WalkProblem, route: readonly number[], people: TeamSize = 1): Seconds[] {
  const { count, empty, loaded, work, pass, passes, bulk } = problem;
  const size = 2 * count + 1;
  const times = new Array<Seconds>(passes).fill(0);
  let [at, held] = [2 * count, 0];
  for (const event of route) {
    const now = pass[event >> 1] as number;
    const leg = (held > 0 ? loaded : empty)[at * size + event] as number;
    times[now] = (times[now] as number) + leg + (work[people][event] as number);
    held += (event % 2 === 0 ? 1 : -1) * (bulk[event >> 1] as number);
    at = event;
  }
  return times;
}

/** What is minimised: the longest team of each pass, all passes together, and a little of everyone's time. */
export function objective({ times, problem }: WorkingRoutes): Seconds {
  let sum = 0;
  for (let now = 0; now < problem.passes; now += 1) {
    let most = 0;
    for (const each of times) {
      const time = each[now] as number;
      if (time > most) most = time;
      sum += IDLE * time;
    }
    sum += most;
  }
  return sum;
}

/** Takes tasks out of the routes. */
export function take(working: WorkingRoutes, tasks: ReadonlySet<number>): void {
  working.routes = working.routes.map((route, team) => {
    const left = route.filter((event) => !tasks.has(event >> 1));
    if (left.length < route.length) working.times[team] = routeTimes(working.problem, left, working.teams[team]);
    return left;
  });
}

/**
 * The place for a task that costs least. `skips` says of each place whether it is passed over, so that a search does not
 * always choose the same. Undefined where no team can hold it.
 */
export function bestPlace(working: WorkingRoutes, task: number, skips: () => boolean): Place | undefined {
  const offers: Offers = { task, skips, team: 0, longest: 0, was: 0, best: undefined };
  for (let team = 0; team < working.routes.length; team += 1) offerPlaces(working, team, offers);
  return offers.best;
}

/** What is sought, and what has been found. */
interface Offers {
  readonly task: number;
  readonly skips: () => boolean;
  /** The team that is looked at, how long the others take in the task's pass at most, and how long it takes itself. */
  team: number;
  longest: Seconds;
  was: Seconds;
  best: Place | undefined;
}

/** How long the others take in a pass. */
function longestOther({ times }: WorkingRoutes, team: number, pass: number): Seconds {
  let longest = 0;
  for (let i = 0; i < times.length; i += 1) {
    const time = times[i]?.[pass] as number;
    if (i !== team && time > longest) longest = time;
  }
  return longest;
}

/** What it costs all when a team takes so much longer in a pass. */
function delay(longest: Seconds, was: Seconds, by: Seconds): Seconds {
  return Math.max(longest, was + by) - Math.max(longest, was) + IDLE * by;
}

/** How much longer the team takes: `by` in the task's pass, `onward` in the pass of the event after the laying, if any. */
interface Longer {
  readonly lift: number;
  readonly lay: number;
  readonly by: Seconds;
  readonly next: number | undefined;
  readonly onward: Seconds;
}

function offer(working: WorkingRoutes, offers: Offers, { lift, lay, by, next, onward }: Longer): void {
  if (offers.skips()) return;
  const { pass } = working.problem;
  const { task, team, longest, was } = offers;
  const then = next === undefined ? -1 : (pass[next >> 1] as number);
  let cost = 0;
  if (then < 0 || then === pass[task]) cost = delay(longest, was, by + onward);
  else {
    const others = longestOther(working, team, then);
    cost = delay(longest, was, by) + delay(others, working.times[team]?.[then] as number, onward);
  }
  if (offers.best === undefined || cost < offers.best.cost) offers.best = { team, lift, lay, cost };
}

/** Offers every place in one team's route. No function is made here: this is the inner loop of the search. */
function offerPlaces(working: WorkingRoutes, team: number, offers: Offers): void {
  const { count, empty, loaded, work, pass, bulk, hands } = working.problem;
  const { task } = offers;
  const people = working.teams[team] as TeamSize;
  const route = working.routes[team] as number[];
  const [most, load, now] = [people * hands, bulk[task] as number, pass[task] as number];
  if (load > most) return;
  offers.team = team;
  offers.longest = longestOther(working, team, now);
  offers.was = working.times[team]?.[now] as number;
  const size = 2 * count + 1;
  const [lift, lay] = [2 * task, 2 * task + 1];
  const fixed = (work[people][lift] as number) + (work[people][lay] as number);
  let held = 0;
  for (let at = 0; at <= route.length; at += 1) {
    const previous = at === 0 ? 2 * count : (route[at - 1] as number);
    if (at > 0) {
      held += (previous % 2 === 0 ? 1 : -1) * (bulk[previous >> 1] as number);
      if ((pass[previous >> 1] as number) > now) break;
    }
    const next = route[at];
    if (next !== undefined && (pass[next >> 1] as number) < now) continue;
    if (held + load > most) continue;
    const walk = held > 0 ? loaded : empty;
    const up = (walk[previous * size + lift] as number) + fixed;
    const by = up + (loaded[lift * size + lay] as number);
    const onward =
      next === undefined ? 0 : (walk[lay * size + next] as number) - (walk[previous * size + next] as number);
    offer(working, offers, { lift: at, lay: at, by, next, onward });
    if (load < most) offerLater(working, offers, { at, held, up });
  }
}

/** Offers to lay a thing after other events, as long as the hands have room for it; `up` is what picking it up takes. */
function offerLater(
  working: WorkingRoutes,
  offers: Offers,
  { at, held, up }: { readonly at: number; readonly held: number; readonly up: Seconds },
): void {
  const { count, empty, loaded, pass, bulk, hands } = working.problem;
  const { task, team } = offers;
  const route = working.routes[team] as number[];
  const room = (working.teams[team] as TeamSize) * hands - (bulk[task] as number);
  const size = 2 * count + 1;
  const [lift, lay] = [2 * task, 2 * task + 1];
  let [by, others] = [up, held];
  let previous = at === 0 ? 2 * count : (route[at - 1] as number);
  for (let i = at; i < route.length; i += 1) {
    const event = route[i] as number;
    if (pass[event >> 1] !== pass[task]) break;
    const from = i === at ? lift : previous;
    by += (loaded[from * size + event] as number) - ((others > 0 ? loaded : empty)[previous * size + event] as number);
    others += (event % 2 === 0 ? 1 : -1) * (bulk[event >> 1] as number);
    if (others > room) break;
    const walk = others > 0 ? loaded : empty;
    const next = route[i + 1];
    const onward = next === undefined ? 0 : (walk[lay * size + next] as number) - (walk[event * size + next] as number);
    offer(working, offers, { lift: at, lay: i + 1, by: by + (loaded[event * size + lay] as number), next, onward });
    previous = event;
  }
}

/** Puts a task where `bestPlace` said. */
export function put(working: WorkingRoutes, task: number, { team, lift, lay }: Place): void {
  const route = working.routes[team] as number[];
  route.splice(lay, 0, 2 * task + 1);
  route.splice(lift, 0, 2 * task);
  working.times[team] = routeTimes(working.problem, route, working.teams[team]);
}

/** The change-over's length with these routes. */
export function secondsOf({ problem, teams, routes }: WorkingRoutes): Seconds {
  return schedule(problem, teams, routes).seconds;
}
