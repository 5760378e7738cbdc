/** A lane of two walls that bend together at corners: what a V and a zigzag are made of. */
import type { Constraint } from '../../constraints/constraint.ts';
import { type Metres, type Radians, wholeInches } from '../../measure/quantity.ts';
import type { Piece } from '../../pieces/piece.ts';
import type { Point } from '../../plane/point.ts';
import { centredPieces, constraintOf, cornerConstraints, cornerSetback, pieceOfKind } from '../parts.ts';
import { type Lane, LEAST_LANE } from './lane-ways.ts';

export interface BentLane {
  readonly width: Metres;
  readonly thickness: Metres;
  /** Between the legs at every corner. */
  readonly angle: Radians;
  /** Which way each corner turns as one goes in at the first end: 1 left. */
  readonly turns: readonly (1 | -1)[];
  /** The poles of the left wall and of the right; with two corners or more both must be the same. */
  readonly lengths: readonly [left: Metres, right: Metres];
  readonly names: readonly [left: string, right: string];
}

/** How much further the inner wall begins than the outer, from the corner, metres. */
function shift({ width, thickness, angle }: Pick<BentLane, 'width' | 'thickness' | 'angle'>): Metres {
  return (width + thickness) / Math.tan(angle / 2);
}

/** The shortest poles of the outer wall, whole inches, with which both walls of a leg run beside each other. */
export function leastWall(lane: Pick<BentLane, 'width' | 'thickness' | 'angle'>): Metres {
  return wholeInches(shift(lane) + LEAST_LANE);
}

/**
 * The walls as poles `left-1 …` and `right-1 …` (or by the names), each running as one goes in, centred; with what holds
 * them and the middle of the lane.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | angle-between | neighbours of the right wall | half a turn less the angle |
 * | ends-level, apart | neighbours of both walls, at their corner | nothing apart |
 * | parallel | the two poles of each leg | |
 * | gap, side 1 | the two poles of the first and the second leg, where they lie beside each other | width |
 */
export function bentLane(lane: BentLane): { pieces: Piece[]; constraints: Constraint[]; lane: Lane } {
  const { width, thickness, angle, turns, lengths, names } = lane;
  const bend = Math.PI - angle;
  const setback = cornerSetback(thickness, angle);
  const legs = turns.length + 1;
  // The middle of the lane is as long between corners as each wall: what one corner gives the other takes.
  const span = lengths[0] + 2 * setback;
  // Evenly about the x axis: a V opens upwards or downwards, a zigzag runs along it.
  const headings = [(-(turns[0] ?? 1) * bend) / 2];
  for (const turn of turns) headings.push((headings.at(-1) ?? 0) + turn * bend);
  const step = (from: Point, heading: number, far: number): Point => ({
    x: from.x + far * Math.cos(heading),
    y: from.y + far * Math.sin(heading),
  });
  const corners: Point[] = [{ x: 0, y: 0 }];
  for (const heading of headings.slice(1, -1)) {
    corners.push(step(corners.at(-1) ?? { x: 0, y: 0 }, heading, span));
  }
  /** Where the axes of a wall cross at a corner; `side` 1 is the left wall. */
  const wallCorner = (i: number, side: 1 | -1): Point => {
    const mean = ((headings[i] ?? 0) + (headings[i + 1] ?? 0)) / 2;
    const off = (side * (width + thickness)) / 2 / Math.cos(bend / 2);
    return step(corners[i] ?? { x: 0, y: 0 }, mean + Math.PI / 2, off);
  };
  const wall = (side: 1 | -1): Piece[] => {
    const [length, name] = side === 1 ? [lengths[0], names[0]] : [lengths[1], names[1]];
    return headings.map((heading, i) => {
      const middle =
        i === 0
          ? step(wallCorner(0, side), heading, -setback - length / 2)
          : step(wallCorner(i - 1, side), heading, setback + length / 2);
      return pieceOfKind(`${name}-${i + 1}`, 'pole', { length, thickness }, { ...middle, angle: heading });
    });
  };
  const pieces = centredPieces([...wall(1), ...wall(-1)]);
  const [left, right] = [pieces.slice(0, legs), pieces.slice(legs)];
  const atCorners = turns.flatMap((turn, i) => {
    const pair = (name: string) => [`${name}-${i + 1}`, `${name}-${i + 2}`] as const;
    const bent = pair(names[1]);
    return [
      constraintOf(
        `angle-${i + 1}`,
        'angle-between',
        bent.map((piece) => ({ piece })),
        { hold: bend, side: turn },
      ),
      ...names.flatMap((name) => cornerConstraints(`${name}-${i + 1}`, [pair(name)[0], 1], [pair(name)[1], 0])),
    ];
  });
  const middles: Point[] = [];
  const ends: Point[] = [];
  const across = headings.flatMap((heading, i) => {
    const [l, r] = [left[i], right[i]];
    if (l === undefined || r === undefined) return [];
    const far = (p: Point) => p.x * Math.cos(heading) + p.y * Math.sin(heading);
    const from = Math.max(far(l.pose) - lengths[0] / 2, far(r.pose) - lengths[1] / 2);
    const to = Math.min(far(l.pose) + lengths[0] / 2, far(r.pose) + lengths[1] / 2);
    const base = { x: (l.pose.x + r.pose.x) / 2, y: (l.pose.y + r.pose.y) / 2 };
    middles.push(base);
    // The mouth is where the further of the two walls ends.
    if (i === 0) {
      ends.push(step(base, heading, Math.min(far(l.pose) - lengths[0] / 2, far(r.pose) - lengths[1] / 2) - far(base)));
    }
    if (i === legs - 1) {
      ends.push(step(base, heading, Math.max(far(l.pose) + lengths[0] / 2, far(r.pose) + lengths[1] / 2) - far(base)));
    }
    const at = (pole: Piece, length: number) => ({
      piece: pole.id,
      at: ((from + to) / 2 - far(pole.pose)) / length + 0.5,
    });
    const grips = [at(r, lengths[1]), at(l, lengths[0])];
    return [
      constraintOf(`parallel-${i + 1}`, 'parallel', [{ piece: r.id }, { piece: l.id }]),
      // The other legs follow from the first two.
      ...(i < 2 ? [constraintOf(`lane-${i + 1}`, 'gap', grips, { hold: width, side: 1 })] : []),
    ];
  });
  const [first] = left;
  const origin = wallCorner(0, 1);
  const moved = first === undefined ? { x: 0, y: 0 } : step(first.pose, headings[0] ?? 0, setback + lengths[0] / 2);
  const spots = corners.map(({ x, y }) => ({ x: x + moved.x - origin.x, y: y + moved.y - origin.y }));
  const [start, end] = ends;
  if (start === undefined || end === undefined) throw new Error('bentLane: a lane has two ends');
  return {
    pieces,
    constraints: [...atCorners, ...across],
    lane: { spots: [start, ...spots, end], beside: right },
  };
}
