import type { RuleChoice } from '../../course/course.ts';
import type { Limit } from '../check.ts';
import { isInBand, nearestAllowed } from './band.ts';
import { bandOf, usualOf } from './rulebooks.ts';

/** A value that a fix may bring a size to. */
export interface Aim {
  readonly value: number;
  /** Aims of one idea lie in one band: once one of them works, the others are left out. */
  readonly idea: string;
}

/** What is usual inside one band: the middle where both ends are printed and nobody says more. */
function usualInside(limit: Limit, usual: number | undefined): number | undefined {
  const { least, most } = bandOf(limit);
  if (
    usual !== undefined &&
    isInBand({ ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) }, usual)
  )
    return usual;
  return least === undefined || most === undefined ? undefined : (least + most) / 2;
}

/**
 * Where a fix takes a value that the limit does not allow, SI, the nearest band first. In each band: what the trade
 * builds, and after it the edge, for an obstacle that has no more room. An edge alone where a book prints one end and
 * nobody says what is usual.
 */
export function aimsOf(name: string, limit: Limit, value: number, rulebook: RuleChoice): readonly Aim[] {
  const { least, most, multiples } = bandOf(limit);
  const usual = usualInside(limit, usualOf(name, rulebook));
  return nearestAllowed(bandOf(limit), value).flatMap((edge): Aim[] => {
    // The edge is the upper one where the value lies above it.
    const end = value > edge ? most : least;
    const times = multiples && end !== undefined ? Math.round(edge / end) : 1;
    const idea = `${name} ${times}`;
    const inner = usual === undefined ? [] : [{ value: times * usual, idea }];
    return [...inner, { value: edge, idea }];
  });
}
