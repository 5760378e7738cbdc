import { grippedWall } from '../../core/constraints/grip.ts';
import { constraintResiduals } from '../../core/constraints/residuals.ts';
import type { Course } from '../../core/course/course.ts';
import { currentLayout } from '../../core/course/course.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import {
  gripSizes,
  isDriving,
  placedPieces,
  printMeasure,
  type ResolvedConstraint,
  resolvedConstraints,
} from '../../core/course/resolved-constraints.ts';
import { TOUCH } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import { survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import type { Keys } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';
import { constraintWords } from './kept-words.ts';

/** How far a constraint would be off if the pieces lay where the pointer asks, and the others where they are now. */
function deviation(course: Course, holding: ResolvedConstraint, targets: ReadonlyMap<string, Pose>): number {
  const pieces = placedPieces(currentLayout(course));
  const sizes = gripSizes(holding, course.arena, pieces);
  if (sizes === undefined) return 0;
  const held = holding.grips.flatMap((grip, i) => {
    const size = sizes[i];
    const pose =
      'wall' in grip
        ? grippedWall(course.arena, grip.wall).pose
        : (targets.get(grip.piece) ?? pieces.get(grip.piece)?.pose);
    return size === undefined || pose === undefined ? [] : [{ ...size, pose }];
  });
  const { hold = 0, side = 1 } = holding.constraint;
  return Math.max(0, ...constraintResiduals(holding.kind, held, { hold, side }).map(({ value }) => Math.abs(value)));
}

/**
 * The constraint that keeps pieces from where the pointer asks (ground poses by piece): the one that would be off most,
 * as a guide to show.
 */
export function blockingGuides(course: Course, targets: ReadonlyMap<string, Pose>): readonly Guide[] {
  const [worst] = resolvedConstraints(currentLayout(course))
    .filter((each) => isDriving(each) && each.grips.some((grip) => 'piece' in grip && targets.has(grip.piece)))
    .map((holding) => ({ holding, off: deviation(course, holding, targets) }))
    .sort((a, b) => b.off - a.off);
  if (worst === undefined || worst.off < TOUCH) return [];
  const { holding } = worst;
  const text = printMeasure(holding.kind, holding.constraint.hold ?? 0, course.unit);
  return [{ says: messages.stoppedBy(constraintWords(survey(course), [holding], text).says), marks: [] }];
}

/** The same for whole obstacles, from the course in which they lie where the pointer asks. */
export function obstacleBlockingGuides(course: Course, moved: Course, ids: Keys): readonly Guide[] {
  const wanted = currentLayout(moved).obstacles.filter((each) => ids.includes(each.id));
  const pieces = wanted.flatMap((each) => placedObstacle(each).pieces);
  return blockingGuides(course, new Map(pieces.map((piece) => [piece.key, piece.pose])));
}
