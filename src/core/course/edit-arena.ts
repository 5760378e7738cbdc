/** Changes of the arena itself: its sides and its way in, with the ends of the go that lie at the way in. */
import type { Metres } from '../measure/quantity.ts';
import { distance } from '../plane/point.ts';
import { compose, type Pose, toLocal } from '../plane/pose.ts';
import { mapNonEmpty } from './conflict.ts';
import type { Arena, Course } from './course.ts';
import { entrancePose } from './entrance-pose.ts';

/** An end of the go this near to where one starts at the way in belongs to it. An estimate: two lengths of a horse. */
const AT_WAY_IN: Metres = 6;

/** How long the wall with the way in is. */
function wallLength({ length, width, entrance: { wall } }: Arena): Metres {
  return wall === 'south' || wall === 'north' ? length : width;
}

/** The arena with its way in inside its wall. */
function withWayInAt(arena: Arena, at: Metres): Arena {
  const wall = wallLength(arena);
  const width = Math.min(arena.entrance.width, wall);
  const inside = Math.min(wall - width / 2, Math.max(width / 2, at));
  return { ...arena, entrance: { ...arena.entrance, width, at: inside } };
}

function inside(pose: Pose, { length, width }: Arena): Pose {
  return { ...pose, x: Math.min(length, Math.max(0, pose.x)), y: Math.min(width, Math.max(0, pose.y)) };
}

/**
 * The course in a changed arena. The way in stays at its part of its wall, unless its place is given, and inside it; an
 * end of the go that lies at the way in goes with it, and one that lies elsewhere stays inside the walls. Obstacles stay
 * where they are, measured from the south-west corner. The same course when nothing changes.
 */
export function withArena(course: Course, next: Partial<Arena>): Course {
  const before = course.arena;
  const asked: Arena = { ...before, ...next };
  const isSamePlace = asked.entrance.at === before.entrance.at;
  const part = before.entrance.at / wallLength(before);
  const arena = withWayInAt(asked, isSamePlace ? part * wallLength(asked) : asked.entrance.at);
  if (JSON.stringify(arena) === JSON.stringify(before)) return course;
  const [from, to] = [entrancePose(before), entrancePose(arena)];
  const moved = (pose: Pose): Pose =>
    inside(distance(pose, from) <= AT_WAY_IN ? compose(to, toLocal(from, pose)) : pose, arena);
  return {
    ...course,
    arena,
    layouts: mapNonEmpty(course.layouts, (layout) => {
      const { start, end } = layout.ride;
      return {
        ...layout,
        ride: { ...layout.ride, start: moved(start), ...(end === undefined ? {} : { end: moved(end) }) },
      };
    }),
  };
}
