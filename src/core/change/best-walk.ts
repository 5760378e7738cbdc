import { canCarry, divisions, type Routes, type Schedule, schedule, type TeamSize, type WalkProblem } from './walk.ts';
import { searchedWalk } from './walk-search.ts';

/** The teams, what each does in order, and when. */
export interface CrewWalk {
  readonly teams: readonly TeamSize[];
  readonly routes: Routes;
  readonly schedule: Schedule;
}

/** Rounds of the search for so many tasks: about a tenth of a second in all. */
function usualRounds(count: number): number {
  return Math.round(Math.min(3000, 180_000 / Math.max(1, count)));
}

/** The walk that is done first, over every division of the crew into teams of one and two. `effort` times as many rounds as usual. */
export function bestWalk(problem: WalkProblem, people: number, effort = 1): CrewWalk {
  const possible = divisions(people).filter((teams) => canCarry(problem, teams));
  if (possible.length === 0) throw new Error(`bestWalk: a crew of ${people} cannot carry every load`);
  const rounds = usualRounds(problem.count) * effort;
  const first = possible.length === 1 ? 0 : Math.round(rounds / 10);
  const begun = possible.map((teams) => ({ teams, walk: searchedWalk(problem, teams, { rounds: first }) }));
  const { teams, walk } = begun.reduce((best, each) => (each.walk.cost < best.walk.cost ? each : best));
  const { routes } = searchedWalk(problem, teams, { rounds: rounds - first, from: walk, seed: 2 });
  return { teams, routes, schedule: schedule(problem, teams, routes) };
}
