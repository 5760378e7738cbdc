import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Point } from '../../plane/point.ts';
import { ringBounds } from '../../plane/ring.ts';
import { ringDistance } from '../../plane/segment.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Found, Limit, Proposal } from '../check.ts';
import { rememberedPairs } from '../geometry/swath.ts';
import { inBand, nearestIn } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';
import { asker, bandWords, measuredWords, obstacleWords, sentence, valueWords } from './finding-words.ts';
import { rebuiltNear } from './verified-fixes.ts';

/** One size found on the ground. */
export interface Size {
  readonly value: number;
  readonly at: Point;
  /** Keys of the pieces it was taken between. */
  readonly keys: readonly string[];
}

/** A check of one dimension of an obstacle against one limit. */
export interface Dimension extends Pick<Check, 'id' | 'says' | 'because' | 'weight'> {
  readonly limit: string;
  /** What was measured, said before the obstacle's name: "The lane of". */
  readonly what: string;
  /** Every size of the obstacle that the limit bounds; none where it is not that kind of obstacle. */
  sizes(obstacle: PlacedObstacle, survey: Survey, limit: Limit): readonly Size[];
  /** The obstacle's own parameter for it, and the value that brings the size to `wanted`; absent: nothing to set. */
  readonly param?: string;
  /** Other ways to mend a size that is off by so much; tried after the parameter. */
  mends?(survey: Survey, size: Size, off: number): readonly Proposal[];
}

/** How far the size is from what is allowed. */
function miss(limit: Limit, { value }: Size): number {
  const [nearest = value] = nearestIn(bandOf(limit), value);
  return Math.abs(nearest - value);
}

/** Sets the obstacle's own parameter by as much as the size is wrong: a parameter may be measured elsewhere than the size. */
function proposals(
  survey: Survey,
  obstacle: PlacedObstacle,
  param: string | undefined,
  wanted: readonly number[],
  size: number,
): readonly Proposal[] {
  const { id, values } = obstacle.obstacle;
  const now = param === undefined ? undefined : values[param];
  if (param === undefined || typeof now !== 'number') return [];
  const { unit } = survey.course;
  const set = (value: number): Proposal => ({
    says: `Build ${obstacleWords(survey, id)} with ${valueWords('length', value, unit)}`,
    edit: (course) => rebuiltNear(course, id, { [param]: value }),
  });
  return wanted.flatMap((value) => {
    const stepped = now + value - size;
    return Math.abs(stepped - value) < 1e-6 ? [set(value)] : [set(value), set(stepped)];
  });
}

/** One finding for an obstacle: its worst size. */
function foundFor(survey: Survey, dimension: Dimension, limit: Limit, obstacle: PlacedObstacle): Found[] {
  const band = bandOf(limit);
  const wrong = dimension.sizes(obstacle, survey, limit).filter(({ value }) => !inBand(band, value));
  const [worst] = wrong.sort((a, b) => miss(limit, b) - miss(limit, a));
  if (worst === undefined) return [];
  const { id } = obstacle.obstacle;
  const { unit } = survey.course;
  const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
  const measured = measuredWords(limit, worst.value, unit);
  return [
    {
      id: `${dimension.id}:${id}`,
      check: dimension.id,
      weight: limit.weight ?? dimension.weight,
      says: `${sentence(dimension.what)} ${obstacleWords(survey, id)} is ${measured}; ${asker(limit)} ${bandWords(limit, unit)}.`,
      because: dimension.because,
      at: worst.at,
      ...(leg < 0 ? {} : { leg }),
      keys: [id, ...worst.keys],
      measured: worst.value,
      allowed: band,
      source: limit.source,
      proposals: [
        ...proposals(survey, obstacle, dimension.param, nearestIn(band, worst.value), worst.value),
        ...(dimension.mends?.(survey, worst, miss(limit, worst)) ?? []),
      ],
    },
  ];
}

/** The check of one dimension. */
export function dimension(one: Dimension): Check {
  return {
    id: one.id,
    says: one.says,
    because: one.because,
    weight: one.weight,
    limits: [one.limit],
    run(survey, limits) {
      const limit = limits[one.limit];
      if (limit === undefined) return [];
      return survey.obstacles.flatMap((obstacle) => foundFor(survey, one, limit, obstacle));
    },
  };
}

/** The middle of some pieces. */
export function middleOf(pieces: readonly PlacedPiece[]): Point {
  const { minX, minY, maxX, maxY } = ringBounds(pieces.map(({ pose }) => pose));
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

const clearances = rememberedPairs<PlacedPiece, PlacedPiece, Size>();

/** The clear distance between two pieces; the same for as long as both lie where they lie. */
export function clearBetween(a: PlacedPiece, b: PlacedPiece): Size {
  return clearances(a, b, { because: '', work: () => clearWorked(a, b) });
}

function clearWorked(a: PlacedPiece, b: PlacedPiece): Size {
  return { value: ringDistance(a.footprint, b.footprint), at: middleOf([a, b]), keys: [a.key, b.key] };
}

/** A size of every piece of one kind. */
export function sizesOf(obstacle: PlacedObstacle, kind: string, size: (piece: PlacedPiece) => number): readonly Size[] {
  return obstacle.pieces
    .filter((piece) => piece.kind.id === kind)
    .map((piece) => ({ value: size(piece), at: middleOf([piece]), keys: [piece.key] }));
}

/** The pieces of one kind, in the order of the obstacle. */
export function piecesOf(obstacle: PlacedObstacle, kind: string): readonly PlacedPiece[] {
  return obstacle.pieces.filter((piece) => piece.kind.id === kind);
}
