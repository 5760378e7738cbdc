import { feet } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { centredPieces, constraintOf, cornerConstraints, cornerSetback, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import { SIDE_PASSING_LIMITS } from '../traits.ts';
import { cornerPassages } from './side-pass-corner.ts';

/**
 * Two poles in a square corner. Frame: origin at the middle of what they cover; `pole-1` runs from the corner along +x,
 * `pole-2` along +y.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | square | both | |
 * | ends-level, apart | both at 0 | nothing apart |
 *
 * Side passed in both directions: New York 4-H. 8 ft poles: estimate.
 */
export const sidePassL: ObstacleKind = {
  id: 'side-pass-l',
  title: 'Side pass L',
  alsoCalled: ['sidepass', 'lateral', 'corner'],
  family: 'side-passing',
  about: 'Two poles in a square corner: side pass the one, turn on the forehand or the haunches, side pass the other.',
  words: { noun: 'L' },
  params: {
    length: { ...POLE_PARAMS.length, label: 'First pole', usual: feet(8) },
    secondLength: { ...POLE_PARAMS.length, label: 'Second pole', usual: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: SIDE_PASSING_LIMITS,
  build(values) {
    const length = numberValue(values, 'length');
    const secondLength = numberValue(values, 'secondLength');
    const thickness = numberValue(values, 'thickness');
    const shy = cornerSetback(thickness, Math.PI / 2);
    const pieces = centredPieces([
      pieceOfKind('pole-1', 'pole', { length, thickness }, { x: shy + length / 2, y: 0, angle: 0 }),
      pieceOfKind(
        'pole-2',
        'pole',
        { length: secondLength, thickness },
        { x: 0, y: shy + secondLength / 2, angle: Math.PI / 2 },
      ),
    ]);
    const [first, second] = pieces;
    if (first === undefined || second === undefined) throw new Error('side-pass-l: it has two poles');
    const passages = cornerPassages(
      { x: second.pose.x, y: first.pose.y },
      [
        { pole: first, heading: 0, length: shy + length },
        { pole: second, heading: Math.PI / 2, length: shy + secondLength },
      ],
      { angle: Math.PI / 2, what: 'L', id: '' },
    );
    const constraints = [
      constraintOf('square', 'square', [{ piece: 'pole-1' }, { piece: 'pole-2' }]),
      ...cornerConstraints('1', ['pole-1', 0], ['pole-2', 0]),
    ];
    return { kind: 'built', pieces, constraints, passages, facts: { length: length + secondLength } };
  },
};
