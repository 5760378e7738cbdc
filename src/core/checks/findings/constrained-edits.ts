import { gap } from '../../constraints/gap.ts';
import { type Course, currentLayout, type Layout } from '../../course/course.ts';
import { placeAt, rebuildObstacle } from '../../course/edit-obstacles.ts';
import { obstacleOf, pieceOf } from '../../course/ids.ts';
import { editCurrentLayout, replaceLayout } from '../../course/layouts.ts';
import { placedObstacle } from '../../course/placed.ts';
import { solveLayout } from '../../course/solve-layout.ts';
import { derivedHolds } from '../../obstacles/derived-holds.ts';
import type { Infeasible } from '../../obstacles/obstacle.ts';
import type { Pose } from '../../plane/pose.ts';

/** Poses are the same within this, metres and radians. */
const SAME = 1e-4;

const infeasible = (why: string): Infeasible => ({ kind: 'infeasible', why, facts: {} });

function poseOf(layout: Layout, key: string): Pose | undefined {
  const obstacle = layout.obstacles.find(({ id }) => id === obstacleOf(key));
  if (obstacle === undefined) return undefined;
  return placedObstacle(obstacle).pieces.find((piece) => piece.key === key)?.pose;
}

/** The course with its constraints met and the pieces as near to the targets as the constraints allow. */
function solveTowards(course: Course, targets: ReadonlyMap<string, Pose>): Course | Infeasible {
  const outcome = solveLayout(currentLayout(course), course.arena, targets, { unit: course.unit });
  return outcome.kind === 'settled' ? replaceLayout(course, () => outcome.layout) : infeasible(outcome.says);
}

/** One piece put at a pose, where its constraints let it stay; infeasible where they pull it back. */
export function movePieceTo(course: Course, key: string, pose: Pose): Course | Infeasible {
  const next = solveTowards(placeAt(course, key, pose), new Map([[key, pose]]));
  if ('kind' in next) return next;
  const there = poseOf(currentLayout(next), key);
  if (there === undefined) return infeasible('The piece is not there.');
  const off = Math.max(
    Math.abs(there.x - pose.x),
    Math.abs(there.y - pose.y),
    Math.abs(Math.sin(there.angle - pose.angle)),
  );
  return off <= SAME ? next : infeasible('What holds the piece pulls it back.');
}

/**
 * The gap between two pieces of one obstacle set to `taped`, in its constraint as well as on the ground; what is
 * constrained to the far piece moves with it. Where no constraint holds the gap, only the far piece is put at `pose`.
 */
export function resizeGap(course: Course, { keys, far, taped, pose }: GapTarget): Course | Infeasible {
  const [a, b] = keys.map(pieceOf);
  const id = obstacleOf(far);
  let isConstrained = false;
  const changed = editCurrentLayout(course, ({ obstacles }) => {
    for (const constraint of obstacles.find((each) => each.id === id)?.constraints ?? []) {
      const names = constraint.grips.map((grip) => ('piece' in grip ? grip.piece : undefined));
      const joins = names.includes(a) && names.includes(b);
      // A gap that is held at the poles' ends (a fan's inner gap) is not the one on the line: it stays.
      const isAtEnds = constraint.grips.every((grip) => 'piece' in grip && grip.at === 0);
      if (constraint.kind !== gap.id || !joins || constraint.hold === undefined || isAtEnds) continue;
      constraint.hold = taped;
      isConstrained = true;
    }
  });
  if (!isConstrained) return movePieceTo(course, far, pose);
  const whole = asParameter(course, { id, names: [a, b], taped });
  if (whole !== undefined) return whole;
  return solveTowards(changed, new Map([[far, pose]]));
}

/**
 * The same by the obstacle's own parameter, where the gap between the two is all that follows it: a number has one home.
 * Undefined where other gaps follow it too, or none does.
 */
function asParameter(
  course: Course,
  {
    id,
    names,
    taped,
  }: { readonly id: string; readonly names: readonly (string | undefined)[]; readonly taped: number },
): Course | Infeasible | undefined {
  const obstacle = currentLayout(course).obstacles.find((each) => each.id === id);
  if (obstacle === undefined) return undefined;
  const derived = derivedHolds(obstacle);
  const followers = obstacle.constraints.filter(({ id: own, hold }) => hold !== undefined && derived.has(own));
  const gapOf = followers.find(
    ({ kind, grips }) => kind === gap.id && grips.every((grip) => 'piece' in grip && names.includes(grip.piece)),
  );
  const found = gapOf === undefined ? undefined : derived.get(gapOf.id);
  const now = found === undefined ? undefined : obstacle.values[found.param];
  if (found === undefined || typeof now !== 'number') return undefined;
  if (followers.filter(({ id: own }) => derived.get(own)?.param === found.param).length > 1) return undefined;
  const value = now + (taped - found.hold) / found.slope;
  return rebuildObstacle(course, id, { [found.param]: value }, { reset: [found.param] });
}

export interface GapTarget {
  readonly keys: readonly [string, string];
  /** The piece that moves. */
  readonly far: string;
  readonly taped: number;
  readonly pose: Pose;
}

/** The obstacle's pieces moved until its constraints are met; infeasible where they cannot be. */
export function straighten(course: Course, id: string): Course | Infeasible {
  const layout = currentLayout(course);
  const obstacle = layout.obstacles.find((each) => each.id === id);
  const [first] = obstacle === undefined ? [] : placedObstacle(obstacle).pieces;
  if (first === undefined) return infeasible('There is nothing to straighten.');
  return solveTowards(course, new Map([[first.key, first.pose]]));
}

/** The obstacle built again from its values, at its place. */
export function layOutAgain(course: Course, id: string): Course | Infeasible {
  return rebuildObstacle(course, id, {}, { reset: 'all' });
}
