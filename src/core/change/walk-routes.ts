/** Routes that are being changed: how long each team takes in each pass, and the best place for one more task. */
import type { Seconds } from '../measure/quantity.ts';
import { type Routes, schedule, type TeamSize, type WalkProblem } from './walk.ts';

/** What a second of a team that is not the last of its pass counts: enough to prefer the shorter of two equal plans. */
const IDLE = 0.001;

/** Where a task goes: pick-up before the event at `lift`, laying before the one that is at `lay` now. */
interface Place {
  readonly team: number;
  readonly lift: number;
  readonly lay: number;
  readonly cost: number;
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
 * The place for a task that costs least. `skips` tells of each place whether it is passed over, so that a search does
 * not always choose the same. Undefined where no team can hold it.
 */
export function bestPlace(working: WorkingRoutes, task: number, skips: () => boolean): Place | undefined {
  let best: Place | undefined;
  for (let team = 0; team < working.routes.length; team += 1) best = placeInRoute(working, { task, team, best, skips });
  return best;
}

interface Asked {
  readonly task: number;
  readonly team: number;
  readonly best: Place | undefined;
  readonly skips: () => boolean;
}

function placeInRoute(working: WorkingRoutes, { task, team, best: before, skips }: Asked): Place | undefined {
  const { problem, teams, routes, times } = working;
  const { count, empty, loaded, work, pass, bulk, hands } = problem;
  const people = teams[team] as TeamSize;
  const route = routes[team] as number[];
  const load = bulk[task] as number;
  const most = people * hands;
  if (load > most) return before;
  const size = 2 * count + 1;
  const [lift, lay] = [2 * task, 2 * task + 1];
  const now = pass[task] as number;
  const passOf = (event: number | undefined) => (event === undefined ? -1 : (pass[event >> 1] as number));
  const leg = (from: number, to: number | undefined, isHeld: boolean) =>
    to === undefined ? 0 : ((isHeld ? loaded : empty)[from * size + to] as number);
  // Others decide a pass as long as this team takes no longer than they do.
  const longest = (of: number) =>
    times.reduce((max, each, i) => (i === team ? max : Math.max(max, each[of] as number)), 0);
  const costOf = (of: number, by: number) => {
    const was = times[team]?.[of] as number;
    const others = longest(of);
    return Math.max(others, was + by) - Math.max(others, was) + IDLE * by;
  };
  const longestNow = longest(now);
  const was = times[team]?.[now] as number;
  const fixed = (work[people][lift] as number) + (work[people][lay] as number);
  let best = before;
  const offer = (at: number, to: number, by: number, next: number | undefined, later: number) => {
    if (skips()) return;
    const own = passOf(next) === now || next === undefined ? by + later : by;
    let cost = Math.max(longestNow, was + own) - Math.max(longestNow, was) + IDLE * own;
    if (own === by && next !== undefined && passOf(next) !== now) cost += costOf(passOf(next), later);
    if (best === undefined || cost < best.cost) best = { team, lift: at, lay: to, cost };
  };
  let held = 0;
  for (let at = 0; at <= route.length; at += 1) {
    const previous = at === 0 ? 2 * count : (route[at - 1] as number);
    if (at > 0) held += (previous % 2 === 0 ? 1 : -1) * (bulk[previous >> 1] as number);
    if (at > 0 && passOf(previous) > now) break;
    const next = route[at];
    if (next !== undefined && passOf(next) < now) continue;
    if (held + load > most) continue;
    const isHeld = held > 0;
    const up = leg(previous, lift, isHeld) + fixed;
    offer(at, at, up + leg(lift, lay, true), next, leg(lay, next, isHeld) - leg(previous, next, isHeld));
    // Carried on past other events, as long as the hands have room for it.
    if (load === most) continue;
    let by = up;
    let inHand = held;
    let from = lift;
    for (let to = at; to < route.length; to += 1) {
      const event = route[to] as number;
      if (passOf(event) !== now) break;
      const old = to === at ? leg(previous, event, isHeld) : leg(from, event, inHand > 0);
      by += leg(from, event, true) - old;
      inHand += (event % 2 === 0 ? 1 : -1) * (bulk[event >> 1] as number);
      if (inHand + load > most) break;
      from = event;
      const after = route[to + 1];
      const later = leg(lay, after, inHand > 0) - leg(event, after, inHand > 0);
      offer(at, to + 1, by + leg(event, lay, true), after, later);
    }
  }
  return best;
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
