import { shiftByKeys } from '../../course/edit-obstacles.ts';
import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import { INCH } from '../../measure/quantity.ts';
import { memoizeByIdentity } from '../../memo/by-identity.ts';
import { intersection } from '../../plane/clip.ts';
import { type Point, TOUCH } from '../../plane/point.ts';
import { boundsIntersect, edges, type Ring, ringArea, ringBounds } from '../../plane/ring.ts';
import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { restoreProposals } from '../findings/restore-proposals.ts';
import { obstacleWords, pieceWords } from '../findings/thing-words.ts';

/** An overlap below this is only touching, which is allowed, m²: a tenth of a millimetre along a pole. */
export const TOUCHING = 4e-4;
/** Obstacles that are pushed apart stand clear of each other by this much. */
const CLEAR = 6 * INCH;

/** Two pieces that lie in one place, and the middle of what both cover. */
interface Pair {
  readonly a: PlacedPiece;
  readonly b: PlacedPiece;
  readonly area: number;
  readonly at: Point;
}

/** Whether all of one outline lies outside an edge of the other: then they are apart (separating axis theorem). */
function apartAlong(a: Ring, b: Ring): boolean {
  return edges(a).some(([from, to]) => {
    const nx = to.y - from.y;
    const ny = from.x - to.x;
    const length = Math.hypot(nx, ny);
    if (length === 0) return false;
    const out = (p: Point): number => ((p.x - from.x) * nx + (p.y - from.y) * ny) / length;
    return a.every((p) => out(p) <= TOUCH) && b.every((p) => out(p) >= -TOUCH);
  });
}

function pairOf(a: PlacedPiece, b: PlacedPiece): Pair[] {
  if (apartAlong(a.footprint, b.footprint) || apartAlong(b.footprint, a.footprint)) return [];
  const shared = intersection(a.footprint, b.footprint);
  const area = shared.reduce((sum, ring) => sum + ringArea(ring), 0);
  if (area <= TOUCHING) return [];
  const { minX, minY, maxX, maxY } = ringBounds(shared.flat());
  return [{ a, b, area, at: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 } }];
}

function pairsOf(first: readonly PlacedPiece[], second: readonly PlacedPiece[]): Pair[] {
  return first.flatMap((a, i) => {
    const others = first === second ? second.slice(i + 1) : second;
    return others.flatMap((b) => (boundsIntersect(a.bounds, b.bounds) ? pairOf(a, b) : []));
  });
}

const pairsWithin = memoizeByIdentity((obstacle: PlacedObstacle): readonly Pair[] => {
  const pairs = pairsOf(obstacle.pieces, obstacle.pieces);
  return pairs;
});

/** The four straight ways to push one obstacle clear of the other, the shortest first. */
function pushProposals(
  survey: Survey,
  moved: PlacedObstacle,
  other: PlacedObstacle,
): readonly (Proposal & { far: number })[] {
  const { bounds: m } = moved;
  const { bounds: o } = other;
  const name = obstacleWords(survey, moved.obstacle.id);
  const ways = [
    { dx: o.maxX - m.minX + CLEAR, dy: 0 },
    { dx: o.minX - m.maxX - CLEAR, dy: 0 },
    { dx: 0, dy: o.maxY - m.minY + CLEAR },
    { dx: 0, dy: o.minY - m.maxY - CLEAR },
  ];
  return ways.map(({ dx, dy }) => ({
    far: Math.hypot(dx, dy),
    idea: moved.obstacle.id,
    says: `Move ${name} clear of ${obstacleWords(survey, other.obstacle.id)}`,
    edit: (course) => shiftByKeys(course, [moved.obstacle.id], dx, dy),
  }));
}

function overlapFindings(survey: Survey, pairs: readonly Pair[], proposals: readonly Proposal[]): RawFinding[] {
  const [first] = pairs;
  if (first === undefined) return [];
  const { a, b } = first;
  const more = pairs.length > 1 ? `, and so do ${pairs.length - 1} more of their pieces` : '';
  const obstacles = [...new Set([a.obstacle, b.obstacle])];
  return [
    {
      id: `overlap:${obstacles.length === 1 ? `${a.key}+${b.key}` : obstacles.join('+')}`,
      check: 'overlap',
      weight: 'must',
      says: `${capitalized(pieceWords(survey, a.key))} and ${pieceWords(survey, b.key)} lie in one place${more}; pieces may touch but not overlap.`,
      because: overlap.because,
      at: first.at,
      keys: [...obstacles, ...new Set(pairs.flatMap((pair) => [pair.a.key, pair.b.key]))],
      measured: pairs.reduce((sum, pair) => sum + pair.area, 0),
      source: 'the ground plan: two things cannot lie in one place',
      proposals,
    },
  ];
}

export const overlap: Check = {
  id: 'overlap',
  says: 'No two pieces lie in one place.',
  because: 'The crew cannot set it, and whatever they do instead will not be what was drawn.',
  weight: 'must',
  limits: [],
  findings: (survey) =>
    survey.obstacles.flatMap((one, i) => [
      ...pairsWithin(one).flatMap((pair) => overlapFindings(survey, [pair], restoreProposals(survey, one.obstacle.id))),
      ...survey.obstacles.slice(i + 1).flatMap((other) => {
        if (!boundsIntersect(one.bounds, other.bounds)) return [];
        const pairs = pairsOf(one.pieces, other.pieces);
        const apart = () =>
          [...pushProposals(survey, other, one), ...pushProposals(survey, one, other)].sort((p, q) => p.far - q.far);
        return overlapFindings(survey, pairs, pairs.length > 0 ? apart() : []);
      }),
    ]),
};
