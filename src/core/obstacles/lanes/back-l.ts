import { feet, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import { TOUCH } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { constraintOf, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { LANE_WIDTH } from './back-lane.ts';
import { type Lane, LEAST_LANE, lanePassages, laneWords } from './lane-ways.ts';

/**
 * A lane with one square corner: two outer poles that meet corner to corner, two inner ones likewise. One leg runs along
 * +x, the other along +y. Frame: origin at the middle of the square that holds it.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | touching | outer-x at 0 on outer-y (side −1), outer-y at 0 on outer-x (side 1); inner likewise | |
 * | square | outer-x–outer-y, inner-x–inner-y | |
 * | parallel | outer-x–inner-x | |
 * | gap | outer-x–inner-x (side 1), outer-y–inner-y (side −1), in the middle of their lane | width |
 *
 * Usual: 3 ft lanes throughout, legs square to the walls: common practice, no source.
 */
export const backL: ObstacleKind = {
  id: 'back-l',
  title: 'Back-through L',
  alsoCalled: ['elbow', 'corner', 'back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'A lane with a square corner to back through: the quarters go round first.',
  words: laneWords('L'),
  params: {
    width: LANE_WIDTH,
    length: { ...POLE_PARAMS.length, label: 'Outer poles' },
    innerLength: { ...POLE_PARAMS.length, label: 'Inner poles', usual: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const length = numberValue(values, 'length');
    const innerLength = numberValue(values, 'innerLength');
    const thickness = numberValue(values, 'thickness');
    // Distances from the inner edge of the outer corner.
    const inner = width + thickness;
    if (length < inner + LEAST_LANE - TOUCH) {
      const nearest = wholeInches(inner + LEAST_LANE);
      const why = `Outer poles of ${lengthWords(length)} end before a lane of ${lengthWords(width)} has turned its corner: they must be ${lengthWords(nearest)} or longer.`;
      return infeasible(why, { length: nearest });
    }
    const reachesTo = Math.max(length, inner + innerLength);
    const laneEnd = Math.min(length, inner + innerLength);
    const shift = -(reachesTo - thickness) / 2;
    const level = (x: number, y: number): Pose => ({ x: x + shift, y: y + shift, angle: 0 });
    const upright = (x: number, y: number): Pose => ({ x: x + shift, y: y + shift, angle: Math.PI / 2 });
    const half = thickness / 2;
    const outer = { length, thickness };
    const short = { length: innerLength, thickness };
    const pieces = [
      pieceOfKind('outer-x', 'pole', outer, level(length / 2, -half)),
      pieceOfKind('outer-y', 'pole', outer, upright(-half, length / 2)),
      pieceOfKind('inner-x', 'pole', short, level(inner + innerLength / 2, width + half)),
      pieceOfKind('inner-y', 'pole', short, upright(width + half, inner + innerLength / 2)),
    ];
    const beside = (inner + laneEnd) / 2;
    const lane = (axis: 'x' | 'y') => [
      { piece: `outer-${axis}`, at: beside / length },
      { piece: `inner-${axis}`, at: (beside - inner) / innerLength },
    ];
    const constraints = [
      ...['outer', 'inner'].flatMap((which) => [
        constraintOf(`corner-${which}-x`, 'touching', [{ piece: `${which}-x`, at: 0 }, { piece: `${which}-y` }], {
          side: -1,
        }),
        constraintOf(`corner-${which}-y`, 'touching', [{ piece: `${which}-y`, at: 0 }, { piece: `${which}-x` }], {
          side: 1,
        }),
        constraintOf(`square-${which}`, 'square', [{ piece: `${which}-x` }, { piece: `${which}-y` }]),
      ]),
      constraintOf('parallel', 'parallel', [{ piece: 'outer-x' }, { piece: 'inner-x' }]),
      constraintOf('lane-x', 'gap', lane('x'), { hold: width, side: 1 }),
      constraintOf('lane-y', 'gap', lane('y'), { hold: width, side: -1 }),
    ];
    const [outerX, outerY] = pieces;
    if (outerX === undefined || outerY === undefined) throw new Error('back-l: two outer poles meet');
    const mid = width / 2;
    const spot = (x: number, y: number) => ({ x: x + shift, y: y + shift });
    const middleLine: Lane = {
      spots: [spot(reachesTo, mid), spot(mid, mid), spot(mid, reachesTo)],
      beside: [outerX, outerY],
      overhang: reachesTo - laneEnd,
    };
    const passages = lanePassages(middleLine, 'L');
    return { kind: 'built', pieces, constraints, passages, facts: { width, lane: laneEnd } };
  },
};
