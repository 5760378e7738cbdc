import type { Course, Layout } from '../course/course.ts';
import { placedObstacle } from '../course/placed.ts';
import type { Seconds } from '../measure/quantity.ts';
import { memoizeByIdentity, pairCache } from '../memo/by-identity.ts';
import type { Survey } from '../survey.ts';
import type { ChangeOver, Crew } from './change-over.ts';
import { crewOf } from './crew.ts';
import type { LayoutChange } from './day-problem.ts';
import { changeOver } from './plan-change-over.ts';

/** Stands for the arena with everything on the truck. */
const EMPTY: Pick<Layout, 'obstacles'> = { obstacles: [] };

type Obstacles = Layout['obstacles'];

const cache = pairCache<Obstacles, Obstacles, Seconds>();

function crewText({ people, truckAt: { x, y } }: Crew): string {
  return `${people} ${x} ${y}`;
}

/** The seconds of each change-over between layouts by one crew, worked out once for the same obstacles. */
function changeBy(crew: Crew): LayoutChange {
  return (from, to) => {
    const [a, b] = [(from ?? EMPTY).obstacles, (to ?? EMPTY).obstacles];
    const work = (): Seconds => changeOver(a.map(placedObstacle), b.map(placedObstacle), crew).seconds;
    return cache(a, b, { because: crewText(crew), work });
  };
}

/** What the crew of a course takes from one layout to another; with other people than it has where they are given. */
export function crewChange(course: Course, people = crewOf(course).people): LayoutChange {
  return changeBy({ ...crewOf(course), people });
}

/** How a layout is set out from the truck into the empty arena by the crew of its course. */
export const settingOut = memoizeByIdentity((survey: Survey): ChangeOver => {
  return changeOver([], survey.obstacles, crewOf(survey.course));
});
