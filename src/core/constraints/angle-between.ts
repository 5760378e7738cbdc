import type { ConstraintKind } from './constraint.ts';
import { lineAngle, lineTurn, pairOf, residual } from './grip.ts';

/** The angle from the first piece's line to the second's, 0 … π: counter-clockwise for side 1, clockwise for −1. */
export const angleBetween: ConstraintKind = {
  id: 'angle-between',
  title: 'Angle between',
  unit: 'rad',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  measure(gripped, side) {
    const [first, second] = pairOf(gripped, 'angle-between');
    return lineTurn(side * (second.pose.angle - first.pose.angle));
  },
  residuals(gripped, hold, side) {
    const [first, second] = pairOf(gripped, 'angle-between');
    return [residual(lineAngle(second.pose.angle - first.pose.angle - side * hold), [0, 0, -1], [0, 0, 1])];
  },
  sentence: ([first, second], value) => `The angle between ${first} and ${second} is ${value}.`,
};
