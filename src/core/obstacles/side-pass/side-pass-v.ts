import { feet } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  centredPieces,
  constraintOf,
  cornerConstraints,
  cornerSetback,
  degrees,
  POLE_PARAMS,
  pieceOfKind,
} from '../parts.ts';
import { SIDE_PASSING_LIMITS } from '../traits.ts';
import { cornerPassages } from './side-pass-corner.ts';

/**
 * Two equal poles in a corner that is not square. Frame: origin at the middle of what they cover, open towards +y;
 * `pole-1` runs from the corner to the right, `pole-2` to the left.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | angle-between, side 1 | both | angle |
 * | ends-level, apart | both at 0 | nothing apart |
 *
 * 8 ft poles at 120°: estimate.
 */
export const sidePassV: ObstacleKind = {
  id: 'side-pass-v',
  title: 'Side pass V',
  alsoCalled: ['sidepass', 'lateral', 'corner'],
  family: 'side-passing',
  about: 'Two poles in a wide or sharp corner to side pass, with part of a turn where they meet.',
  words: { noun: 'V' },
  params: {
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(8) },
    angle: {
      kind: 'angle',
      label: 'Angle',
      says: 'Between the two poles.',
      usual: degrees(120),
      // In a sharper corner the horse's feet would be over the other pole before it can turn.
      least: degrees(75),
      most: degrees(165),
    },
  },
  limits: SIDE_PASSING_LIMITS,
  build(values) {
    const length = numberValue(values, 'length');
    const thickness = numberValue(values, 'thickness');
    const angle = numberValue(values, 'angle');
    const shy = cornerSetback(thickness, angle);
    const headings = [(Math.PI - angle) / 2, (Math.PI + angle) / 2] as const;
    const out = shy + length / 2;
    const pieces = centredPieces(
      headings.map((heading, i) => {
        const pose = { x: out * Math.cos(heading), y: out * Math.sin(heading), angle: heading };
        return pieceOfKind(`pole-${i + 1}`, 'pole', { length, thickness }, pose);
      }),
    );
    const [first, second] = pieces;
    if (first === undefined || second === undefined) throw new Error('side-pass-v: it has two poles');
    const at = {
      x: first.pose.x - out * Math.cos(headings[0]),
      y: first.pose.y - out * Math.sin(headings[0]),
    };
    const passages = cornerPassages(
      at,
      [
        { pole: first, heading: headings[0], length: shy + length },
        { pole: second, heading: headings[1], length: shy + length },
      ],
      { angle, what: 'V', id: '' },
    );
    const constraints = [
      constraintOf('angle', 'angle-between', [{ piece: 'pole-1' }, { piece: 'pole-2' }], { hold: angle, side: 1 }),
      ...cornerConstraints('1', ['pole-1', 0], ['pole-2', 0]),
    ];
    return { kind: 'built', pieces, constraints, passages, facts: { angle, length: 2 * length } };
  },
};
