/** What the router is asked, and the plain paths that may answer it: one Dubins word between the straights of the ends. */
import type { Gait, Horse } from '../horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import type { Path } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { mergedPath } from './connection.ts';
import type { Detour } from './detour.ts';
import { closings, openings, type WayEnd } from './end-straights.ts';

/** A query for the way between two obstacles. */
export interface RouteQuery {
  readonly from: Pose;
  readonly to: Pose;
  readonly gait: Gait;
  readonly horse: Horse;
  readonly bends: readonly Point[];
  /** Whether the horse wants to be straight after the one obstacle and before the other. */
  readonly straightAfter: boolean;
  readonly straightBefore: boolean;
}

/**
 * Penalties, in metres of way: for each metre of radius that is missing, and for each radian of circling. Estimates.
 */
export const PENALTY = { radius: 1.5, circling: 3 };
/** A way turns this much before it counts as circling. */
const CIRCLING_TURN = 1.25 * Math.PI;

/** A candidate way. Most are never laid out, so it only says how to make the path. */
export interface PathCandidate {
  readonly cost: Metres;
  readonly path: Path | PlainPath;
  readonly detour?: Detour;
}

/** A path of one Dubins word between the straights of its ends. */
interface PlainPath {
  readonly opening: WayEnd;
  readonly closing: WayEnd;
  readonly dubins: DubinsCandidate;
  readonly radius: Metres;
}

/** What may be kept straight at either end, in shares of a horse's length. */
export function endChoices(query: RouteQuery, shares: readonly number[]): { begins: WayEnd[]; finishes: WayEnd[] } {
  const wanted = { ...query, unit: query.horse.bodyLength.value };
  return { begins: openings(wanted, shares), finishes: closings(wanted, shares) };
}

/** The radii a way may turn on, easy first. */
export function radii({ gait, horse }: RouteQuery): Metres[] {
  const easy = preferredTurnRadius(horse, gait);
  const least = Math.min(easy, minTurnRadius(horse, gait));
  return [...new Set([easy, (easy + least) / 2, least])];
}

/** The penalty of a way that turns so far in all, radians: only what is beyond a usual turn counts. */
export function circling(turn: number): Metres {
  return PENALTY.circling * Math.max(0, turn - CIRCLING_TURN);
}

/** All plain paths, with their price. */
export function pathCandidates(query: RouteQuery, shares: readonly number[]): PathCandidate[] {
  const choices = radii(query);
  const widest = choices[0] ?? 0;
  const found: PathCandidate[] = [];
  const { begins, finishes } = endChoices(query, shares);
  for (const opening of begins) {
    for (const closing of finishes) {
      for (const radius of choices) {
        const base = opening.cost + closing.cost + PENALTY.radius * (widest - radius);
        for (const dubins of dubinsCandidates(opening.pose, closing.pose, radius)) {
          const [first, middle, last] = dubins.parts;
          const turn = first + last + (dubins.word[1] === 'S' ? 0 : middle);
          const cost = dubins.length + base + circling(turn);
          found.push({ cost, path: { opening, closing, dubins, radius } });
        }
      }
    }
  }
  return found;
}

/** The path of a candidate, from end to end. */
export function approachPath({ path }: PathCandidate): Path {
  if (!('dubins' in path)) return mergedPath(path);
  const { opening, closing, dubins, radius } = path;
  return mergedPath([...opening.straight, ...candidatePath(opening.pose, dubins, radius), ...closing.straight]);
}

/** The price of the cheapest, if nothing lay about. */
export function leastCost(candidates: readonly PathCandidate[]): Metres {
  return candidates.reduce((least, { cost }) => Math.min(least, cost), Number.POSITIVE_INFINITY);
}
