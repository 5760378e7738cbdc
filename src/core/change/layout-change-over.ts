import type { Course, Layout } from '../course/course.ts';
import { type PlacedObstacle, placedObstacle } from '../course/placed.ts';
import { memoizeByIdentity, pairCache } from '../memo/by-identity.ts';
import type { CarryNames } from './carry-words.ts';
import type { ChangeOver } from './change-over.ts';
import { crewOf } from './crew.ts';
import { layoutById } from './layout-survey.ts';
import { changeOver } from './plan-change-over.ts';

/** Stands for the arena with nothing in it. */
const EMPTY: { readonly obstacles: Layout['obstacles'] } = { obstacles: [] };

const placed = memoizeByIdentity((obstacles: Layout['obstacles']): readonly PlacedObstacle[] =>
  obstacles.map(placedObstacle),
);

const planned = pairCache<Layout['obstacles'], Layout['obstacles'], ChangeOver>();

/** Which layout becomes which, by their ids; null is the empty arena. */
export interface LayoutChange {
  readonly from: string | null;
  readonly to: string | null;
}

/** The layouts whose things a change-over names: for the empty arena, of which nothing is named, the other one. */
export function carryNames(course: Course, { from, to }: LayoutChange): CarryNames {
  const [before, after] = [from ?? to, to ?? from].map((id) => layoutById(course, id ?? course.current));
  if (before === undefined || after === undefined) throw new Error('carryNames: two layouts were asked for');
  return { from: before, to: after, unit: course.unit };
}

/**
 * How a crew turns one layout of a course into another, by their ids; null is the empty arena, so that setting out and
 * taking down are the same question. Cached by the obstacles of both and the crew. Throws when there is no such layout.
 */
export function layoutChangeOver(course: Course, { from, to }: LayoutChange): ChangeOver {
  const crew = crewOf(course);
  const [before, after] = [from, to].map((id) => (id === null ? EMPTY : layoutById(course, id)).obstacles);
  if (before === undefined || after === undefined) throw new Error('layoutChangeOver: two layouts were asked for');
  const because = `${crew.people} ${crew.truckAt.x} ${crew.truckAt.y}`;
  return planned(before, after, { because, work: () => changeOver(placed(before), placed(after), crew) });
}
