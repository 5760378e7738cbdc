import { figureOf, type PlacedObstacle, type PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { completeValues } from '../pieces/params.ts';
import type { Handling, Piece, PieceKind } from '../pieces/piece.ts';
import { pieceKind } from '../pieces/pieces.ts';
import { distance, type Point } from '../plane/point.ts';
import { compose, type Pose, toWorld } from '../plane/pose.ts';
import { type Ring, transformRing } from '../plane/ring.ts';
import type { Load } from './change-over.ts';
import { USUAL_CREW } from './crew.ts';

/** Of a kind that says nothing about it. */
const PLAIN: Handling = { carriers: 'one', alike: 'no-turn' };

function kindOf({ kind }: Piece): PieceKind {
  const found = pieceKind(kind);
  if (found === undefined) throw new Error(`loads: there is no piece kind ${kind}`);
  return found;
}

/** How a load is handled; a riser is as small as a marker. */
export function handlingOf({ thing, piece }: Load): Handling {
  return thing === 'riser' ? RISER : (kindOf(piece).handling ?? PLAIN);
}

const RISER: Handling = { carriers: 'several', alike: 'any-turn' };

/** To the micrometre, as the truck list tells sizes apart: a file's last digit is no other pole. */
function sizeWords(value: number | string): string {
  return typeof value === 'number' ? String(Math.round(value * 1e6)) : value;
}

/** Whether its two ends are measured, and not one spot. */
export function isLong({ thing, piece }: Load): boolean {
  return thing === 'piece' && kindOf(piece).extent === 'long';
}

/** What two things must have in common so that a crew may take either: kind, sizes, shape, paint, not the rigging. */
const typeOf = memoizeByIdentity((piece: Piece): string => {
  const { params, handling } = kindOf(piece);
  const values = Object.entries(completeValues(params, piece.values))
    .filter(([key]) => params[key] !== undefined && !(handling?.rigging ?? []).includes(key))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return [piece.kind, ...values.map(([key, value]) => `${key} ${sizeWords(value)}`)].join(', ');
});

/** Whether two people carry it, where there are two. */
function isForTwo(piece: Piece): boolean {
  const { carriers } = kindOf(piece).handling ?? PLAIN;
  if (carriers !== 'by-length') return carriers === 'two';
  return figureOf(kindOf(piece), piece.values).length >= USUAL_CREW.twoCarryFrom.value - 1e-6;
}

/** Whether it wants two people, also where one person alone has to carry it. */
export function wantsTwo({ thing, piece }: Load): boolean {
  return thing === 'piece' && isForTwo(piece);
}

/** Its two ends along x, in the order in which they are told apart: a gate with its latch at the other end is turned. */
function bothEnds(piece: Piece, pose: Pose): readonly [Point, Point] {
  const { length } = figureOf(kindOf(piece), piece.values);
  const turn = kindOf(piece).handling?.turnedBy?.(piece.values) ?? 0;
  const frame = { ...pose, angle: pose.angle + turn };
  return [toWorld(frame, { x: -length / 2, y: 0 }), toWorld(frame, { x: length / 2, y: 0 })];
}

/** A piece as a load, at any pose. */
function pieceLoad({ key, obstacle, piece, pose }: PlacedPiece, people: number): Load {
  const held: Load['held'] = people > 1 && isForTwo(piece) ? bothEnds(piece, pose) : [{ x: pose.x, y: pose.y }];
  return { key, obstacle, type: typeOf(piece), thing: 'piece', piece, pose, held };
}

function risersOf({ key, obstacle, piece, pose, kind }: PlacedPiece): readonly Load[] {
  return (kind.handling?.fittings?.(piece.values) ?? []).map(({ end, at, height }) => {
    const type = `riser, height ${sizeWords(height)}`;
    const there = compose(pose, { ...at, angle: 0 });
    return {
      key: `${key}:${end}`,
      obstacle,
      type,
      thing: 'riser',
      piece,
      pose: there,
      held: [{ x: there.x, y: there.y }],
    };
  });
}

const loadsOfPiece = memoizeByIdentity((placed: PlacedPiece, alone: boolean): readonly Load[] => {
  return [pieceLoad(placed, alone ? 1 : 2), ...risersOf(placed)];
});

/** All that lies on the ground, as a crew of so many carries it: one person alone holds a long pole by its middle. */
export function loadsOf(obstacles: readonly PlacedObstacle[], people: number): readonly Load[] {
  return obstacles.flatMap(({ pieces }) => pieces.flatMap((piece) => loadsOfPiece(piece, people < 2)));
}

/** The same thing lying elsewhere. */
export function loadAt(load: Load, pose: Pose): Load {
  if (load.thing === 'riser' || load.held.length === 1) return { ...load, pose, held: [{ x: pose.x, y: pose.y }] };
  return { ...load, pose, held: bothEnds(load.piece, pose) };
}

/** Points that must lie right: both ends of a thing whose ends can be seen, the middle of one that looks alike all round. */
const measuredPoints = memoizeByIdentity((load: Load): readonly Point[] => {
  if (handlingOf(load).alike === 'any-turn') return [{ x: load.pose.x, y: load.pose.y }];
  return bothEnds(load.piece, load.pose);
});

/** What it covers of the ground. A riser covers nothing that its pole does not. */
export const footprintOf = memoizeByIdentity(({ thing, piece, pose }: Load): Ring => {
  return thing === 'riser' ? [] : transformRing(figureOf(kindOf(piece), piece.values).footprint, pose);
});

/** From each point to the one at the same place in the other list. */
function distances(from: readonly Point[], to: readonly Point[]): readonly Metres[] {
  return from.map((point, i) => distance(point, to[i] ?? point));
}

/** Whether its two ends may change places. */
const isAlikeTurned = memoizeByIdentity((load: Load) => handlingOf(load).alike === 'half-turn');

/** The ways in which one thing of a type can come to lie as another: as it is, and turned half around where that is alike. */
function orders(load: Load, points: readonly Point[]): readonly (readonly Point[])[] {
  return points.length === 2 && isAlikeTurned(load) ? [points, points.toReversed()] : [points];
}

/** How far each carrier walks from one place to another of the same type, in the way that is less for all together. */
export function walkedBetween(from: Load, to: Load): readonly Metres[] {
  const ways = orders(from, to.held).map((held) => distances(from.held, held));
  return ways.reduce((best, way) => (sum(way) < sum(best) ? way : best));
}

/** The sum of `walkedBetween`, without a list: there are as many of them as pairs of things. */
export function metresBetween(from: Load, to: Load): Metres {
  const [a, b] = from.held;
  const [c, d] = to.held;
  if (b === undefined || d === undefined) return apart(a, c);
  const straight = apart(a, c) + apart(b, d);
  return isAlikeTurned(from) ? Math.min(straight, apart(a, d) + apart(b, c)) : straight;
}

function apart(a: Point, b: Point): Metres {
  return Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** How far each carrier walks between a load's place and the truck. */
export function walkedToTruck({ held }: Load, truckAt: Point): readonly Metres[] {
  return held.map((point) => distance(point, truckAt));
}

/** Whether a thing is left as it lies. */
export function liesRight(from: Load, to: Load): boolean {
  const most = USUAL_CREW.liesRight.value + 1e-9;
  // The middle of two ends is never further off than the worse of them.
  return apart(from.pose, to.pose) <= most && offBy(from, to) <= most;
}

/** How far the worst of a thing's ends is from its place, metres. */
export function offBy(from: Load, to: Load): Metres {
  return Math.min(
    ...orders(from, measuredPoints(to)).map((points) => Math.max(...distances(measuredPoints(from), points))),
  );
}
