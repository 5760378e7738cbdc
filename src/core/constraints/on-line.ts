import type { ConstraintKind } from './constraint.ts';
import { beside } from './in-line.ts';

/**
 * The second piece's gripped point lies on the axis line of the first: an arm of a spoke points at its marker. One
 * equation. `measure` is how far the point is off the line, metres.
 */
export const onLine: ConstraintKind = {
  id: 'on-line',
  title: 'On the line of',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'any'],
  measure: (held) => beside(held, 'on-line').value,
  residuals: (held) => [beside(held, 'on-line')],
  sentence: ([first, second]) => `${second} lies on the line of ${first}.`,
};
