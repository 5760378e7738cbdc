import { feet, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import { TOUCH } from '../../plane/point.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { centredPieces, constraintOf, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { LANE_WIDTH } from './back-lane.ts';
import { LEAST_LANE, lanePassages, laneWords } from './lane-ways.ts';

/**
 * Two lanes side by side, joined at one end: two sides, a pole between them, and one across the end. Frame: origin at the
 * middle, the closed end at −y; `left`, `between` and `right` run towards the mouths, `end` along +x.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | touching, side 1 | left and right at 0, end | |
 * | square | end–between | |
 * | parallel | between–left, between–right | |
 * | gap | between–left (side 1), between–right (side −1), where they lie beside each other | width |
 * | marker-clear | end, between at 0 | width |
 * | on-line | between, the middle of end | |
 *
 * Usual: 3 ft lanes throughout: common practice, no source.
 */
export const backU: ObstacleKind = {
  id: 'back-u',
  title: 'Back-through U',
  alsoCalled: ['back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'Down one lane, round the end of the middle pole and up the other, backwards.',
  words: laneWords('U'),
  params: {
    // The pole across the end closes both lanes, so wider lanes would need longer poles than exist.
    width: { ...LANE_WIDTH, most: feet(6) },
    length: { ...POLE_PARAMS.length, label: 'Sides' },
    innerLength: { ...POLE_PARAMS.length, label: 'Middle pole', usual: feet(8) },
    endLength: { ...POLE_PARAMS.length, label: 'End pole', usual: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const length = numberValue(values, 'length');
    const innerLength = numberValue(values, 'innerLength');
    const endLength = numberValue(values, 'endLength');
    const thickness = numberValue(values, 'thickness');
    const closes = wholeInches(2 * width + 3 * thickness);
    const turns = wholeInches(width + LEAST_LANE);
    const short = {
      ...(endLength < closes - TOUCH ? { endLength: closes } : {}),
      ...(length < turns - TOUCH ? { length: turns } : {}),
    };
    if (Object.keys(short).length > 0) {
      const reasons = [
        ...('endLength' in short
          ? [
              `An end pole of ${lengthWords(endLength)} does not close two lanes of ${lengthWords(width)}: it takes ${lengthWords(closes)}.`,
            ]
          : []),
        ...('length' in short
          ? [
              `Sides of ${lengthWords(length)} end before the lane has turned: they must be ${lengthWords(turns)} or longer.`,
            ]
          : []),
      ];
      return infeasible(reasons.join(' '), short);
    }
    const aside = width + thickness;
    const mouth = Math.max(length, width + innerLength);
    const beside = (width + Math.min(length, width + innerLength)) / 2;
    const up = Math.PI / 2;
    const side = (id: string, x: number) =>
      pieceOfKind(id, 'pole', { length, thickness }, { x, y: length / 2, angle: up });
    const middle = { x: 0, y: width + innerLength / 2, angle: up };
    const pieces = centredPieces([
      side('left', -aside),
      pieceOfKind('between', 'pole', { length: innerLength, thickness }, middle),
      side('right', aside),
      pieceOfKind('end', 'pole', { length: endLength, thickness }, { x: 0, y: -thickness / 2, angle: 0 }),
    ]);
    const lane = (id: string) => [
      { piece: 'between', at: (beside - width) / innerLength },
      { piece: id, at: beside / length },
    ];
    const constraints = [
      constraintOf('end-left', 'touching', [{ piece: 'left', at: 0 }, { piece: 'end' }], { side: 1 }),
      constraintOf('end-right', 'touching', [{ piece: 'right', at: 0 }, { piece: 'end' }], { side: 1 }),
      constraintOf('square', 'square', [{ piece: 'end' }, { piece: 'between' }]),
      constraintOf('parallel-left', 'parallel', [{ piece: 'between' }, { piece: 'left' }]),
      constraintOf('parallel-right', 'parallel', [{ piece: 'between' }, { piece: 'right' }]),
      constraintOf('lane-left', 'gap', lane('left'), { hold: width, side: 1 }),
      constraintOf('lane-right', 'gap', lane('right'), { hold: width, side: -1 }),
      constraintOf('lane-end', 'marker-clear', [{ piece: 'end' }, { piece: 'between', at: 0 }], { hold: width }),
      constraintOf('middle', 'on-line', [{ piece: 'between' }, { piece: 'end' }]),
    ];
    const [left, between, right] = pieces;
    if (left === undefined || between === undefined || right === undefined)
      throw new Error('back-u: three poles go up');
    // The end pole's inner face, after centring.
    const floor = left.pose.y - length / 2;
    const half = aside / 2;
    const passages = lanePassages(
      {
        spots: [
          { x: -half, y: floor + mouth },
          { x: -half, y: floor + width / 2 },
          { x: half, y: floor + width / 2 },
          { x: half, y: floor + mouth },
        ],
        beside: [left, between, right],
      },
      'U',
    );
    return { kind: 'built', pieces, constraints, passages, facts: { width, across: 2 * width + thickness } };
  },
};
