import type { Metres } from '../measure/quantity.ts';
import { type Path, pathFrom } from './path.ts';
import { normalizeAngle, type Pose } from './pose.ts';

/** The order of turns of a shortest path: left, right, straight. */
export type DubinsWord = 'LSL' | 'RSR' | 'LSR' | 'RSL' | 'RLR' | 'LRL';
const WORDS: readonly DubinsWord[] = ['LSL', 'RSR', 'LSR', 'RSL', 'RLR', 'LRL'];

export interface DubinsPath {
  readonly word: DubinsWord;
  readonly length: Metres;
  readonly path: Path;
}

const TURN = 2 * Math.PI;
/** A turn smaller than this, radians, or a straight shorter than this many radii, is rounding error and left out. */
const ROUNDING = 1e-9;
/** Below this many radii a straight between equal turns has no direction: both turns are one arc. */
const MERGED = 1e-7;

/** The angle brought into [0, 2π), where just below a full turn counts as none. */
function positiveAngle(angle: number): number {
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
  const heading = far > 0 ? Math.atan2(dy, dx) : 0;
  return endsOf(far / radius, normalizeAngle(from.angle - heading), normalizeAngle(to.angle - heading));
}

type Parts = readonly [number, number, number];

/** The three parts of a word in radii, from (0, 0, a) to (d, 0, b) at unit radius; absent when the word does not reach. */
export function dubinsParts(word: DubinsWord, d: number, [a, b]: readonly [number, number]): Parts | undefined {
  return partsOf(word, endsOf(d, a, b));
}

function partsOf(word: DubinsWord, { d, a, b, sa, sb, ca, cb, same }: Ends): Parts | undefined {
  switch (word) {
    case 'LSL': {
      const x = d + sa - sb;
      const straight = Math.hypot(x, cb - ca);
      if (straight < MERGED) return [positiveAngle(b - a), 0, 0];
      const heading = Math.atan2(cb - ca, x);
      return [positiveAngle(heading - a), straight, positiveAngle(b - heading)];
    }
    case 'RSR': {
      const x = d - sa + sb;
      const straight = Math.hypot(x, ca - cb);
      if (straight < MERGED) return [positiveAngle(a - b), 0, 0];
      const heading = Math.atan2(ca - cb, x);
      return [positiveAngle(a - heading), straight, positiveAngle(heading - b)];
    }
    case 'LSR': {
      const square = d * d - 2 + 2 * same + 2 * d * (sa + sb);
      if (square < -ROUNDING) return undefined;
      const straight = Math.sqrt(Math.max(0, square));
      const heading = Math.atan2(-ca - cb, d + sa + sb) + Math.atan2(2, straight);
      return [positiveAngle(heading - a), straight, positiveAngle(heading - b)];
    }
    case 'RSL': {
      const square = d * d - 2 + 2 * same - 2 * d * (sa + sb);
      if (square < -ROUNDING) return undefined;
      const straight = Math.sqrt(Math.max(0, square));
      const heading = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, straight);
      return [positiveAngle(a - heading), straight, positiveAngle(b - heading)];
    }
    case 'RLR': {
      const cosine = (6 - d * d + 2 * same + 2 * d * (sa - sb)) / 8;
      if (Math.abs(cosine) > 1) return undefined;
      const middle = TURN - Math.acos(cosine);
      const first = positiveAngle(a - Math.atan2(ca - cb, d - sa + sb) + middle / 2);
      return [first, middle, positiveAngle(a - b - first + middle)];
    }
    case 'LRL': {
      const cosine = (6 - d * d + 2 * same + 2 * d * (sb - sa)) / 8;
      if (Math.abs(cosine) > 1) return undefined;
      const middle = TURN - Math.acos(cosine);
      const first = positiveAngle(-a + Math.atan2(cb - ca, d + sa - sb) + middle / 2);
      return [first, middle, positiveAngle(b - a - first + middle)];
    }
  }
}

const CURVATURE: Readonly<Record<string, number>> = { L: 1, S: 0, R: -1 };

/** One word between two poses, not laid out yet: the lengths of its parts in radii. */
export interface DubinsCandidate {
  readonly word: DubinsWord;
  readonly parts: Parts;
  readonly length: Metres;
}

/**
 * Every word that exists between the poses, in the order of `WORDS`. Cheap, for callers that compare many before they
 * lay one out.
 */
export function dubinsCandidates(from: Pose, to: Pose, radius: Metres): DubinsCandidate[] {
  if (!(radius > 0)) throw new Error(`dubinsCandidates: the radius must be above 0, got ${radius}`);
  const ends = endsBetween(from, to, radius);
  const found: DubinsCandidate[] = [];
  for (const word of WORDS) {
    const parts = partsOf(word, ends);
    if (parts !== undefined) found.push({ word, parts, length: (parts[0] + parts[1] + parts[2]) * radius });
  }
  return found;
}

/** The path of a word from a pose. */
export function candidatePath(from: Pose, candidate: DubinsCandidate, radius: Metres): Path {
  return pathFrom(
    from,
    candidate.parts.map((part, i) => ({
      length: part < ROUNDING ? 0 : part * radius,
      curvature: (CURVATURE[candidate.word[i] ?? 'S'] ?? 0) / radius,
    })),
  );
}

/**
 * Every forward path of at most three parts (turns of exactly `radius` metres, straights) between two poses,
 * shortest first. The words are those of L. E. Dubins (1957); the shortest of them is the shortest path of all.
 */
export function dubinsPaths(from: Pose, to: Pose, radius: Metres): readonly DubinsPath[] {
  return dubinsCandidates(from, to, radius)
    .sort((a, b) => a.length - b.length)
    .map((candidate) => ({
      word: candidate.word,
      length: candidate.length,
      path: candidatePath(from, candidate, radius),
    }));
}

/** The shortest forward path between two poses that never turns tighter than `radius` metres. Always exists. */
export function shortestDubinsPath(from: Pose, to: Pose, radius: Metres): DubinsPath {
  const [best] = dubinsPaths(from, to, radius);
  if (best === undefined) throw new Error('shortestDubinsPath: no word reached, which geometry forbids');
  return best;
}

/** The length alone, metres, for callers that compare many. */
export function shortestDubinsLength(from: Pose, to: Pose, radius: Metres): Metres {
  const ends = endsBetween(from, to, radius);
  let least = Number.POSITIVE_INFINITY;
  for (const word of WORDS) {
    const parts = partsOf(word, ends);
    if (parts !== undefined) least = Math.min(least, parts[0] + parts[1] + parts[2]);
  }
  return least * radius;
}
