import { shiftByKeys } from '../../course/edit-obstacles.ts';
import type { PlacedObstacle } from '../../course/placed.ts';
import { distance, type Point } from '../../plane/point.ts';
import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, Limit, RawFinding } from '../check.ts';
import { bandWords, measuredWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { BAND_TOLERANCE } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Metres from each wall to the nearest corner of the obstacle; negative: beyond the wall. */
function wallClearance({ arena }: Survey['course'], { bounds }: PlacedObstacle) {
  return {
    west: bounds.minX,
    south: bounds.minY,
    east: arena.length - bounds.maxX,
    north: arena.width - bounds.maxY,
  };
}

type WallClearance = ReturnType<typeof wallClearance>;

/** How far the obstacle has to go so that every wall has its room; between two walls too near each other: half way. */
function shiftIn(clearance: WallClearance, clear: number): Point {
  const along = (low: number, high: number): number => {
    if (low >= clear && high >= clear) return 0;
    if (low + high < 2 * clear) return (high - low) / 2;
    return low < clear ? clear - low : high - clear;
  };
  return { x: along(clearance.west, clearance.east), y: along(clearance.south, clearance.north) };
}

/** The corner that is nearest to, or furthest beyond, a wall. */
function cornerOf(survey: Survey, obstacle: PlacedObstacle): { readonly at: Point; readonly key: string } {
  const { length, width } = survey.course.arena;
  let worst = { at: { x: obstacle.bounds.minX, y: obstacle.bounds.minY }, key: obstacle.obstacle.id };
  let least = Number.POSITIVE_INFINITY;
  for (const { key, footprint } of obstacle.pieces) {
    for (const at of footprint) {
      const clearance = Math.min(at.x, at.y, length - at.x, width - at.y);
      if (clearance < least) {
        least = clearance;
        worst = { at, key };
      }
    }
  }
  return worst;
}

/** Something that is only there to be seen may stand against the wall. */
function isRidden({ obstacle }: PlacedObstacle): boolean {
  return obstacle.passages.length > 0;
}

function outsideFindings(survey: Survey, obstacle: PlacedObstacle, limit: Limit | undefined): RawFinding[] {
  const clearance = wallClearance(survey.course, obstacle);
  const [wall = 'west', least = 0] = Object.entries(clearance).reduce((a, b) => (b[1] < a[1] ? b : a));
  const beyond = least < -BAND_TOLERANCE;
  const band = limit === undefined || !isRidden(obstacle) ? { least: 0 } : bandOf(limit);
  const clear = band.least ?? 0;
  if (least >= clear - BAND_TOLERANCE) return [];
  const { unit } = survey.course;
  const name = capitalized(obstacleWords(survey, obstacle.obstacle.id));
  const { at, key } = cornerOf(survey, obstacle);
  const by = shiftIn(clearance, clear);
  const says =
    beyond || limit === undefined
      ? `${name} reaches ${valueWords('length', -least, unit)} beyond the ${wall} wall; everything has to lie inside the arena.`
      : `${name} comes to ${measuredWords(limit, least, unit)} from the ${wall} wall; it wants ${bandWords(limit, unit)}.`;
  return [
    {
      id: `outside:${obstacle.obstacle.id}`,
      check: 'outside',
      weight: beyond ? 'must' : (limit?.weight ?? 'should'),
      says,
      because: beyond
        ? outside.because
        : 'The crew needs room to set it, and a horse that drifts must not meet pole and wall at once.',
      at,
      misfit: 'obstacle',
      keys: [obstacle.obstacle.id, ...(key === obstacle.obstacle.id ? [] : [key])],
      measured: least,
      allowed: band,
      source: beyond ? 'the size of the arena' : (limit?.source ?? ''),
      proposals: [
        {
          says: `Move it ${valueWords('length', distance({ x: 0, y: 0 }, by), unit)} into the arena`,
          edit: (course) => shiftByKeys(course, [obstacle.obstacle.id], by.x, by.y),
        },
      ],
    },
  ];
}

export const outside: Check = {
  id: 'outside',
  says: 'Every piece lies inside the arena and clear of its walls.',
  because: 'What lies beyond the wall cannot be set at all.',
  weight: 'must',
  limits: ['wall.clear'],
  findings: (survey, limits) =>
    survey.obstacles.flatMap((obstacle) => outsideFindings(survey, obstacle, limits['wall.clear'])),
};
