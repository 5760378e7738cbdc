import type { LengthUnit } from '../../measure/quantity.ts';
import type { SetOutCheck } from '../setout.ts';
import { isSameObservation, observationOf, type Weighed } from './candidates.ts';
import { type Covariance, noise, type Solved, timesMatrix } from './placement.ts';
import { TAPE_STEP } from './rounded-build.ts';

/** How many checks a step has at most. */
const MOST_CHECKS = 2;
/** An observation is controlled by a check that moves by this share of its blunder. Estimate. */
const CONTROLS = 0.3;
/** A check this unsure shows a blunder by a third less; one this burdensome by all of it. Metres, estimates. */
const UNSURE = 0.02;
const UNUSUAL = 0.05;
/** A check is off by more once in a hundred times when nothing is wrong: 2.58 standard errors. */
const TOLERATED = 2.58;

/** Set by eye or by a board: they prove nothing that the tape does not prove better. */
const SIGHTED: ReadonlySet<string> = new Set(['in-line', 'square', 'against']);
const NOTHING = 1e-6;

/** How far the value of `check` moves for a blunder of one in each of the observations. */
function answers(check: Weighed, by: Solved): readonly number[] {
  return timesMatrix(check.linear.own, by.gain);
}

/** Standard error of a check's reading after the piece was laid: its own, and of what it is made to. */
function spread(of: Covariance, check: Weighed, by: Solved): number {
  const row = timesMatrix(check.linear.own, by.gain) as readonly number[];
  const { chosen, noise: together } = by;
  const laid = row.reduce(
    (sum, a, i) => sum + row.reduce((inner, b, j) => inner + a * b * (together[i]?.[j] as number), 0),
    0,
  );
  const shared = chosen.reduce((sum, each, i) => sum + (row[i] as number) * noise(of, each, check.linear), 0);
  return Math.sqrt(Math.max(laid - 2 * shared + noise(of, check.linear, check.linear), check.linear.sigma ** 2));
}

/**
 * The observations that prove a step: among those it was not laid by, the few in which a blunder in any of its own shows
 * most clearly. `drawn` are the observations by which it was laid.
 */
export function proofs(
  candidates: readonly Weighed[],
  drawn: readonly Weighed[],
  { covariance, by, marked }: { readonly covariance: Covariance; readonly by: Solved; readonly marked: LengthUnit },
): readonly SetOutCheck[] {
  const rest = candidates.filter(
    ({ of, exact }) =>
      !SIGHTED.has(of.kind) &&
      !(of.kind === 'level' && Math.abs(exact) > NOTHING) &&
      !drawn.some((each) => isSameObservation(each.of, of)),
  );
  const chosen: Weighed[] = [];
  let open = drawn.map(() => true);
  while (chosen.length < MOST_CHECKS && open.some(Boolean)) {
    const shows = (each: Weighed): number => {
      const s = spread(covariance, each, by);
      return (
        answers(each, by).reduce((sum, answer, i) => (open[i] ? sum + Math.min(Math.abs(answer), 1) : sum), 0) /
          Math.hypot(1, s / UNSURE) -
        each.burden / UNUSUAL
      );
    };
    const best = rest.filter((each) => !chosen.includes(each)).toSorted((a, b) => shows(b) - shows(a))[0];
    if (best === undefined || shows(best) < CONTROLS) break;
    chosen.push(best);
    const moved = answers(best, by);
    open = open.map((isOpen, i) => isOpen && Math.abs(moved[i] as number) < CONTROLS);
  }
  return chosen.map((each): SetOutCheck => {
    const step = TAPE_STEP[marked];
    const tolerance = Math.ceil((TOLERATED * spread(covariance, each, by)) / step) * step;
    return {
      ...observationOf(each, marked),
      tolerance,
    };
  });
}
