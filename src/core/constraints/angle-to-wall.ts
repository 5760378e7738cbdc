import type { ConstraintKind } from './constraint.ts';
import { lineAngle, lineTurn, pairOf, residual } from './grip.ts';

/**
 * The angle from a wall to a piece's line, 0 … π: counter-clockwise for side 1, clockwise for −1, seen from above with
 * the arena on the left of the wall.
 */
export const angleToWall: ConstraintKind = {
  id: 'angle-to-wall',
  title: 'Angle to the wall',
  unit: 'rad',
  takes: ['piece', 'wall'],
  suits: ['long'],
  sided: true,
  measure(gripped, side) {
    const [piece, wall] = pairOf(gripped, 'angle-to-wall');
    return lineTurn(side * (piece.pose.angle - wall.pose.angle));
  },
  residuals(gripped, hold, side) {
    const [piece, wall] = pairOf(gripped, 'angle-to-wall');
    return [residual(lineAngle(piece.pose.angle - wall.pose.angle - side * hold), [0, 0, 1], [0, 0, -1])];
  },
  sentence: ([piece, wall], value) => `${piece} lies at ${value} to ${wall}.`,
};
