import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { middleOf, threeOf } from './grip.ts';
import { mirrorImages } from './mirrored.ts';

function off(held: readonly Held[]): readonly Residual[] {
  const [first, second, wall] = threeOf(held, 'mirrored-centre');
  const { x, y, ux, uy, reach } = middleOf(wall);
  return mirrorImages([first, second], { x, y, ux: -uy, uy: ux, reach }, wall.pose.angle + Math.PI / 2);
}

/**
 * Two pieces are mirror images about the middle line of the arena that stands square on a wall. `measure` is how far
 * midway between them is off it, metres.
 */
export const mirroredCentre: ConstraintKind = {
  id: 'mirrored-centre',
  title: 'Mirrored about the middle',
  unit: 'none',
  takes: ['piece', 'piece', 'wall'],
  suits: ['any', 'any'],
  measure: (held) => off(held)[0]?.value ?? 0,
  residuals: off,
  sentence: ([first, second, wall]) =>
    `${first} and ${second} are mirror images about the line square to the middle of ${wall}.`,
};
