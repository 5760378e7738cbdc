import { angleBetween } from '../../core/constraints/angle-between.ts';
import { angleToWall } from '../../core/constraints/angle-to-wall.ts';
import { apart } from '../../core/constraints/apart.ts';
import { beside } from '../../core/constraints/beside.ts';
import { centresLevel } from '../../core/constraints/centres-level.ts';
import type { Constraint, ConstraintKind, GrippedPose, Wall } from '../../core/constraints/constraint.ts';
import { FLATTEST, gap } from '../../core/constraints/gap.ts';
import { grippedWall, lineAngle } from '../../core/constraints/grip.ts';
import { inLine } from '../../core/constraints/in-line.ts';
import { clearOfMarker } from '../../core/constraints/marker-clear.ts';
import { offWall } from '../../core/constraints/off-wall.ts';
import { parallel } from '../../core/constraints/parallel.ts';
import { square } from '../../core/constraints/square.ts';
import type { Arena } from '../../core/course/course.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { type ResolvedConstraint, resolvedConstraints } from '../../core/course/resolved-constraints.ts';
import { TOUCH } from '../../core/plane/point.ts';
import { ringDistance } from '../../core/plane/segment.ts';
import type { Survey } from '../../core/survey.ts';
import type { DraftConstraint } from './pending.ts';

/** A constraint that could be added as things lie now: adding it moves nothing. */
export interface ConstraintCandidate {
  readonly draft: DraftConstraint;
  /** What it measures, for the words: metres or radians, by the kind. */
  readonly value: number;
}

/** Whether its ends are told apart when it is measured, as its kind says. */
export function isLong({ kind }: PlacedPiece): boolean {
  return kind.extent === 'long';
}

/** A piece as the constraints grip it, at a fraction along it. */
export function heldAt({ pose, figure }: PlacedPiece, at = 0.5): GrippedPose {
  return { pose, length: figure.length, width: figure.width, at };
}

/** The clear distance of the nearest of the pieces to a wall. */
export function offWallCandidate(pieces: readonly PlacedPiece[], wall: Wall, arena: Arena): ConstraintCandidate | null {
  const there = grippedWall(arena, wall);
  const [nearest] = pieces
    .flatMap((piece) =>
      (isLong(piece) ? [0.5, 0, 1] : [0.5]).map((at) => ({
        piece,
        at,
        off: offWall.measure([heldAt(piece, at), there], 1),
      })),
    )
    // Level with the wall, the middle is as near as the ends, and does not fix the angle.
    .sort((a, b) => (Math.abs(a.off - b.off) < TOUCH ? 0 : a.off - b.off));
  if (nearest === undefined) return null;
  const { piece, at, off } = nearest;
  return { draft: { kind: offWall.id, grips: [{ piece: piece.key, at }, { wall }], hold: off }, value: off };
}

/** The angle of a pole to a wall. */
export function wallAngleCandidate(pole: PlacedPiece, wall: Wall, arena: Arena): ConstraintCandidate {
  const held = [heldAt(pole), grippedWall(arena, wall)];
  const { value, side } = shortWay(angleToWall, held);
  return { draft: { kind: angleToWall.id, grips: [{ piece: pole.key }, { wall }], hold: value, side }, value };
}

/** The gap between two poles, taped at a fraction along each; null where the tape would run along one of them. */
export function gapCandidate(
  first: PlacedPiece,
  second: PlacedPiece,
  at: readonly [number, number],
): ConstraintCandidate | null {
  const held = [heldAt(first, at[0]), heldAt(second, at[1])];
  const tip = (piece: PlacedPiece, part: number) => {
    const reach = (part - 0.5) * piece.figure.length;
    return {
      x: piece.pose.x + reach * Math.cos(piece.pose.angle),
      y: piece.pose.y + reach * Math.sin(piece.pose.angle),
    };
  };
  const [a, b] = [tip(first, at[0]), tip(second, at[1])];
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const across = (piece: PlacedPiece) =>
    (-Math.sin(piece.pose.angle) * (b.x - a.x) + Math.cos(piece.pose.angle) * (b.y - a.y)) / chord;
  if (chord < TOUCH || Math.abs(across(first)) < FLATTEST || Math.abs(across(second)) < FLATTEST) return null;
  const side = across(first) > 0 ? 1 : -1;
  const value = gap.measure(held, side);
  const grips = [
    { piece: first.key, at: at[0] },
    { piece: second.key, at: at[1] },
  ];
  return { draft: { kind: gap.id, grips, hold: value, side }, value };
}

