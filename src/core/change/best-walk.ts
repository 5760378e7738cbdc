import { canCarry, divisions, type Routes, type Schedule, schedule, type TeamSize, type WalkProblem } from './walk.ts';
import { exactWalk, MOST_EXACT } from './walk-exact.ts';
import { searchedWalk } from './walk-search.ts';

/** The teams, what each does in order, and when. */
export interface CrewWalk {
  readonly teams: readonly TeamSize[];
  readonly routes: Routes;
  readonly schedule: Schedule;
}

/** Rounds of the search for so many tasks: a tenth of a second, about. */
function usualRounds(count: number): number {
  return Math.round(Math.min(1200, Math.max(200, 36_000 / count)));
}

function possibleTeams(problem: WalkProblem, people: number): readonly (readonly TeamSize[])[] {
  const possible = divisions(people).filter((teams) => canCarry(problem, teams));
  if (possible.length === 0) throw new Error(`bestWalk: a crew of ${people} cannot carry every load`);
  return possible;
}

function exact(problem: WalkProblem, people: number): CrewWalk {
  const walks = possibleTeams(problem, people).map((teams): CrewWalk => {
    const routes = exactWalk(problem, teams);
    return { teams, routes, schedule: schedule(problem, teams, routes) };
  });
  return walks.reduce((best, each) => (each.schedule.seconds < best.schedule.seconds - 1e-9 ? each : best));
}

/** Searches longer in the division that a short search likes best. `effort` times as many rounds as usual. */
export function searched(problem: WalkProblem, people: number, effort = 1): CrewWalk {
  const possible = possibleTeams(problem, people);
  const rounds = usualRounds(problem.count) * effort;
  const first = possible.length === 1 ? 0 : Math.round(rounds / 10);
  const begun = possible.map((teams) => ({ teams, walk: searchedWalk(problem, teams, { rounds: first }) }));
  const { teams, walk } = begun.reduce((best, each) => (each.walk.cost < best.walk.cost ? each : best));
  const { routes } = searchedWalk(problem, teams, { rounds: rounds - first, from: walk, seed: 2 });
  return { teams, routes, schedule: schedule(problem, teams, routes) };
}

/**
 * The walk that is done first, over every division of the crew into teams of one and two: no other is done sooner where
 * there are few tasks; a seeded search beyond.
 */
export function bestWalk(problem: WalkProblem, people: number): CrewWalk {
  return problem.count <= MOST_EXACT ? exact(problem, people) : searched(problem, people);
}
