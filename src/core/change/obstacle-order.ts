/** Of walks that take equally long, the one that a crew follows most easily: one obstacle after the other. */
import type { CrewWalk } from './best-walk.ts';
import { schedule, type WalkProblem } from './walk.ts';

/** Events from empty hands to empty hands. */
type Round = readonly number[];

/** What the order of a walk is told by: where each task comes from, and where it stands in the wanted order. */
export interface TaskOrder {
  readonly fromTruck: readonly boolean[];
  /** Of the obstacle that a task belongs to, 0 first. */
  readonly group: readonly number[];
}

function taskOf(event: number): number {
  return event >> 1;
}

function roundsOf(route: readonly number[]): readonly Round[] {
  const rounds: number[][] = [];
  let held = 0;
  for (const event of route) {
    const round = held === 0 ? [] : rounds.at(-1);
    if (round === undefined) throw new Error('roundsOf: a route must begin by picking something up');
    if (held === 0) rounds.push(round);
    round.push(event);
    held += event % 2 === 0 ? 1 : -1;
  }
  return rounds;
}

/**
 * Rounds that begin at the truck begin at one place, so in a run of them all but the last may change places and nobody
 * walks further. They are put obstacle by obstacle; that of the last one comes last.
 */
function orderedRounds(rounds: readonly Round[], { fromTruck, group }: TaskOrder, pass: Int32Array): readonly Round[] {
  const first = (round: Round): number => taskOf(round[0] ?? 0);
  const groupOf = (round: Round): number => group[first(round)] ?? 0;
  const ordered: Round[] = [];
  let run: Round[] = [];
  const close = (): void => {
    const last = run.pop();
    if (last === undefined) return;
    const isLast = (round: Round): number => Number(groupOf(round) === groupOf(last));
    // Equal groups keep the order of the tasks, which is that of the pieces.
    run.sort((a, b) => isLast(a) - isLast(b) || groupOf(a) - groupOf(b) || first(a) - first(b));
    ordered.push(...run, last);
    run = [];
  };
  for (const round of rounds) {
    const before = run[0];
    if (before !== undefined && pass[first(before)] !== pass[first(round)]) close();
    if (fromTruck[first(round)]) run.push(round);
    else {
      close();
      ordered.push(round);
    }
  }
  close();
  return ordered;
}

/** The same walk obstacle by obstacle, as far as that costs no time. */
export function byObstacle(problem: WalkProblem, walk: CrewWalk, order: TaskOrder): CrewWalk {
  const { teams } = walk;
  const routes = walk.routes.map((route) => orderedRounds(roundsOf(route), order, problem.pass).flat());
  return { teams, routes, schedule: schedule(problem, teams, routes) };
}
