import type { Course, Layout } from '../course/course.ts';
import { placedObstacle } from '../course/placed.ts';
import { pairCache } from '../memo/by-identity.ts';
import type { Survey } from '../survey.ts';
import type { CarryNames } from './carry-words.ts';
import type { ChangeOver, Crew } from './change-over.ts';
import { crewOf } from './crew.ts';
import type { LayoutChange } from './day-problem.ts';
import { layoutById } from './layout-survey.ts';
import { changeOver } from './plan-change-over.ts';

type Obstacles = Layout['obstacles'];

/** The arena with everything on the truck. */
const EMPTY: Pick<Layout, 'obstacles'> = { obstacles: [] };

/** By the obstacles before and after, then by the crew in text: a day asks for one crew and for a larger one by turns. */
const plansOf = pairCache<Obstacles, Obstacles, Map<string, ChangeOver>>();

/** How a crew turns one layout into another; null is the empty arena. Cached by the obstacles of both and the crew. */
function planned(from: Layout | null, to: Layout | null, crew: Crew): ChangeOver {
  const [before, after] = [(from ?? EMPTY).obstacles, (to ?? EMPTY).obstacles];
  const plans = plansOf(before, after, { because: '', work: () => new Map() });
  const key = `${crew.people} ${crew.truckAt.x} ${crew.truckAt.y}`;
  const plan = plans.get(key) ?? changeOver(before.map(placedObstacle), after.map(placedObstacle), crew);
  plans.set(key, plan);
  return plan;
}

/** Which layout becomes which, by their ids; null is the empty arena. */
export interface ChangeEnds {
  readonly from: string | null;
  readonly to: string | null;
}

function layoutOrNone(course: Course, id: string | null): Layout | null {
  return id === null ? null : layoutById(course, id);
}

/**
 * How the crew of a course turns one of its layouts into another. Setting out and taking down are the same question about
 * the empty arena. Throws when there is no such layout.
 */
export function layoutChangeOver(course: Course, { from, to }: ChangeEnds): ChangeOver {
  return planned(layoutOrNone(course, from), layoutOrNone(course, to), crewOf(course));
}

/** The layouts whose things a change-over names: for the empty arena, of which nothing is named, the other one. */
export function carryNames(course: Course, { from, to }: ChangeEnds): CarryNames {
  const before = layoutById(course, from ?? to ?? course.current);
  return { from: before, to: to === null ? before : layoutById(course, to), unit: course.unit };
}

/** What the crew of a course takes from one layout to another; with other people than it has where they are given. */
export function crewChange(course: Course, people = crewOf(course).people): LayoutChange {
  const crew = { ...crewOf(course), people };
  return (from, to) => planned(from, to, crew).seconds;
}

/** How a layout is set out from the truck into the empty arena by the crew of its course. */
export function settingOut({ course, layout }: Survey): ChangeOver {
  return planned(null, layout, crewOf(course));
}
