/** The mirror image of a whole course, about the line along the middle of its arena. */
import type { Arena, Course, Layout } from '../../../src/core/course/course.ts';
import { mirroredBuilt } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';

const OTHER = { left: 'right', right: 'left' } as const;
const WALLS = { south: 'north', north: 'south', east: 'east', west: 'west' } as const;

function mirroredObstacle(obstacle: Obstacle, across: (at: Pose) => Pose): Obstacle {
  const { pieces, constraints, passages } = mirroredBuilt({ ...obstacle, kind: 'built', facts: {} });
  return {
    ...obstacle,
    pose: across(obstacle.pose),
    side: obstacle.side === 1 ? -1 : 1,
    pieces,
    constraints,
    passages,
  };
}

function mirroredLayout(layout: Layout, { width }: Arena): Layout {
  const across = (at: Pose): Pose => ({ x: at.x, y: width - at.y, angle: -at.angle });
  const { start, legs, end } = layout.ride;
  return {
    ...layout,
    obstacles: layout.obstacles.map((each) => mirroredObstacle(each, across)),
    constraints: [],
    ride: {
      start: across(start),
      legs: legs.map(({ lead, bends, passes, ...leg }) => ({
        ...leg,
        ...(lead === undefined ? {} : { lead: OTHER[lead] }),
        bends: bends.map(({ x, y }) => ({ x, y: width - y })),
        ...(passes === undefined ? {} : { passes: passes.map((each) => ({ ...each, hand: OTHER[each.hand] })) }),
      })),
      ...(end === undefined ? {} : { end: across(end) }),
    },
  };
}

export function mirroredCourse(course: Course): Course {
  const { arena } = course;
  const { wall, at, width } = arena.entrance;
  const isSide = wall === 'west' || wall === 'east';
  const entrance = { wall: WALLS[wall], at: isSide ? arena.width - at : at, width };
  const [first, ...rest] = course.layouts;
  const mirrored = (layout: Layout): Layout => mirroredLayout(layout, arena);
  return { ...course, arena: { ...arena, entrance }, layouts: [mirrored(first), ...rest.map(mirrored)] };
}
