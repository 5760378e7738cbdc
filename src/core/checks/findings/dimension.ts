import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import { pairCache } from '../../memo/by-identity.ts';
import { obstacleKind } from '../../obstacles/obstacles.ts';
import { markerPiece } from '../../pieces/marker.ts';
import { polePiece } from '../../pieces/pole.ts';
import type { Point } from '../../plane/point.ts';
import { ringBounds } from '../../plane/ring.ts';
import { ringDistance } from '../../plane/segment.ts';
import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Band, Check, Limit, Proposal, RawFinding } from '../check.ts';
import { type Aim, aimsOf } from '../rulebooks/aims.ts';
import { isInBand, nearestAllowed } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';
import { askerWords, bandWords, measuredWords, valueWords } from './finding-words.ts';
import { obstacleWords } from './thing-words.ts';
import { rebuildNear } from './verified-fixes.ts';

/** One size found on the ground. */
export interface MeasuredSize {
  readonly value: number;
  readonly at: Point;
  /** Keys of the pieces it was taken between. */
  readonly keys: readonly string[];
}

/** A check of one dimension of an obstacle against one limit. */
export interface SizeRule extends Pick<Check, 'id' | 'says' | 'because' | 'weight'> {
  readonly limit: string;
  /** What was measured, as words before the obstacle's name: "The lane of". */
  readonly what: string;
  /** Present when the limit binds only obstacles whose kind declares it. */
  readonly onlyDeclared?: true;
  /** Every size of the obstacle that the limit bounds. */
  sizes(obstacle: PlacedObstacle, survey: Survey, limit: Limit): readonly MeasuredSize[];
  /** The obstacle's own parameter for it, and the value that brings the size to `wanted`; absent: nothing to set. */
  readonly param?: string;
  /** Other ways to cure a size that is off by this much; tried after the parameter. */
  otherProposals?(survey: Survey, size: MeasuredSize, off: number): readonly Proposal[];
}

/** How far the size is from what is allowed. */
function distanceToBand(limit: Limit, { value }: MeasuredSize): number {
  const [nearest = value] = nearestAllowed(bandOf(limit), value);
  return Math.abs(nearest - value);
}

/**
 * Changes the obstacle's own parameter by the error of the size: the parameter may be measured at another place than
 * the size.
 */
function parameterProposals(
  survey: Survey,
  obstacle: PlacedObstacle,
  param: string | undefined,
  wanted: readonly Aim[],
  size: number,
): readonly Proposal[] {
  const { id, values } = obstacle.obstacle;
  const now = param === undefined ? undefined : values[param];
  if (param === undefined || typeof now !== 'number') return [];
  const { unit } = survey.course;
  const set = (value: number, idea: string): Proposal => ({
    idea,
    says: `Build ${obstacleWords(survey, id)} with ${valueWords('length', value, unit)}`,
    edit: (course) => rebuildNear(course, id, { [param]: value }),
  });
  return wanted.flatMap(({ value, idea }) => {
    const stepped = now + value - size;
    return Math.abs(stepped - value) < 1e-6 ? [set(value, idea)] : [set(value, idea), set(stepped, `${idea} stepped`)];
  });
}

/** One finding for an obstacle: its worst size. `band` is the limit's. */
function sizeFindings(
  survey: Survey,
  rule: SizeRule,
  { limit, band }: { readonly limit: Limit; readonly band: Band },
  obstacle: PlacedObstacle,
): RawFinding[] {
  const wrong = rule.sizes(obstacle, survey, limit).filter(({ value }) => !isInBand(band, value));
  const [worst] = wrong.sort((a, b) => distanceToBand(limit, b) - distanceToBand(limit, a));
  if (worst === undefined) return [];
  const { id } = obstacle.obstacle;
  const { unit } = survey.course;
  const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
  const measured = measuredWords(limit, worst.value, unit);
  return [
    {
      id: `${rule.id}:${id}`,
      check: rule.id,
      weight: limit.weight ?? rule.weight,
      says: `${capitalized(rule.what)} ${obstacleWords(survey, id)} is ${measured}; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
      because: rule.because,
      at: worst.at,
      ...(leg < 0 ? {} : { leg }),
      keys: [id, ...worst.keys],
      measured: worst.value,
      allowed: band,
      source: limit.source,
      proposals: [
        ...parameterProposals(
          survey,
          obstacle,
          rule.param,
          aimsOf(rule.limit, limit, worst.value, survey.course.rulebook),
          worst.value,
        ),
        ...(rule.otherProposals?.(survey, worst, distanceToBand(limit, worst)) ?? []),
      ],
    },
  ];
}

/** The check of one dimension. */
export function sizeCheck(rule: SizeRule): Check {
  return {
    id: rule.id,
    says: rule.says,
    because: rule.because,
    weight: rule.weight,
    limits: [rule.limit],
    findings(survey, limits) {
      const limit = limits[rule.limit];
      if (limit === undefined) return [];
      const bound = rule.onlyDeclared
        ? survey.obstacles.filter((each) => isBoundBy(each, rule.limit))
        : survey.obstacles;
      const band = bandOf(limit);
      return bound.flatMap((obstacle) => sizeFindings(survey, rule, { limit, band }, obstacle));
    },
  };
}

/** The middle of some pieces. */
export function middleOfPieces(pieces: readonly PlacedPiece[]): Point {
  const { minX, minY, maxX, maxY } = ringBounds(pieces.map(({ pose }) => pose));
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

const clearanceCache = pairCache<PlacedPiece, PlacedPiece, MeasuredSize>();

/** The clear distance between two pieces; the same for as long as both lie where they lie. */
export function clearanceBetween(a: PlacedPiece, b: PlacedPiece): MeasuredSize {
  return clearanceCache(a, b, { because: '', work: () => uncachedClearance(a, b) });
}

function uncachedClearance(a: PlacedPiece, b: PlacedPiece): MeasuredSize {
  return { value: ringDistance(a.footprint, b.footprint), at: middleOfPieces([a, b]), keys: [a.key, b.key] };
}

/** A size of each of some pieces. */
export function pieceSizes(
  pieces: readonly PlacedPiece[],
  size: (piece: PlacedPiece) => number,
): readonly MeasuredSize[] {
  return pieces.map((piece) => ({ value: size(piece), at: middleOfPieces([piece]), keys: [piece.key] }));
}

/** Whether the obstacle's kind declares the limit. */
export function isBoundBy({ obstacle }: PlacedObstacle, limit: string): boolean {
  return obstacleKind(obstacle.kind)?.limits?.includes(limit) === true;
}

/** The pieces whose kind declares the limit, in the order of the obstacle. */
export function piecesBoundBy({ pieces }: PlacedObstacle, limit: string): readonly PlacedPiece[] {
  return pieces.filter(({ kind }) => kind.limits?.includes(limit) === true);
}

/** The poles of an obstacle, in its order. */
export function polesOf({ pieces }: PlacedObstacle): readonly PlacedPiece[] {
  return pieces.filter(({ kind }) => kind === polePiece);
}

/** The markers of an obstacle, in its order. */
export function markersOf({ pieces }: PlacedObstacle): readonly PlacedPiece[] {
  return pieces.filter(({ kind }) => kind === markerPiece);
}
