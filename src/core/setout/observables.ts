import type { Grip } from '../constraints/constraint.ts';
import { tapeBounds } from '../constraints/gap.ts';
import { lineAngle } from '../constraints/grip.ts';
import type { PlacedPiece } from '../course/placed.ts';
import { isDriving, type ResolvedConstraint } from '../course/resolved-constraints.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { distance, type Point } from '../plane/point.ts';
import { toWorld } from '../plane/pose.ts';
import type { Observable } from './setout.ts';

/** An observable, with the constraint that it comes from. */
export interface Candidate extends Observable {
  readonly constraint?: string;
}

/** Poles whose directions differ by less have a gap that can be taped at both ends: 60°. */
const FACING: Radians = Math.PI / 3;
/** Poles that differ by less are taped square across: 5°. */
const NEARLY_PARALLEL: Radians = Math.PI / 36;
/** Poles that face each other over less than this have no two places to tape a gap, metres. */
const LEAST_FACING: Metres = 0.5;
/** As straight, or as square, as a drawing is exact. */
const EXACT: Radians = 1e-6;
/** Nothing is taped over less than this by its ends: the tape's own hook is as long. Metres. */
const SHORTEST: Metres = 0.05;

/** A point of a piece's middle line, `at` 0 … 1 of its length, on the ground. */
export function placeOn({ figure, pose }: PlacedPiece, at: number): Point {
  return toWorld(pose, { x: (at - 0.5) * figure.length, y: 0 });
}

export function isSmall({ kind }: PlacedPiece): boolean {
  return kind.extent === 'small';
}

function isAt(grip: Grip, at: number): boolean {
  return 'piece' in grip && Math.abs((grip.at ?? 0.5) - at) < 1e-9;
}

/** On which side of a piece's middle line a point lies: 1 for its +y side. */
export function sideOf({ pose }: PlacedPiece, { x, y }: Point): 1 | -1 {
  return (x - pose.x) * -Math.sin(pose.angle) + (y - pose.y) * Math.cos(pose.angle) >= 0 ? 1 : -1;
}

function grip({ key }: PlacedPiece, at: number): Grip {
  return { piece: key, at };
}

/** The side that belongs to an observation of two pieces as they are drawn. */
function drawnSide(kind: Observable['kind'], [first, second]: readonly [PlacedPiece, PlacedPiece], at: number): 1 | -1 {
  const isAboutSecond = kind === 'beside' || kind === 'against';
  return isAboutSecond ? sideOf(second, placeOn(first, at)) : sideOf(first, placeOn(second, at));
}

/** Whether an observation is about the line of a small thing, which nobody can see. */
function hasNoLine(kind: Observable['kind'], first: PlacedPiece, second: PlacedPiece): boolean {
  if (kind === 'between') return false;
  if (kind === 'in-line' || kind === 'ahead') return isSmall(first);
  if (kind === 'beside' || kind === 'clear') return isSmall(second);
  return isSmall(first) || isSmall(second);
}

/**
 * How the constraints between a piece and others that lie already are brought about. `laid` has the pieces that lie, by
 * key; constraints that hold nothing, or grip a piece that does not lie, give none.
 */
export function constraintCandidates(
  piece: PlacedPiece,
  laid: ReadonlyMap<string, PlacedPiece>,
  constraints: readonly ResolvedConstraint[],
): readonly Candidate[] {
  const here = (key: string): PlacedPiece | undefined => (key === piece.key ? piece : laid.get(key));
  return constraints.flatMap((resolved) => {
    const { kind, grips, key } = resolved;
    if (
      kind.observed === undefined ||
      !isDriving(resolved) ||
      !grips.some((each) => 'piece' in each && each.piece === piece.key)
    ) {
      return [];
    }
    return kind.observed(grips).flatMap((relation): Candidate[] => {
      const [first, second] = relation.grips;
      if ('wall' in first || 'wall' in second) return [];
      const pair = [here(first.piece), here(second.piece)] as const;
      if (pair[0] === undefined || pair[1] === undefined || pair[0] === pair[1]) return [];
      if (hasNoLine(relation.kind, pair[0], pair[1])) return [];
      const isAboutSecond = relation.kind === 'beside' || relation.kind === 'against';
      const side = drawnSide(relation.kind, [pair[0], pair[1]], (isAboutSecond ? first.at : second.at) ?? 0.5);
      return [{ kind: relation.kind, grips: relation.grips, side, constraint: key }];
    });
  });
}

