/** The corners of what lies in the way, as poses on which a line bends round them. */

import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { hull } from '../plane/hull.ts';
import type { Point } from '../plane/point.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { pieceClearance } from './clearance.ts';

/** Added to the clearance of a piece, so that a line along it stays clear of it in chords as well, metres. */
const MARGIN: Metres = 0.03;

/** A corner that is passed on one side: the headings at which a line may touch its rounded edge. */
export interface CornerArc {
  readonly obstacle: string;
  /** Which corner of the obstacle's pieces it is: the same one after the obstacle has moved. */
  readonly vertex: number;
  readonly at: Point;
  readonly clearance: Metres;
  /** 1: the corner is on the left of the line, −1: on the right. */
  readonly side: 1 | -1;
  readonly first: Radians;
  /** From the first heading to the last, towards the side. */
  readonly sweep: Radians;
}

/** The pose on the corner's rounded edge, `share` of the way from its first heading to its last. */
export function arcPose({ at, clearance, side, first, sweep }: CornerArc, share: number): Pose {
  const angle = first + side * sweep * share;
  return { x: at.x + side * clearance * Math.sin(angle), y: at.y - side * clearance * Math.cos(angle), angle };
}

interface Vertex extends Point {
  readonly vertex: number;
  readonly clearance: Metres;
}

/** Each corner of the obstacle's outline twice: passed on the left and on the right. */
export const cornerArcs = memoizeByIdentity((obstacle: PlacedObstacle): readonly CornerArc[] => {
  const corners = obstacle.pieces.flatMap((piece) =>
    piece.footprint.map(({ x, y }) => ({ x, y, clearance: pieceClearance(piece) + MARGIN })),
  );
  const ring = hull(corners.map((corner, vertex): Vertex => ({ ...corner, vertex })));
  const { id } = obstacle.obstacle;
  const found = ring.flatMap((at, i): CornerArc[] => {
    const [a, b] = [ring.at(i - 1), ring[(i + 1) % ring.length]];
    if (a === undefined || b === undefined) return [];
    const incoming = Math.atan2(at.y - a.y, at.x - a.x);
    const outgoing = Math.atan2(b.y - at.y, b.x - at.x);
    const sweep = Math.abs(normalizeAngle(outgoing - incoming));
    const { clearance, vertex } = at;
    const of = { obstacle: id, vertex, at, clearance, sweep };
    // Counter-clockwise around the outline the corner is on the left of the line; clockwise all headings are reversed.
    return [
      { ...of, side: 1, first: incoming },
      { ...of, side: -1, first: outgoing + Math.PI },
    ];
  });
  return found;
});
