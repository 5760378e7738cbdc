import { FOOT, type Metres } from '../measure/quantity.ts';
import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { lengthwiseOffset } from './ends-level.ts';
import { pairOf } from './grip.ts';

/** Length of one stripe of a pole banded every 2 ft. */
const STRIPE: Metres = 2 * FOOT;

/** The fraction of the middle of the stripe in which a fraction lies; stripes begin at the −x end. */
function stripeMiddle(at: number, length: Metres): number {
  const stripes = Math.max(1, Math.floor(length / STRIPE + 1e-6));
  const which = Math.min(stripes - 1, Math.max(0, Math.floor((at * length) / STRIPE)));
  return Math.min(1, ((which + 0.5) * STRIPE) / length);
}

function stripeOffset(gripped: readonly GrippedPose[]): Residual {
  const [first, second] = pairOf(gripped, 'stripe-to-stripe');
  const sign = Math.cos(second.pose.angle - first.pose.angle) < 0 ? -1 : 1;
  const onStripe = (each: GrippedPose): GrippedPose => ({ ...each, at: stripeMiddle(each.at, each.length) });
  return lengthwiseOffset([onStripe(first), onStripe(second)], sign);
}

/**
 * The middle of a stripe of one pole is level with the middle of a stripe of another: the stripes in which they are
 * gripped. `measure` is how far the second's is ahead along the poles, metres.
 */
export const stripeToStripe: ConstraintKind = {
  id: 'stripe-to-stripe',
  title: 'Stripe to stripe',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: (gripped) => stripeOffset(gripped).value,
  residuals: (gripped) => [stripeOffset(gripped)],
  sentence: ([first, second]) => `A stripe of ${first} is level with a stripe of ${second}.`,
};
