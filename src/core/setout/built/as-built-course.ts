import type { Constraint } from '../../constraints/constraint.ts';
import { constraintKind } from '../../constraints/constraints.ts';
import { type Course, currentLayout, type Layout, LONGEST_NAME } from '../../course/course.ts';
import { obstacleOf } from '../../course/ids.ts';
import { branchLayout, freeTitle, replaceLayout } from '../../course/layouts.ts';
import { pieceKey } from '../../course/placed.ts';
import { roundToNanometre } from '../../course/transform.ts';
import type { Obstacle } from '../../obstacles/obstacle.ts';
import { normalizeAngle, type Pose, toLocal } from '../../plane/pose.ts';

/** What the name of an as-built layout ends with, and the number that keeps it apart from others. */
const AS_BUILT = /, as built(?: \(\d+\))?$/;

/**
 * What is left of a constraint where nothing is to be pulled back: one with a number is measured only, one that pins
 * stays, and the others, which cannot be measured only, go.
 */
function released(constraint: Constraint): readonly Constraint[] {
  const kind = constraintKind(constraint.kind);
  if (kind?.pins === true || kind === undefined) return [constraint];
  if (kind.unit === 'none') return [];
  const { hold: _, ...measured } = constraint;
  return [measured];
}

/** The obstacle with pieces at these ground poses; the same object where none of them is its own. */
function laidObstacle(obstacle: Obstacle, poses: ReadonlyMap<string, Pose>): Obstacle {
  if (!obstacle.pieces.some(({ id }) => poses.has(pieceKey(obstacle.id, id)))) return obstacle;
  return {
    ...obstacle,
    pieces: obstacle.pieces.map((piece) => {
      const there = poses.get(pieceKey(obstacle.id, piece.id));
      if (there === undefined) return piece;
      const { x, y, angle } = toLocal(obstacle.pose, there);
      const pose = { x: roundToNanometre(x), y: roundToNanometre(y), angle: normalizeAngle(angle) + 0 };
      return { ...piece, pose };
    }),
  };
}

/**
 * The course with pieces of its shown layout at these ground poses, by key. What holds them stays as it is, met or not: for
 * surveys and checks, which solve nothing.
 */
export function courseWithPiecesAt(course: Course, poses: ReadonlyMap<string, Pose>): Course {
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((obstacle) => laidObstacle(obstacle, poses)),
  }));
}

/** The layout with nothing that would pull a piece of these obstacles elsewhere. */
function releasedLayout(layout: Layout, ids: ReadonlySet<string>): Layout {
  const grips = ({ grips: all }: Constraint): boolean =>
    all.some((grip) => 'piece' in grip && ids.has(obstacleOf(grip.piece)));
  return {
    ...layout,
    obstacles: layout.obstacles.map((obstacle) =>
      ids.has(obstacle.id) ? { ...obstacle, constraints: obstacle.constraints.flatMap(released) } : obstacle,
    ),
    constraints: layout.constraints.flatMap((each) => (grips(each) ? released(each) : [each])),
  };
}

/**
 * The course with one layout more, "…, as built", shown: a branch of the shown one with pieces where they lie on the ground,
 * by key. Pieces keep their ids, and the ride is kept. What held the obstacles is measured only, or goes where it has no
 * number, so that the solver moves nothing.
 */
export function asBuiltCourse(course: Course, poses: ReadonlyMap<string, Pose>): Course {
  const ending = ', as built';
  const stem = [...currentLayout(course).title.replace(AS_BUILT, '')].slice(0, LONGEST_NAME / 2).join('');
  const branch = branchLayout(course, { title: freeTitle(course, `${stem}${ending}`) });
  const ids = new Set([...poses.keys()].map(obstacleOf));
  return replaceLayout(courseWithPiecesAt(branch, poses), (layout) => releasedLayout(layout, ids));
}
