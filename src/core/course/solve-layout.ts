import { type Draft, produce } from 'immer';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Piece } from '../pieces/piece.ts';
import { compose, normalizeAngle, type Pose, toLocal } from '../plane/pose.ts';
import type { NonEmpty, Outcome, Targets } from '../solve/problem.ts';
import { solve } from '../solve/solve.ts';
import { type Conflict, conflictOf, mapNonEmpty, notSolvedSentence, type StatedConstraint } from './conflict.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf, pieceOf } from './ids.ts';
import { pieceKey } from './placed.ts';
import { constraintSentence, pinnedPieces, resolvedConstraints } from './resolved-constraints.ts';
import { wholeObstacles } from './rigid.ts';
import { type LayoutProblem, layoutProblem } from './solver-problem.ts';

/**
 * `settled`: the layout with its constraints met. `conflict`: conflicts, sets of constraints that cannot all hold, each
 * with what may be dropped. `lost`: no solution was found; `worst` were not met. On a conflict, or when lost, nothing
 * moves.
 */
export type LayoutOutcome =
  | { readonly kind: 'settled'; readonly layout: Layout }
  | { readonly kind: 'conflict'; readonly conflicts: NonEmpty<Conflict>; readonly says: string }
  | { readonly kind: 'lost'; readonly worst: NonEmpty<StatedConstraint>; readonly says: string };

/** Pieces that moved together to within this, metres and radians, take the frame of their obstacle along. */
const AS_ONE = 1e-11;

/** Obstacles of which a layout constraint grips a piece, and those with a piece that stays. */
function constrainedObstacles(layout: Layout): ReadonlySet<string> {
  const gripped = resolvedConstraints(layout).flatMap(({ owner, grips }) =>
    owner === undefined ? grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])) : [],
  );
  return new Set([...gripped, ...pinnedPieces(layout)].map(obstacleOf));
}

/** Targets of whole obstacles that nothing holds: these go to their target without solving. */
function freeTargets(layout: Layout, targets: Targets): Targets {
  const whole = [...targets].filter(([key]) => pieceOf(key) === undefined);
  if (whole.length === 0) return new Map();
  const constrained = constrainedObstacles(layout);
  const pulled = new Set([...targets.keys()].filter((key) => pieceOf(key) !== undefined).map(obstacleOf));
  return new Map(whole.filter(([key]) => !constrained.has(key) && !pulled.has(key)));
}

/**
 * The targets for the solver, one for each body: a target of an obstacle that is not rigid becomes one for each of its
 * pieces.
 */
function bodyTargets(layout: Layout, targets: Targets, whole: ReadonlySet<string>): Targets {
  const shared = layout.obstacles.flatMap((obstacle) => {
    const frame = targets.get(obstacle.id);
    if (frame === undefined) return [];
    if (whole.has(obstacle.id)) return [[obstacle.id, frame] as const];
    return obstacle.pieces.map((piece) => [pieceKey(obstacle.id, piece.id), compose(frame, piece.pose)] as const);
  });
  return new Map([...shared, ...[...targets].filter(([key]) => pieceOf(key) !== undefined)]);
}

/** The frame in which the piece, where it lies in its obstacle, comes to the ground pose. */
function frameFor(piece: Piece, ground: Pose): Pose {
  const turned = { x: 0, y: 0, angle: ground.angle - piece.pose.angle };
  const offset = compose(turned, piece.pose);
  return { x: ground.x - offset.x, y: ground.y - offset.y, angle: normalizeAngle(turned.angle) };
}

function isAt(pose: Pose, there: Pose): boolean {
  const far = Math.max(Math.abs(pose.x - there.x), Math.abs(pose.y - there.y));
  return far <= AS_ONE && Math.abs(normalizeAngle(pose.angle - there.angle)) <= AS_ONE;
}

/** Puts an obstacle's pieces at new ground poses; its frame moves along when all of them moved together. */
function layPieces(obstacle: Draft<Obstacle>, moved: ReadonlyMap<string, Pose>): void {
  const [first] = obstacle.pieces;
  const firstPose = first === undefined ? undefined : moved.get(first.id);
  if (first !== undefined && firstPose !== undefined && moved.size === obstacle.pieces.length) {
    const frame = frameFor(first, firstPose);
    const asOne = obstacle.pieces.every((piece) => {
      const there = moved.get(piece.id);
      return there !== undefined && isAt(compose(frame, piece.pose), there);
    });
    if (asOne) {
      obstacle.pose = frame;
      return;
    }
  }
  for (const piece of obstacle.pieces) {
    const there = moved.get(piece.id);
    if (there === undefined) continue;
    const { x, y, angle } = toLocal(obstacle.pose, there);
    piece.pose = { x, y, angle: normalizeAngle(angle) };
  }
}

