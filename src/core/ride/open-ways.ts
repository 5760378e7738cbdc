import type { Course } from '../course/course.ts';
import { takeWays } from '../course/edit-ride.ts';
import { bestWays } from './best-ways.ts';
import type { LineInputs } from './line-of-travel.ts';

/**
 * The course with the ways that its designer left open taken so that the whole ride costs least; what was chosen stays. The
 * inputs are those of the course's line. The same course when no way is open or all are taken so already.
 */
export function takeOpenWays(course: Course, inputs: LineInputs): Course {
  if (inputs.layout.ride.legs.every(({ openWay }) => openWay === undefined)) return course;
  const ways = bestWays(inputs, 'open').groups.flat();
  return ways.length === 0 ? course : takeWays(course, ways);
}
