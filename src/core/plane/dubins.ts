import type { Metres } from '../measure/quantity.ts';
import { laid, type Path } from './path.ts';
import { type Pose, wrapped } from './pose.ts';

/** The order of turns of a shortest path: left, right, straight. */
export type Word = 'LSL' | 'RSR' | 'LSR' | 'RSL' | 'RLR' | 'LRL';
const WORDS: readonly Word[] = ['LSL', 'RSR', 'LSR', 'RSL', 'RLR', 'LRL'];

export interface BoundedPath {
  readonly word: Word;
  readonly length: Metres;
  readonly path: Path;
}

const TURN = 2 * Math.PI;
/** Turns smaller than this, radians, and straights shorter than this many radii, are rounding and not ridden. */
const ROUNDING = 1e-9;
/** Below this many radii a straight between equal turns has no direction: both turns are one arc. */
const MERGED = 1e-7;

/** The angle brought into [0, 2π), where just below a full turn counts as none. */
function turned(angle: number): number {
  const rest = angle - TURN * Math.floor(angle / TURN);
  return rest > TURN - ROUNDING ? 0 : rest;
}

/** Both ends seen from the straight between them, at unit radius: distance, headings and their sines and cosines. */
interface Ends {
  readonly d: number;
  readonly a: number;
  readonly b: number;
  readonly sa: number;
  readonly sb: number;
  readonly ca: number;
  readonly cb: number;
  /** Cosine of the angle between the headings. */
  readonly same: number;
}

function endsOf(d: number, a: number, b: number): Ends {
  const [sa, sb, ca, cb] = [Math.sin(a), Math.sin(b), Math.cos(a), Math.cos(b)];
  return { d, a, b, sa, sb, ca, cb, same: Math.cos(a - b) };
}

function endsBetween(from: Pose, to: Pose, radius: Metres): Ends {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const far = Math.hypot(dx, dy);
  const way = far > 0 ? Math.atan2(dy, dx) : 0;
  return endsOf(far / radius, wrapped(from.angle - way), wrapped(to.angle - way));
}

type Parts = readonly [number, number, number];

/** The three parts of a word in radii, from (0, 0, a) to (d, 0, b) at unit radius; absent when the word does not reach. */
export function wordParts(word: Word, d: number, [a, b]: readonly [number, number]): Parts | undefined {
  return partsOf(word, endsOf(d, a, b));
}

function partsOf(word: Word, { d, a, b, sa, sb, ca, cb, same }: Ends): Parts | undefined {
  switch (word) {
    case 'LSL': {
      const x = d + sa - sb;
      const straight = Math.hypot(x, cb - ca);
      if (straight < MERGED) return [turned(b - a), 0, 0];
      const way = Math.atan2(cb - ca, x);
      return [turned(way - a), straight, turned(b - way)];
    }
    case 'RSR': {
      const x = d - sa + sb;
      const straight = Math.hypot(x, ca - cb);
      if (straight < MERGED) return [turned(a - b), 0, 0];
      const way = Math.atan2(ca - cb, x);
      return [turned(a - way), straight, turned(way - b)];
    }
    case 'LSR': {
      const square = d * d - 2 + 2 * same + 2 * d * (sa + sb);
      if (square < -ROUNDING) return undefined;
      const straight = Math.sqrt(Math.max(0, square));
      const way = Math.atan2(-ca - cb, d + sa + sb) + Math.atan2(2, straight);
      return [turned(way - a), straight, turned(way - b)];
    }
    case 'RSL': {
      const square = d * d - 2 + 2 * same - 2 * d * (sa + sb);
      if (square < -ROUNDING) return undefined;
      const straight = Math.sqrt(Math.max(0, square));
      const way = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, straight);
      return [turned(a - way), straight, turned(b - way)];
    }
    case 'RLR': {
      const cosine = (6 - d * d + 2 * same + 2 * d * (sa - sb)) / 8;
      if (Math.abs(cosine) > 1) return undefined;
      const middle = TURN - Math.acos(cosine);
      const first = turned(a - Math.atan2(ca - cb, d - sa + sb) + middle / 2);
      return [first, middle, turned(a - b - first + middle)];
    }
    case 'LRL': {
      const cosine = (6 - d * d + 2 * same + 2 * d * (sb - sa)) / 8;
      if (Math.abs(cosine) > 1) return undefined;
      const middle = TURN - Math.acos(cosine);
      const first = turned(-a + Math.atan2(cb - ca, d + sa - sb) + middle / 2);
      return [first, middle, turned(b - a - first + middle)];
    }
  }
}

const CURVATURE: Readonly<Record<string, number>> = { L: 1, S: 0, R: -1 };

/** One way to get from a pose to another, not yet laid out: the parts are in radii. */
export interface Reach {
  readonly word: Word;
  readonly parts: Parts;
  readonly length: Metres;
}

/** Every word that reaches, in the order of `WORDS`; cheap, for those who compare many before laying one out. */
export function reaches(from: Pose, to: Pose, radius: Metres): Reach[] {
  if (!(radius > 0)) throw new Error(`reaches: the radius must be above 0, got ${radius}`);
  const ends = endsBetween(from, to, radius);
  const found: Reach[] = [];
  for (const word of WORDS) {
    const parts = partsOf(word, ends);
    if (parts !== undefined) found.push({ word, parts, length: (parts[0] + parts[1] + parts[2]) * radius });
  }
  return found;
}

/** The path of a word from a pose. */
export function reachPath(from: Pose, reach: Reach, radius: Metres): Path {
  return laid(
    from,
    reach.parts.map((part, i) => ({
      length: part < ROUNDING ? 0 : part * radius,
      curvature: (CURVATURE[reach.word[i] ?? 'S'] ?? 0) / radius,
    })),
  );
}

/**
 * Every forward path of at most three parts (turns of exactly `radius` metres, straights) between two poses,
 * shortest first. The words are those of L. E. Dubins (1957); the shortest of them is the shortest path of all.
 */
export function candidatePaths(from: Pose, to: Pose, radius: Metres): readonly BoundedPath[] {
  return reaches(from, to, radius)
    .sort((a, b) => a.length - b.length)
    .map((reach) => ({ word: reach.word, length: reach.length, path: reachPath(from, reach, radius) }));
}

/** The shortest forward path between two poses that never turns tighter than `radius` metres. Always exists. */
export function shortestPath(from: Pose, to: Pose, radius: Metres): BoundedPath {
  const [best] = candidatePaths(from, to, radius);
  if (best === undefined) throw new Error('shortestPath: no word reached, which geometry forbids');
  return best;
}

/** The length alone, for those who compare many: metres. */
export function shortestLength(from: Pose, to: Pose, radius: Metres): Metres {
  const ends = endsBetween(from, to, radius);
  let least = Number.POSITIVE_INFINITY;
  for (const word of WORDS) {
    const parts = partsOf(word, ends);
    if (parts !== undefined) least = Math.min(least, parts[0] + parts[1] + parts[2]);
  }
  return least * radius;
}
