import { FOOT, type LengthUnit, type Metres } from '../../measure/quantity.ts';
import { distance, type Point } from '../../plane/point.ts';
import { toWorld } from '../../plane/pose.ts';
import { namedPiece, namedUnit, type PartNames, partPieceWords } from './place-words.ts';
import { readingWords } from './reading-words.ts';

/** The parts of which a triangle has 3, 4 and 5, the largest first: 6, 8, 10 ft, or the same in round metres. */
const TRIANGLE_PARTS: Readonly<Record<LengthUnit, readonly Metres[]>> = { ft: [2 * FOOT, FOOT], m: [0.6, 0.3] };

/** Lines that meet at less than about 6° have no corner that can be found on the ground: the sine. */
const NO_CORNER = 0.1;

/** How far from a corner a piece reaches along its own line, metres: from where to where; from 0 where the corner is on it. */
function reachFrom(names: PartNames, key: string, corner: Point): readonly [Metres, Metres] {
  const { pose, figure } = namedPiece(names, key);
  const [toA, toB] = [-1, 1].map((end) => distance(corner, toWorld(pose, { x: (end * figure.length) / 2, y: 0 })));
  const [near, far] = [Math.min(toA ?? 0, toB ?? 0), Math.max(toA ?? 0, toB ?? 0)];
  return far <= figure.length ? [0, far] : [near, far];
}

/** Where the middle lines of two pieces meet; undefined where they are nearly parallel. */
function meetingPoint(names: PartNames, keys: readonly string[]): Point | undefined {
  const [p, q] = keys.map((key) => namedPiece(names, key).pose);
  if (p === undefined || q === undefined) return undefined;
  const [ux, uy, vx, vy] = [Math.cos(p.angle), Math.sin(p.angle), Math.cos(q.angle), Math.sin(q.angle)];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < NO_CORNER) return undefined;
  const along = ((q.x - p.x) * vy - (q.y - p.y) * vx) / cross;
  return { x: p.x + along * ux, y: p.y + along * uy };
}

/**
 * "from the corner of their lines 6' 0" along pole 1 and 8' 0" along pole 2, then 10' 0" straight across": the largest
 * triangle whose marks fall on both pieces; undefined where none does, and a board is needed.
 */
export function triangleWords(names: PartNames, keys: readonly string[]): string | undefined {
  const corner = meetingPoint(names, keys);
  if (corner === undefined) return undefined;
  const reaches = keys.map((key) => reachFrom(names, key, corner));
  const unit = namedUnit(names);
  const [first, second] = keys.map((key) => partPieceWords(names, key));
  for (const part of TRIANGLE_PARTS[unit]) {
    for (const sides of [
      [3, 4],
      [4, 3],
    ]) {
      const fits = sides.every((side, i) => {
        const [from, to] = reaches[i] ?? [0, 0];
        return side * part >= from && side * part <= to;
      });
      if (!fits) continue;
      const [one, two, across] = [...sides, 5].map((side) => readingWords(side * part, unit));
      return `from the corner of their lines ${one} along ${first} and ${two} along ${second}, then ${across} straight across`;
    }
  }
  return undefined;
}
