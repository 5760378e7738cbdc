import { feet, inches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { CLEAR_DISTANCE, constraintOf, POLE_PARAMS, pieceOfKind, poseStation, turnStation } from '../parts.ts';
import type { Passage } from '../passage.ts';
import { BACKING_LIMITS } from '../traits.ts';

/** The clear width of a lane. 3 ft: common practice, no source; published least 28 in and 30 in. */
export const LANE_WIDTH = {
  kind: 'length',
  label: 'Lane',
  says: 'From pole to pole, inside to inside.',
  usual: feet(3),
  least: inches(24),
  most: feet(8),
} as const;

/**
 * A straight lane between two poles. Frame: origin at its middle, the lane along +x, pole-1 on its −y side.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | gap, side 1 | both at 0.5 | width |
 * | parallel | | |
 * | ends-level | both at 0.5 | |
 */
export const backLane: ObstacleKind = {
  id: 'back-lane',
  title: 'Back-through lane',
  alsoCalled: ['chute', 'back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'Two poles to back between, straight.',
  words: { noun: 'chute', ridden: 'through {}', isEntered: true, isLane: true },
  params: { width: LANE_WIDTH, ...POLE_PARAMS },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const size = { length: numberValue(values, 'length'), thickness: numberValue(values, 'thickness') };
    const off = (width + size.thickness) / 2;
    const pieces = [-1, 1].map((way, i) =>
      pieceOfKind(`pole-${i + 1}`, 'pole', size, { x: 0, y: way * off, angle: 0 }),
    );
    const at = (fraction: number) => pieces.map(({ id }) => ({ piece: id, at: fraction }));
    const constraints = [
      constraintOf('gap-1', 'gap', at(0.5), { hold: width, side: 1 }),
      constraintOf(
        'parallel-1',
        'parallel',
        pieces.map(({ id }) => ({ piece: id })),
      ),
      constraintOf('level-1', 'ends-level', at(0.5)),
    ];
    const mouth = size.length / 2 + CLEAR_DISTANCE;
    // From the −x end for 1, from the +x end for −1; `inwards` is the heading into the lane.
    const passages = ([1, -1] as const).flatMap((end): Passage[] => {
      const inwards = end === 1 ? 0 : Math.PI;
      const outwards = end === 1 ? Math.PI : 0;
      const suffix = end === 1 ? '' : '-return';
      const where = end === 1 ? '' : ' from the other end';
      const on = (x: number, angle: number) => ({ x: end * x, y: off, angle });
      return [
        {
          id: `turn-and-back${suffix}`,
          title: `turn and back through the chute${where}`,
          gaits: ['walk'],
          stations: [
            poseStation('pole-1', on(-mouth, inwards)),
            turnStation(Math.PI),
            poseStation('pole-1', on(mouth, outwards), 'back'),
          ],
        },
        {
          id: `in-and-back${suffix}`,
          title: `ride into the chute${where} and back out`,
          gaits: ['walk'],
          stations: [
            poseStation('pole-1', on(-mouth, inwards)),
            poseStation('pole-1', on(size.length / 2 - CLEAR_DISTANCE / 2, inwards)),
            poseStation('pole-1', on(-mouth, inwards), 'back'),
          ],
        },
        {
          id: `through${suffix}`,
          title: `through the chute${where}`,
          gaits: ['walk', 'jog', 'lope'],
          stations: [poseStation('pole-1', on(-mouth, inwards)), poseStation('pole-1', on(mouth, inwards))],
        },
      ];
    });
    return { kind: 'built', pieces, constraints, passages, facts: { width, length: size.length } };
  },
};
