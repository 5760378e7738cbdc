/**
 * The paths that a search has held against the obstacles. What it found depends on nothing else of them: it holds until an
 * obstacle that meets one of these paths comes, goes or changes.
 */
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import { type Path, pathFrom } from '../plane/path.ts';
import { TOUCH } from '../plane/point.ts';
import { type Bounds, boundsIntersect } from '../plane/ring.ts';
import { nearsRing, type Reach, reachOf } from '../plane/stretch-distance.ts';
import { LARGEST_CLEARANCE, pieceClearance } from './clearance.ts';

/** As plain numbers, because a search tests hundreds of paths and its result is kept for long. */
export interface TestedPaths {
  /** Of each path its bounds, and where its shape begins. */
  readonly boxes: number[];
  /** Of each path its first pose, then the length and the curvature of each stretch. */
  readonly shapes: number[];
}

const BOX = 5;
const POSE = 3;

export function noTestedPaths(): TestedPaths {
  return { boxes: [], shapes: [] };
}

/** Notes a path. */
export function addTested({ boxes, shapes }: TestedPaths, path: Path, { minX, minY, maxX, maxY }: Bounds): void {
  const start = path[0]?.start;
  if (start === undefined) return;
  boxes.push(minX, minY, maxX, maxY, shapes.length);
  shapes.push(start.x, start.y, start.angle);
  for (const { length, curvature } of path) shapes.push(length, curvature);
}

/** The path of which the numbers run from `begin` to `end`. */
function reachesOf(shapes: readonly number[], begin: number, end: number): readonly Reach[] {
  const [x = 0, y = 0, angle = 0] = shapes.slice(begin, begin + POSE);
  const parts: { length: number; curvature: number }[] = [];
  for (let i = begin + POSE; i < end; i += 2) parts.push({ length: shapes[i] ?? 0, curvature: shapes[i + 1] ?? 0 });
  return pathFrom({ x, y, angle }, parts).map((stretch) => reachOf(stretch));
}

/** Whether a piece comes near to one of the reaches, whichever pieces are let pass at the ends of the path. */
function meetsPiece(reaches: readonly Reach[], piece: PlacedPiece): boolean {
  // The path was laid out from its numbers anew, and may differ in the last digits.
  const near = pieceClearance(piece) + TOUCH;
  const box = piece.bounds;
  return reaches.some((each) => boundsIntersect(box, each.bounds, near) && nearsRing(each, piece.footprint, near));
}

/** Whether the obstacle comes near to one of the paths. */
export function meetsTested({ boxes, shapes }: TestedPaths, { bounds, pieces }: PlacedObstacle): boolean {
  const near = LARGEST_CLEARANCE + TOUCH;
  const [west, south, east, north] = [bounds.minX - near, bounds.minY - near, bounds.maxX + near, bounds.maxY + near];
  const number = (i: number): number => boxes[i] ?? shapes.length;
  for (let i = 0; i < boxes.length; i += BOX) {
    const isApart = number(i) > east || number(i + 1) > north || number(i + 2) < west || number(i + 3) < south;
    if (isApart) continue;
    const reaches = reachesOf(shapes, number(i + 4), number(i + BOX + 4));
    if (pieces.some((piece) => meetsPiece(reaches, piece))) return true;
  }
  return false;
}