/** What can be taped and sighted between a piece and one that lies already, whatever holds them together. */
export function plainCandidates(piece: PlacedPiece, held: PlacedPiece): readonly Candidate[] {
  const side = sideOf(held, piece.pose);
  const made = (kind: Observable['kind'], at: number, own: number): Candidate => ({
    kind,
    grips: [grip(held, at), grip(piece, own)],
    side,
  });
  const ends = isSmall(held) ? [0.5] : [0, 1];
  const ownEnds = isSmall(piece) ? [0.5] : [0, 1];
  const straight = ends.flatMap((at) =>
    ownEnds.flatMap((own) =>
      distance(placeOn(held, at), placeOn(piece, own)) > SHORTEST ? [made('between', at, own)] : [],
    ),
  );
  if (isSmall(held)) return straight;
  const ahead = ends.flatMap((at) => ownEnds.map((own) => made('ahead', at, own)));
  const off = ownEnds.flatMap((own) =>
    Math.abs(offLine(held, placeOn(piece, own))) < EXACT ? [made('in-line', 0.5, own)] : [],
  );
  if (isSmall(piece)) {
    return [...straight, ...ahead, ...off, { kind: 'beside', grips: [grip(piece, 0.5), grip(held, 0.5)], side }];
  }
  const turn = lineAngle(piece.pose.angle - held.pose.angle);
  const isOpposite = Math.cos(piece.pose.angle - held.pose.angle) < 0;
  const like = (at: number): number => (isOpposite ? 1 - at : at);
  const facing = Math.abs(turn) < FACING ? facingPlaces(held, piece) : [];
  const gaps = facing.map(([at, own]) => made('gap', at, own));
  // Where a gap is taped inside to inside, the same tape from end to end says nothing more.
  const across = straight.filter(({ grips: [a, b] }) => !facing.some(([at, own]) => isAt(a, at) && isAt(b, own)));
  const levels = Math.abs(turn) < FACING ? [0, 1].map((at) => made('level', at, like(at))) : [];
  const squares = Math.abs(Math.abs(turn) - Math.PI / 2) < EXACT ? [made('square', 0.5, 0.5)] : [];
  return [...gaps, ...levels, ...squares, ...across, ...ahead, ...off];
}

type HeldPlace = readonly [piece: PlacedPiece, at: number];

/** Whether a tape between two places crosses both pieces steeply enough to measure a gap. */
function isTapedAcross(...places: readonly [HeldPlace, HeldPlace]): boolean {
  const gripped = places.map(
    ([
      {
        pose,
        figure: { length, width },
      },
      at,
    ]) => ({ pose, length, width, at }),
  );
  const [[held], [piece, at]] = places;
  return tapeBounds(gripped, sideOf(held, placeOn(piece, at))).every(({ value }) => value === 0);
}

/**
 * Where two long pieces that face each other are taped: at both ends of the stretch over which they do, square across poles
 * that are parallel, at their like ends where they spread. Fractions along the held one and along the other; none where
 * they lie behind each other.
 */
function facingPlaces(held: PlacedPiece, piece: PlacedPiece): readonly (readonly [number, number])[] {
  const turn = lineAngle(piece.pose.angle - held.pose.angle);
  const isOpposite = Math.cos(piece.pose.angle - held.pose.angle) < 0;
  if (Math.abs(turn) > NEARLY_PARALLEL) {
    const likeEnds = [0, 1].map((at) => [at, isOpposite ? 1 - at : at] as const);
    return likeEnds.filter(([at, own]) => isTapedAcross([held, at], [piece, own]));
  }
  const [ux, uy] = [Math.cos(held.pose.angle), Math.sin(held.pose.angle)];
  const ahead = (piece.pose.x - held.pose.x) * ux + (piece.pose.y - held.pose.y) * uy;
  const [half, own] = [held.figure.length / 2, piece.figure.length / 2];
  const [low, high] = [Math.max(-half, ahead - own), Math.min(half, ahead + own)];
  if (high - low < LEAST_FACING) return [];
  const sign = isOpposite ? -1 : 1;
  return [low, high].map((at) => [
    at / held.figure.length + 0.5,
    Math.min(1, Math.max(0, (sign * (at - ahead)) / piece.figure.length + 0.5)),
  ]);
}

function offLine({ pose }: PlacedPiece, { x, y }: Point): Metres {
  return Math.cos(pose.angle) * (y - pose.y) - Math.sin(pose.angle) * (x - pose.x);
}
