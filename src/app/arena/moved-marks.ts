import type { Mark } from '../../core/plane/mark.ts';
import type { Point } from '../../core/plane/point.ts';
import { type Pose, placed } from '../../core/plane/pose.ts';

/** Marks given in a frame, on the ground. */
export function movedMarks(marks: readonly Mark[], frame: Pose): readonly Mark[] {
  const move = (at: Point) => placed(frame, at);
  return marks.map((mark): Mark => {
    switch (mark.kind) {
      case 'line':
        return { ...mark, points: mark.points.map(move) };
      case 'area':
        return { ...mark, ring: mark.ring.map(move) };
      case 'disc':
      case 'words':
        return { ...mark, at: move(mark.at) };
    }
  });
}
