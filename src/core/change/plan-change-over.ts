import type { PlacedObstacle } from '../course/placed.ts';
import { bestWalk, type CrewWalk } from './best-walk.ts';
import { type Carrying, leastCarrying } from './carrying.ts';
import type { Carry, ChangeOver, Crew } from './change-over.ts';
import { loadsOf } from './loads.ts';
import { byObstacle, type TaskOrder } from './obstacle-order.ts';
import { inPasses, type Task } from './passes.ts';
import { walkProblem } from './walk.ts';

function assembled(
  carrying: Carrying,
  tasks: readonly Task[],
  { walk, crew }: { walk: CrewWalk; crew: Crew },
): ChangeOver {
  const { begins, ends, teamOf, walked, done, seconds } = walk.schedule;
  const carries = tasks
    .map((task, i): Omit<Carry, 'number'> => {
      return { ...task, team: teamOf[i] ?? 0, begins: begins[i] ?? 0, ends: ends[i] ?? 0 };
    })
    .sort((a, b) => a.pass - b.pass || a.begins - b.begins || a.team - b.team)
    .map((carry, i): Carry => ({ ...carry, number: i + 1 }));
  const { stays, metres, cost, leastCost } = carrying;
  return {
    crew,
    stays,
    carries,
    teams: walk.teams.map((people, team) => ({ people, walked: walked[team] ?? 0, done: done[team] ?? 0 })),
    passes: Math.max(0, ...tasks.map(({ pass }) => pass)),
    metres,
    leastCost,
    cost,
    seconds,
  };
}

/** Obstacles in the order of the layout that is wanted; what goes away comes after them. */
function taskOrder(tasks: readonly Task[], to: readonly PlacedObstacle[]): TaskOrder {
  const places = new Map(to.map(({ obstacle }, place) => [obstacle.id, place]));
  return {
    fromTruck: tasks.map(({ from }) => from.kind === 'truck'),
    group: tasks.map(({ load }) => places.get(load.obstacle) ?? to.length),
  };
}

/**
 * How one layout becomes the next with the least carrying: which thing goes where (proven least), in which pass, and in
 * which order the crew walks (least time where there are few carries, a search beyond).
 */
export function changeOver(from: readonly PlacedObstacle[], to: readonly PlacedObstacle[], crew: Crew): ChangeOver {
  const [lying, wanted] = [loadsOf(from, crew.people), loadsOf(to, crew.people)];
  const carrying = leastCarrying(lying, wanted, crew.truckAt);
  const tasks = inPasses(carrying.errands, [...lying, ...wanted], crew);
  const problem = walkProblem(tasks, crew);
  const walk = byObstacle(problem, bestWalk(problem, crew.people), taskOrder(tasks, to));
  return assembled(carrying, tasks, { walk, crew });
}
