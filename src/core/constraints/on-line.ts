import type { ConstraintKind } from './constraint.ts';
import { observedPair } from './grip.ts';
import { offsetFromLine } from './in-line.ts';

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
  leavesTurn: true,
  measure: (gripped) => offsetFromLine(gripped, 'on-line').value,
  residuals: (gripped) => [offsetFromLine(gripped, 'on-line')],
  observed: ([first, second]) => [observedPair('in-line', first, second)],
  sentence: ([first, second]) => `${second} lies on the line of ${first}.`,
};
