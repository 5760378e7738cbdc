import type { Mark } from '../../../core/plane/mark.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Pose, toWorld } from '../../../core/plane/pose.ts';

/** Marks given in a frame, on the ground. */
export function movedMarks(marks: readonly Mark[], frame: Pose): readonly Mark[] {
  const move = (at: Point) => toWorld(frame, at);
  return marks.map((mark): Mark => {
    if (mark.kind === 'line') return { ...mark, points: mark.points.map(move) };
    if (mark.kind === 'area') return { ...mark, ring: mark.ring.map(move) };
    return { ...mark, at: move(mark.at) };
  });
}
