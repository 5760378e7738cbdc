/** Where the go starts and where it ends: points on the ground that can be dragged at every stage. */
import type { Arena, Course } from '../../core/course/course.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import { poseAt } from '../../core/plane/path.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import type { Survey } from '../../core/survey.ts';
import { RIDE_END, RIDE_START } from '../selection/selection.ts';

/** A key of one of the two ends of the go. */
export type RideEnd = typeof RIDE_START | typeof RIDE_END;

export function isRideEnd(key: string | undefined): key is RideEnd {
  return key === RIDE_START || key === RIDE_END;
}

/** Both ends as they are shown: an end that nobody set is where the line ends. */
export function shownRideEnds({ layout, line }: Survey): readonly { readonly key: RideEnd; readonly at: Pose }[] {
  const { start, end } = layout.ride;
  const last = line.elements.at(-1);
  const lineEnd = last === undefined || last.path.length === 0 ? undefined : poseAt(last.path, last.length);
  const shown = end ?? lineEnd;
  return [{ key: RIDE_START, at: start }, ...(shown === undefined ? [] : [{ key: RIDE_END, at: shown } as const])];
}

/** The end of the go within reach of a point on the ground; null for none. */
export function rideEndAt(survey: Survey, at: Point, reach: number): RideEnd | null {
  const [nearest] = shownRideEnds(survey)
    .map((each) => ({ key: each.key, off: distance(each.at, at) }))
    .filter(({ off }) => off <= reach)
    .sort((a, b) => a.off - b.off);
  return nearest?.key ?? null;
}

/** The nearest place inside the walls. */
function insideArena<At extends Point>(at: At, { length, width }: Pick<Arena, 'length' | 'width'>): At {
  return { ...at, x: Math.min(length, Math.max(0, at.x)), y: Math.min(width, Math.max(0, at.y)) };
}

/** The course with an end of the go at a pose; beyond the walls it stays at the wall. */
export function moveRideEnd(course: Course, key: RideEnd, pose: Pose): Course {
  const at = insideArena(pose, course.arena);
  return replaceLayout(course, (layout) => ({
    ...layout,
    ride: { ...layout.ride, [key === RIDE_START ? 'start' : 'end']: at },
  }));
}

/** The course whose go ends where its last obstacle does. */
export function withoutRideEnd(course: Course): Course {
  return replaceLayout(course, (layout) => {
    const { end, ...ride } = layout.ride;
    return end === undefined ? layout : { ...layout, ride };
  });
}