/** How far a small thing is clear of another, or of the side of a pole. */
function clearanceCandidate(first: PlacedPiece, second: PlacedPiece): ConstraintCandidate | null {
  if (!isLong(first) && !isLong(second)) {
    const value = apart.measure([heldAt(first), heldAt(second)], 1);
    return { draft: { kind: apart.id, grips: [{ piece: first.key }, { piece: second.key }], hold: value }, value };
  }
  const [thing, pole] = isLong(first) ? [second, first] : [first, second];
  if (isLong(thing)) return null;
  const [x, y] = [thing.pose.x - pole.pose.x, thing.pose.y - pole.pose.y];
  const off = -Math.sin(pole.pose.angle) * x + Math.cos(pole.pose.angle) * y;
  if (Math.abs(off) > (pole.figure.width + thing.figure.width) / 2) {
    const side = off > 0 ? 1 : -1;
    const value = beside.measure([heldAt(thing), heldAt(pole)], side);
    return { draft: { kind: beside.id, grips: [{ piece: thing.key }, { piece: pole.key }], hold: value, side }, value };
  }
  const ahead = Math.cos(pole.pose.angle) * x + Math.sin(pole.pose.angle) * y;
  const at = ahead > 0 ? 1 : 0;
  const value = clearOfMarker.measure([heldAt(thing), heldAt(pole, at)], 1);
  const grips = [{ piece: thing.key }, { piece: pole.key, at }];
  return value < 0 ? null : { draft: { kind: clearOfMarker.id, grips, hold: value }, value };
}

/** The distance between two pieces as a constraint: inside to inside. */
export function distanceCandidate(first: PlacedPiece, second: PlacedPiece): ConstraintCandidate | null {
  if (isLong(first) && isLong(second)) return gapCandidate(first, second, [0.5, 0.5]);
  return clearanceCandidate(first, second);
}

/** How two poles lie to each other: parallel, square, or at an angle; in line and level as well where they are. */
export function directionCandidates(first: PlacedPiece, second: PlacedPiece): readonly ConstraintCandidate[] {
  if (!isLong(first) || !isLong(second)) return [];
  const held = [heldAt(first), heldAt(second)];
  const grips = [{ piece: first.key }, { piece: second.key }];
  const turn = lineAngle(second.pose.angle - first.pose.angle);
  const plain = (kind: ConstraintKind): ConstraintCandidate => ({ draft: { kind: kind.id, grips }, value: 0 });
  if (Math.abs(turn) < TOUCH) {
    const isInLine = Math.abs(inLine.measure(held, 1)) < TOUCH;
    const isLevel = Math.abs(centresLevel.measure(held, 1)) < TOUCH;
    return [plain(isInLine ? inLine : parallel), ...(isLevel ? [plain(centresLevel)] : [])];
  }
  if (Math.abs(Math.abs(turn) - Math.PI / 2) < TOUCH) return [plain(square)];
  const { value, side } = shortWay(angleBetween, held);
  return [{ draft: { kind: angleBetween.id, grips, hold: value, side }, value }];
}

/** An angle between two lines is never said as more than 90°: then it is measured on the other side. */
function shortWay(kind: ConstraintKind, held: Parameters<ConstraintKind['measure']>[0]) {
  const sides = ([1, -1] as const).map((side) => ({ side, value: kind.measure(held, side) }));
  const [left, right] = sides as [(typeof sides)[number], (typeof sides)[number]];
  return right.value < left.value - TOUCH ? right : left;
}

/** The two pieces, one of each list, that lie nearest to each other. */
export function nearestPair(
  some: readonly PlacedPiece[],
  others: readonly PlacedPiece[],
): readonly [PlacedPiece, PlacedPiece] | null {
  const pairs = some.flatMap((one) =>
    others.map((other) => ({ pair: [one, other] as const, far: ringDistance(one.footprint, other.footprint) })),
  );
  return pairs.sort((a, b) => a.far - b.far)[0]?.pair ?? null;
}

function gripsKey({ grips }: Pick<ResolvedConstraint | Constraint, 'grips'>): string {
  return grips
    .map((grip) => ('wall' in grip ? grip.wall : grip.piece))
    .sort()
    .join(' ');
}

/** Whether a constraint of the kind already grips exactly these. */
export function isKept(survey: Survey, draft: DraftConstraint): boolean {
  return resolvedConstraints(survey.layout).some(
    ({ kind, grips }) => kind.id === draft.kind && gripsKey({ grips }) === gripsKey(draft),
  );
}
