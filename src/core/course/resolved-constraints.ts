import type { Constraint, ConstraintKind, Grip, GrippedPose, Wall } from '../constraints/constraint.ts';
import { constraintKind } from '../constraints/constraints.ts';
import { grippedWall } from '../constraints/grip.ts';
import { printAngle } from '../measure/angle.ts';
import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Pose } from '../plane/pose.ts';
import { capitalized } from '../text/sentence.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf, pieceOf } from './ids.ts';
import { type PlacedPiece, pieceKey, placedObstacle } from './placed.ts';

/**
 * A constraint of a layout with its grips as keys of the layout. `key` is `obstacle/constraint`, or the id of one of
 * the layout's own. Without a `hold` where its kind has a number it is a reference dimension.
 */
export interface ResolvedConstraint {
  readonly key: string;
  /** The obstacle that owns it; absent for a constraint of the layout. */
  readonly owner?: string;
  readonly constraint: Constraint;
  readonly kind: ConstraintKind;
  readonly grips: readonly Grip[];
}

/** Whether it is enforced; a kind without a number always is. */
export function isDriving({ constraint, kind }: Pick<ResolvedConstraint, 'constraint' | 'kind'>): boolean {
  return constraint.hold !== undefined || kind.unit === 'none';
}

function fits(kind: ConstraintKind, grips: readonly Grip[]): boolean {
  return (
    grips.length === kind.takes.length &&
    grips.every((grip, i) => ('wall' in grip ? 'wall' : 'piece') === kind.takes[i])
  );
}

/** The constraints inside an obstacle, with their grips as keys of the layout. */
const insideConstraints = memoizeByIdentity((obstacle: Obstacle) =>
  obstacle.constraints.map((constraint) => ({
    key: pieceKey(obstacle.id, constraint.id),
    owner: obstacle.id,
    constraint,
    grips: constraint.grips.map((grip) =>
      'wall' in grip ? grip : { ...grip, piece: pieceKey(obstacle.id, grip.piece) },
    ),
  })),
);

/** Every constraint, inside obstacles first. One of an unknown kind, or with grips that its kind does not take, is left out. */
export const resolvedConstraints = memoizeByIdentity((layout: Layout): readonly ResolvedConstraint[] => {
  const inside = layout.obstacles.flatMap(insideConstraints);
  const across = layout.constraints.map((constraint) => ({ key: constraint.id, constraint, grips: constraint.grips }));
  const made = [...inside, ...across].flatMap((each): ResolvedConstraint[] => {
    const kind = constraintKind(each.constraint.kind);
    return kind === undefined || !fits(kind, each.grips) ? [] : [{ ...each, kind }];
  });
  return made;
});

export function placedPieces(layout: Layout): ReadonlyMap<string, PlacedPiece> {
  return new Map(
    layout.obstacles.flatMap((obstacle) => placedObstacle(obstacle).pieces.map((piece) => [piece.key, piece] as const)),
  );
}

/** The pieces that are not to move: marked as fixed, or gripped by a constraint that pins. */
export function pinnedPieces(layout: Layout): ReadonlySet<string> {
  const marked = layout.obstacles.flatMap((obstacle) =>
    obstacle.pieces.flatMap((piece) => (piece.fixed === true ? [pieceKey(obstacle.id, piece.id)] : [])),
  );
  const byConstraint = resolvedConstraints(layout).flatMap(({ kind, grips }) =>
    kind.pins ? grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])) : [],
  );
  return new Set([...marked, ...byConstraint]);
}

export type GripSize = Omit<GrippedPose, 'pose'>;

/** The sizes of what is gripped, with where; undefined when a piece is not there. */
export function gripSizes(
  { grips }: Pick<ResolvedConstraint, 'grips'>,
  arena: Arena,
  pieces: ReadonlyMap<string, PlacedPiece>,
): readonly GripSize[] | undefined {
  const sizes = grips.flatMap((grip): GripSize[] => {
    if ('wall' in grip) return [grippedWall(arena, grip.wall)];
    const figure = pieces.get(grip.piece)?.figure;
    return figure === undefined ? [] : [{ length: figure.length, width: figure.width, at: grip.at ?? 0.5 }];
  });
  return sizes.length === grips.length ? sizes : undefined;
}

/** What is gripped, where it lies now; undefined when a piece is not there. */
export function grippedPoses(
  resolved: Pick<ResolvedConstraint, 'grips'>,
  arena: Arena,
  pieces: ReadonlyMap<string, PlacedPiece>,
): readonly GrippedPose[] | undefined {
  const sizes = gripSizes(resolved, arena, pieces);
  return sizes?.map(({ length, width, at }, i) => {
    const grip = resolved.grips[i] as Grip;
    const pose: Pose =
      'wall' in grip ? grippedWall(arena, grip.wall).pose : (pieces.get(grip.piece) as PlacedPiece).pose;
    return { pose, length, width, at };
  });
}

export const wallKey = (wall: Wall): string => `wall ${wall}`;

/** `pole 2 of fan 1`, or by the obstacle's own name; `the south wall`. */
export function gripName(grip: Grip, layout: Layout): string {
  if ('wall' in grip) return `the ${grip.wall} wall`;
  const owner = layout.obstacles.find(({ id }) => id === obstacleOf(grip.piece));
  const piece = (pieceOf(grip.piece) ?? grip.piece).replaceAll('-', ' ');
  return `${piece} of ${owner?.name ?? (owner?.id ?? obstacleOf(grip.piece)).replaceAll('-', ' ')}`;
}

/** A value of a kind in the course's unit; empty for a kind without a number. */
export function printMeasure(kind: ConstraintKind, value: number, unit: LengthUnit): string {
  return kind.unit === 'm' ? printLength(value, unit) : kind.unit === 'rad' ? printAngle(value) : '';
}

/** What a constraint holds, in one sentence, with its value in the course's unit. */
export function constraintSentence(resolved: ResolvedConstraint, layout: Layout, unit: LengthUnit): string {
  const { constraint, kind, grips } = resolved;
  const names = grips.map((grip) => gripName(grip, layout));
  const says = kind.sentence(names, printMeasure(kind, constraint.hold ?? 0, unit));
  return capitalized(says);
}
