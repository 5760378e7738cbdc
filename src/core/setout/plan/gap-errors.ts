import type { Pose } from '../../plane/pose.ts';
import { type Ground, observedOn } from '../ground.ts';
import type { GapError } from '../setout.ts';
import type { LaidOrder } from './laying-order.ts';
import type { MeasuredGap } from './measured-gaps.ts';
import { covarianceOf } from './placement.ts';

/** What becomes of each gap: the part that has both of its pieces tells how far its errors reach. */
export function gapErrors(
  gaps: readonly MeasuredGap[],
  parts: readonly { readonly order: LaidOrder }[],
  { ground, built }: { readonly ground: Ground; readonly built: ReadonlyMap<string, Pose> },
): readonly GapError[] {
  return gaps.flatMap((gap): GapError[] => {
    const { of, keys, at, isRidden } = gap;
    const part = parts.find(({ order }) => order.pieces.some(({ key }) => key === keys[0]));
    if (part === undefined) return [];
    const { pieces, covariance } = part.order;
    const [i, j] = keys.map((wanted) => pieces.findIndex(({ key }) => key === wanted)) as [number, number];
    const { value: plan, gradient } = observedOn(ground, of);
    const [first, second] = gradient;
    if (first === undefined || second === undefined) return [];
    const variance =
      covarianceOf(covariance, [i, first], [i, first]) +
      covarianceOf(covariance, [j, second], [j, second]) +
      2 * covarianceOf(covariance, [i, first], [j, second]);
    const rounded = observedOn(ground, of, built).value;
    return [{ keys, at, plan, rounded, sigma: Math.sqrt(Math.max(0, variance)), isRidden }];
  });
}
