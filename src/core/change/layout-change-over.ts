import type { Course, Layout } from '../course/course.ts';
import { type PlacedObstacle, placedObstacle } from '../course/placed.ts';
import { memoizeByIdentity, pairCache } from '../memo/by-identity.ts';
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

/**
 * How a crew turns one layout of a course into another, by their ids; null is the empty arena, so that setting out and
 * taking down are the same question. Cached by the obstacles of both and the crew. Throws when there is no such layout.
 */
export function layoutChangeOver(
  course: Course,
  { from, to }: { readonly from: string | null; readonly to: string | null },
): ChangeOver {
  const crew = crewOf(course);
  const [before, after] = [from, to].map((id) => (id === null ? EMPTY : layoutById(course, id)).obstacles);
  if (before === undefined || after === undefined) throw new Error('layoutChangeOver: two layouts were asked for');
  const because = `${crew.people} ${crew.truckAt.x} ${crew.truckAt.y}`;
  return planned(before, after, { because, work: () => changeOver(placed(before), placed(after), crew) });
}