function withPoses(layout: Layout, poses: ReadonlyMap<string, Pose>, { pieces, whole }: LayoutProblem): Layout {
  const moved = (obstacle: Obstacle) =>
    new Map(
      obstacle.pieces.flatMap(({ id }) => {
        const key = pieceKey(obstacle.id, id);
        const pose = poses.get(key);
        return pose === undefined || pose === pieces.get(key)?.pose ? [] : [[id, pose] as const];
      }),
    );
  return produce(layout, ({ obstacles }) => {
    layout.obstacles.forEach((before, i) => {
      const obstacle = () => obstacles[i] as Draft<Obstacle>;
      if (!whole.has(before.id)) {
        const there = moved(before);
        if (there.size > 0) layPieces(obstacle(), there);
        return;
      }
      const frame = poses.get(before.id) ?? before.pose;
      if (frame !== before.pose) obstacle().pose = { x: frame.x, y: frame.y, angle: normalizeAngle(frame.angle) };
    });
  });
}

const cache = new WeakMap<Layout, { readonly arena: Arena; readonly by: Map<string, LayoutProblem> }>();

/**
 * The layout as a solver problem, with some obstacles loosened: the same object for the same layout, as in the steps of
 * a drag. Without `loosened` all are.
 */
function cachedProblem(layout: Layout, arena: Arena, loosened?: ReadonlySet<string>): LayoutProblem {
  const entry = cache.get(layout);
  const cached = entry?.arena === arena ? entry : { arena, by: new Map<string, LayoutProblem>() };
  if (cached !== entry) cache.set(layout, cached);
  const key = loosened === undefined ? 'all' : `some ${[...loosened].join(' ')}`;
  const made = cached.by.get(key) ?? layoutProblem(layout, arena, loosened && wholeObstacles(layout, loosened));
  cached.by.set(key, made);
  return made;
}

/**
 * The layout with its constraints met and the targets approached as far as they allow. A target is the ground pose of a
 * piece (`fan-1/pole-2`) or of an obstacle's frame (`fan-1`). What is constrained to a target is solved and moves
 * least; the rest keeps the same objects; fixed pieces never move. Without targets every constraint is brought to zero.
 * An obstacle moves as one rigid body, its pieces at their exact places in it, unless one of its pieces has a target,
 * the layout joins two of its pieces, or its own constraints are not met; one with a fixed piece stays. Only when rigid
 * obstacles cannot meet the constraints do their pieces move one by one. During a drag, pass the layout from its
 * beginning (the same object): the answer then depends on the pointer's position and not on its path.
 */
export function solveLayout(
  layout: Layout,
  arena: Arena,
  targets: Targets,
  { unit = 'ft' }: { readonly unit?: LengthUnit } = {},
): LayoutOutcome {
  const free = freeTargets(layout, targets);
  const start = produce(layout, ({ obstacles }) => {
    layout.obstacles.forEach(({ id }, i) => {
      const frame = free.get(id);
      if (frame !== undefined) (obstacles[i] as Draft<Obstacle>).pose = frame;
    });
  });
  const left = new Map([...targets].filter(([key]) => !free.has(key)));
  if (targets.size > 0 && left.size === 0) return { kind: 'settled', layout: start };
  const pulled = [...left.keys()].filter((key) => pieceOf(key) !== undefined).map(obstacleOf);
  const whole = cachedProblem(start, arena, new Set(pulled));
  const outcome = solve(whole.problem, bodyTargets(start, left, whole.whole));
  if (outcome.outcome === 'met') return { kind: 'settled', layout: withPoses(start, outcome.poses, whole) };
  const pieces = cachedProblem(start, arena);
  const retried = whole.whole.size === 0 ? outcome : solve(pieces.problem, bodyTargets(start, left, pieces.whole));
  if (retried.outcome === 'met') return { kind: 'settled', layout: withPoses(start, retried.poses, pieces) };
  return outcome.outcome === 'conflict'
    ? failure(outcome, { layout: start, whole: whole.whole, unit })
    : failure(retried, { layout: start, whole: pieces.whole, unit });
}

interface FailureContext {
  readonly layout: Layout;
  readonly whole: ReadonlySet<string>;
  readonly unit: LengthUnit;
}

function failure(
  outcome: Exclude<Outcome, { outcome: 'met' }>,
  { layout, whole, unit }: FailureContext,
): LayoutOutcome {
  const all = resolvedConstraints(layout);
  const stated = (key: string): StatedConstraint => {
    const resolved = all.find((each) => each.key === key);
    return { key, says: resolved === undefined ? key : constraintSentence(resolved, layout, unit) };
  };
  const place = ({ key }: StatedConstraint) => all.findIndex((each) => each.key === key);
  if (outcome.outcome === 'lost') {
    const worst = mapNonEmpty(outcome.worst, stated);
    return { kind: 'lost', worst, says: notSolvedSentence(worst) };
  }
  const conflicts = mapNonEmpty(outcome.conflicts, (set) => {
    const [first, ...rest] = mapNonEmpty(set, stated).toSorted((a, b) => place(a) - place(b));
    return conflictOf(first === undefined ? [stated(set[0])] : [first, ...rest], { layout, whole });
  });
  return { kind: 'conflict', conflicts, says: conflicts.map(({ says }) => says).join(' ') };
}
