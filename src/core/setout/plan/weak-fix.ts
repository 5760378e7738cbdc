import type { LengthUnit, Radians } from '../../measure/quantity.ts';
import type { WeakFix } from '../setout.ts';
import { observationOf, type Weighed } from './candidates.ts';
import type { Determined } from './determine.ts';
import { LEAST_MEETING } from './placement.ts';

/** The angle between the directions in which two observations hold a piece, 0 … π/2. */
function meeting(a: Weighed, b: Weighed): Radians {
  const [ax, ay] = a.linear.own;
  const [bx, by] = b.linear.own;
  const [far, near] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
  if (far < 1e-9 || near < 1e-9) return 0;
  const cosine = Math.abs(ax * bx + ay * by) / (far * near);
  return Math.acos(Math.min(1, cosine));
}

function widest(observations: readonly Weighed[]): Radians {
  return observations.reduce(
    (most, a, i) => observations.slice(i + 1).reduce((inner, b) => Math.max(inner, meeting(a, b)), most),
    0,
  );
}

/**
 * Present when no two observations of a piece meet at 60° or more, with the most certain candidate that would meet one of them
 * so, where there is one.
 */
export function weakFix(by: Determined, candidates: readonly Weighed[], marked: LengthUnit): WeakFix | undefined {
  const angle = widest(by.observations);
  if (angle >= LEAST_MEETING - 1e-9) return undefined;
  const better = candidates
    .filter((each) => by.observations.some((own) => meeting(own, each) >= LEAST_MEETING))
    .toSorted((a, b) => a.linear.sigma - b.linear.sigma)[0];
  return { angle, ...(better === undefined ? {} : { better: observationOf(better, marked) }) };
}
