import type { Constraint, ConstraintKind, Grip, GrippedPose, Wall } from '../constraints/constraint.ts';
import { CONSTRAINT_KINDS } from '../constraints/constraints.ts';
import { constraintResiduals, isMeasurable } from '../constraints/residuals.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { distance, TOUCH } from '../plane/point.ts';
import { toWorld } from '../plane/pose.ts';
import type { Arena, Layout } from './course.ts';
import { freeId, pieceOf } from './ids.ts';
import { type PlacedPiece, placedObstacle } from './placed.ts';
import {
  constraintSentence,
  grippedPoses,
  pinnedPieces,
  placedPieces,
  type ResolvedConstraint,
  resolvedConstraints,
} from './resolved-constraints.ts';

/** A constraint that could be added between what is chosen, as it would be stored in the layout. */
export interface ConstraintSuggestion {
  readonly constraint: Constraint;
  readonly title: string;
  /** What it would hold, with the value as it is now. */
  readonly says: string;
  /** True when adding it moves nothing: it is so already. */
  readonly isMet: boolean;
}

/** A kind without a number is nearly met within this, metres or radians. Estimate. */
const NEARLY_MET = 0.3;
/** A constraint is met within this, metres or radians. */
const VALUE_TOLERANCE = 1e-9;

const WALLS: readonly Wall[] = ['south', 'east', 'north', 'west'];

/** The chosen pieces; an obstacle stands for its middle piece. */
function chosenPieces(layout: Layout, keys: readonly string[]): readonly PlacedPiece[] {
  const pieces = placedPieces(layout);
  return keys.flatMap((key) => {
    if (pieceOf(key) !== undefined) return pieces.get(key) ?? [];
    const obstacle = layout.obstacles.find(({ id }) => id === key);
    if (obstacle === undefined) return [];
    const own = placedObstacle(obstacle).pieces;
    return own[Math.floor(own.length / 2)] ?? [];
  });
}

/** The pieces in the order in which a kind takes them, as chosen or the other way round; undefined when it does not. */
function ordered(kind: ConstraintKind, chosen: readonly PlacedPiece[]): readonly PlacedPiece[] | undefined {
  if (chosen.length !== kind.suits.length) return undefined;
  const fits = (pieces: readonly PlacedPiece[]) =>
    pieces.every((piece, i) => kind.suits[i] === 'any' || kind.suits[i] === piece.kind.extent);
  return [chosen, chosen.toReversed()].find(fits);
}

/** The wall that is nearest to the middle of a piece. */
function nearestWall(piece: PlacedPiece, arena: Arena): Wall {
  const { x, y } = piece.pose;
  const far: Readonly<Record<Wall, number>> = { south: y, north: arena.width - y, west: x, east: arena.length - x };
  return WALLS.reduce((best, wall) => (far[wall] < far[best] ? wall : best), 'south');
}

/** Where along two pieces they are gripped: at the pair of ends nearest to one another, where a kind is about ends. */
function fractions(kind: ConstraintKind, [a, b]: readonly PlacedPiece[]): readonly number[] {
  if (kind.ends === undefined || a === undefined || b === undefined) return [];
  const along = ({ pose, figure }: PlacedPiece, at: number) => {
    return toWorld(pose, { x: (at - 0.5) * figure.length, y: 0 });
  };
  const [firsts, seconds] = kind.ends;
  const all = firsts.flatMap((s) => seconds.map((t) => ({ at: [s, t], far: distance(along(a, s), along(b, t)) })));
  // Of equal pairs the first: parallel poles are level at their −x ends.
  return all.reduce((best, each) => (each.far < best.far - TOUCH ? each : best)).at;
}

/** Whether a kind is worth suggesting for pieces that lie so: a kind without a number only where it is nearly met. */
function isWorthSuggesting(kind: ConstraintKind, gripped: readonly GrippedPose[], side: 1 | -1): boolean {
  if (kind.isPlausible?.(gripped, side) === false) return false;
  if (kind.unit !== 'none') return true;
  return constraintResiduals(kind, gripped, { hold: 0, side }).every(({ value }) => Math.abs(value) <= NEARLY_MET);
}

/**
 * The constraints that make sense between what is chosen (pieces, or obstacles by their middle piece), each with its
 * present value: adding one that is met changes nothing. One with no number is there when it is nearly so. What the same
 * grips hold already, and all between pieces that are fixed, is left out.
 */
export function constraintSuggestions(
  { layout, arena, unit }: { readonly layout: Layout; readonly arena: Arena; readonly unit: LengthUnit },
  keys: readonly string[],
): readonly ConstraintSuggestion[] {
  const pieces = placedPieces(layout);
  const chosen = chosenPieces(layout, keys);
  const ids = layout.constraints.map(({ id }) => id);
  const pinned = pinnedPieces(layout);
  const existing = new Set(resolvedConstraints(layout).map(({ kind, grips }) => `${kind.id} ${gripKeys(grips)}`));
  if (chosen.every(({ key }) => pinned.has(key))) return [];
  return CONSTRAINT_KINDS.flatMap((kind): ConstraintSuggestion[] => {
    const order = ordered(kind, chosen);
    const [first] = order ?? [];
    if (order === undefined || first === undefined) return [];
    const at = fractions(kind, order);
    const grips: Grip[] = order.map(({ key }, i) => {
      const where = at[i];
      return where === undefined || where === 0.5 ? { piece: key } : { piece: key, at: where };
    });
    if (kind.takes.includes('wall')) grips.push({ wall: nearestWall(first, arena) });
    const now = grippedPoses({ grips }, arena, pieces);
    if (now === undefined || existing.has(`${kind.id} ${gripKeys(grips)}`)) return [];
    const side = ([1, -1] as const).find((each) => isOnSide(kind, now, each)) ?? 1;
    if (!isMeasurable(kind, now, side) || !isWorthSuggesting(kind, now, side)) return [];
    const value = kind.unit === 'none' ? undefined : kind.measure(now, side);
    const constraint: Constraint = {
      id: freeId(kind.id, ids),
      kind: kind.id,
      grips,
      ...(value === undefined ? {} : { hold: value }),
      ...(kind.sided === undefined ? {} : { side }),
    };
    const resolved: ResolvedConstraint = { key: constraint.id, constraint, kind, grips };
    const isMet = constraintResiduals(kind, now, { hold: value ?? 0, side }).every(
      (row) => Math.abs(row.value) <= VALUE_TOLERANCE,
    );
    return [{ constraint, title: kind.title, says: constraintSentence(resolved, layout, unit), isMet }];
  });
}

/** Whether the pieces lie on this side now. Of the two angles between lines the smaller one is meant. */
function isOnSide(kind: ConstraintKind, gripped: readonly GrippedPose[], side: 1 | -1): boolean {
  if (kind.sided === undefined) return true;
  if (kind.isOnSide !== undefined) return kind.isOnSide(gripped, side);
  const value = kind.measure(gripped, side);
  return kind.unit === 'rad' ? value <= Math.PI / 2 : value >= 0;
}

function gripKeys(grips: readonly Grip[]): string {
  return grips.map((grip) => ('wall' in grip ? grip.wall : grip.piece)).join(' ');
}
