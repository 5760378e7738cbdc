import { feet, INCH, inches, type Metres } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import { TOUCH } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { CLEAR_DISTANCE, constraintOf, POLE_PARAMS, pieceOfKind, poseStation, turnStation } from '../parts.ts';
import type { Passage } from '../passage.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { LANE_WIDTH } from './back-lane.ts';

/** Both poles of a leg run beside each other for at least this long, or it is no lane. Estimate. */
const LEAST_LANE: Metres = feet(2);

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
  family: 'backing',
  about: 'A lane with a square corner to back through: the quarters go round first.',
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
      const nearest = inches(Math.ceil((inner + LEAST_LANE) / INCH - 1e-9));
      const why = `Outer poles of ${lengthWords(length)} end before a lane of ${lengthWords(width)} has turned its corner: they must be ${lengthWords(nearest)} or longer.`;
      return infeasible(why, { length: nearest });
    }
    const reachesTo = Math.max(length, inner + innerLength);
    const laneEnd = Math.min(length, inner + innerLength);
    const shift = -(reachesTo - thickness) / 2;
    const along = (x: number, y: number): Pose => ({ x: x + shift, y: y + shift, angle: 0 });
    const upright = (x: number, y: number): Pose => ({ x: x + shift, y: y + shift, angle: Math.PI / 2 });
    const half = thickness / 2;
    const outer = { length, thickness };
    const short = { length: innerLength, thickness };
    const pieces = [
      pieceOfKind('outer-x', 'pole', outer, along(length / 2, -half)),
      pieceOfKind('outer-y', 'pole', outer, upright(-half, length / 2)),
      pieceOfKind('inner-x', 'pole', short, along(inner + innerLength / 2, width + half)),
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
    // Poses in the frame of outer-x: its middle is half a length along, and the lane begins at +half.
    const on = (x: number, y: number, angle: number) => ({ x: x - length / 2, y: y + half, angle });
    const mid = width / 2;
    const mouth = reachesTo + CLEAR_DISTANCE;
    const deep = laneEnd - CLEAR_DISTANCE / 2;
    const [east, north, west, south] = [0, Math.PI / 2, Math.PI, -Math.PI / 2];
    const quarter = Math.PI / 2;
    const station = (pose: Pose, move: 'ride' | 'back' = 'ride') => poseStation('outer-x', pose, move);
    const passages: Passage[] = [
      {
        id: 'turn-and-back',
        title: 'turn and back through the L',
        gaits: ['walk'],
        stations: [
          station(on(mouth, mid, west)),
          turnStation(Math.PI),
          station(on(mid, mid, east), 'back'),
          turnStation(-quarter),
          station(on(mid, mouth, south), 'back'),
        ],
      },
      {
        id: 'turn-and-back-return',
        title: 'turn and back through the L from the other end',
        gaits: ['walk'],
        stations: [
          station(on(mid, mouth, south)),
          turnStation(Math.PI),
          station(on(mid, mid, north), 'back'),
          turnStation(quarter),
          station(on(mouth, mid, west), 'back'),
        ],
      },
      {
        id: 'in-and-back',
        title: 'ride into the L and back out',
        gaits: ['walk'],
        stations: [
          station(on(mouth, mid, west)),
          station(on(mid, mid, west)),
          turnStation(-quarter),
          station(on(mid, deep, north)),
          station(on(mid, mid, north), 'back'),
          turnStation(quarter),
          station(on(mouth, mid, west), 'back'),
        ],
      },
      {
        id: 'in-and-back-return',
        title: 'ride into the L from the other end and back out',
        gaits: ['walk'],
        stations: [
          station(on(mid, mouth, south)),
          station(on(mid, mid, south)),
          turnStation(quarter),
          station(on(deep, mid, east)),
          station(on(mid, mid, east), 'back'),
          turnStation(-quarter),
          station(on(mid, mouth, south), 'back'),
        ],
      },
    ];
    return { kind: 'built', pieces, constraints, passages, facts: { width, lane: laneEnd } };
  },
};
