/** Random walking problems, and the least time by trying every order of every share of the tasks; for few tasks. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import type { TeamSize, WalkProblem } from '../../../src/core/change/walk.ts';

const EMPTY_SPEED = 1.3;
const LOADED_SPEED = 1;

/** Tasks in 60 by 30 m, the truck in the west; `small` is the share of things of which a person takes four. */
export function randomWalk(
  seed: number,
  { count, small, later }: { readonly count: number; readonly small: number; readonly later: number },
): WalkProblem {
  const roll = seededRandom(seed);
  const places = Array.from({ length: 2 * count + 1 }, (_, i) => {
    const at = { x: 60 * roll(), y: 30 * roll() };
    return i === 2 * count || roll() < 0.15 ? { x: 0, y: 15 } : at;
  });
  const metres = Float64Array.from(places.flatMap((a) => places.map((b) => Math.hypot(a.x - b.x, a.y - b.y))));
  const bulk = Int32Array.from({ length: count }, () => (roll() < small ? 1 : roll() < 0.3 ? 4 : 8));
  const pass = Int32Array.from({ length: count }, (_, task) => (task > 0 && roll() < later ? 1 : 0));
  const work = (slow: number) =>
    Float64Array.from({ length: 2 * count }, (_, event) => {
      if (event % 2 === 0) return 5;
      return bulk[event >> 1] === 1 ? 12 : slow;
    });
  return {
    count,
    metres,
    empty: metres.map((each) => each / EMPTY_SPEED),
    loaded: metres.map((each) => each / LOADED_SPEED),
    work: { 1: work(70), 2: work(45) },
    pass,
    passes: Math.max(0, ...pass) + 1,
    bulk,
    hands: 4,
  };
}

/** The tasks of a set of bits. */
function members(set: number): readonly number[] {
  return Array.from({ length: 31 }, (_, i) => i).filter((i) => (set >> i) & 1);
}

/** For each event that a team can end with, the least time in which it does these tasks, over all orders up to a limit. */
function timesByEnd(
  problem: WalkProblem,
  tasks: readonly number[],
  { people, start, limit }: { readonly people: TeamSize; readonly start: number; readonly limit: number },
): ReadonlyMap<number, number> {
  const { count, empty, loaded, work, bulk, hands } = problem;
  const size = 2 * count + 1;
  const best = new Map<number, number>();
  // Whatever the order, what is left has to be worked at, and what fills the hands has to be carried straight.
  const leastOf = (task: number, isHeld: boolean) => {
    const straight = bulk[task] === people * hands ? (loaded[2 * task * size + 2 * task + 1] as number) : 0;
    const lay = work[people][2 * task + 1] as number;
    return isHeld ? lay : lay + straight + (work[people][2 * task] as number);
  };
  const go = (at: number, time: number, lying: readonly number[], held: readonly number[]): void => {
    const rest = [...lying.map((each) => leastOf(each, false)), ...held.map((each) => leastOf(each, true))];
    if (rest.reduce((all, each) => all + each, time) > limit) return;
    if (lying.length + held.length === 0) best.set(at, Math.min(time, best.get(at) ?? Number.POSITIVE_INFINITY));
    const bulkHeld = held.reduce((sum, task) => sum + (bulk[task] as number), 0);
    const then = (event: number) => {
      const legs = held.length > 0 ? loaded : empty;
      return time + (legs[at * size + event] as number) + (work[people][event] as number);
    };
    for (const task of lying) {
      if (bulkHeld + (bulk[task] as number) > people * hands) continue;
      go(
        2 * task,
        then(2 * task),
        lying.filter((each) => each !== task),
        [...held, task],
      );
    }
    for (const task of held)
      go(
        2 * task + 1,
        then(2 * task + 1),
        lying,
        held.filter((each) => each !== task),
      );
  };
  go(start, 0, tasks, []);
  return best;
}

/**
 * The least time of a whole change-over with these teams, infinite where no team can hold a load. What takes longer than
 * the limit is not followed to its end: infinite too where nothing takes less.
 */
export function bruteSeconds(
  problem: WalkProblem,
  teams: readonly TeamSize[],
  limit: number = Number.POSITIVE_INFINITY,
): number {
  const known = new Map<string, ReadonlyMap<number, number>>();
  const solved = new Map<string, number>();
  const timesOf = (set: number, people: TeamSize, start: number) => {
    const key = `${set} ${people} ${start}`;
    const found = known.get(key) ?? timesByEnd(problem, members(set), { people, start, limit });
    known.set(key, found);
    return found;
  };
  const setOf = (pass: number) =>
    [...problem.pass].reduce((set, of, task) => (of === pass ? set | (1 << task) : set), 0);
  const fromPass = (pass: number, starts: readonly number[]): number => {
    if (pass === problem.passes) return 0;
    const key = `${pass} ${starts.join(' ')}`;
    const before = solved.get(key);
    if (before !== undefined) return before;
    let least = Number.POSITIVE_INFINITY;
    const share = (team: number, left: number, longest: number, ends: readonly number[]): void => {
      const people = teams[team];
      if (longest >= Math.min(least, limit)) return;
      if (people === undefined) {
        if (left === 0) least = Math.min(least, longest + fromPass(pass + 1, ends));
        return;
      }
      for (let set = left; set >= 0; set = set === 0 ? -1 : (set - 1) & left) {
        const start = starts[team] as number;
        if (set === 0) share(team + 1, left, longest, [...ends, start]);
        else {
          for (const [end, time] of timesOf(set, people, start)) {
            share(team + 1, left & ~set, Math.max(longest, time), [...ends, end]);
          }
        }
      }
    };
    share(0, setOf(pass), 0, []);
    solved.set(key, least);
    return least;
  };
  return fromPass(
    0,
    teams.map(() => 2 * problem.count),
  );
}
