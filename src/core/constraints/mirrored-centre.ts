import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisMiddle, threeOf } from './grip.ts';
import { mirrorResiduals } from './mirrored.ts';

function centreMirrorResiduals(gripped: readonly GrippedPose[]): readonly Residual[] {
  const [first, second, wall] = threeOf(gripped, 'mirrored-centre');
  const { x, y, ux, uy, axialOffset: reach } = axisMiddle(wall);
  return mirrorResiduals([first, second], { x, y, ux: -uy, uy: ux, axialOffset: reach }, wall.pose.angle + Math.PI / 2);
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
  measure: (gripped) => centreMirrorResiduals(gripped)[0]?.value ?? 0,
  residuals: centreMirrorResiduals,
  sentence: ([first, second, wall]) =>
    `${first} and ${second} are mirror images about the line square to the middle of ${wall}.`,
};
