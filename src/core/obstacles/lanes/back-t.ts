import { feet, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import { TOUCH } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { centredPieces, constraintOf, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { LANE_WIDTH } from './back-lane.ts';
import { inAndOut, type Lane, reversedLane, turnAndBack } from './lane-ways.ts';

/** The lane that a move is in: an arm, left or right of the middle, where a station lies out along it; else the stem. */
function partOfLanes(stations: readonly Station[]): string {
  const last = stations.at(-1);
  const out = stations.reduce(
    (sum, each) => sum + (each.kind === 'reach' && each.piece === 'across' ? each.pose.x : 0),
    0,
  );
  // The stations of the corner are in the middle, on whichever pole they are anchored.
  if (Math.abs(out) < LANE_WIDTH.least / 2 || (last?.kind === 'reach' && last.piece.startsWith('stem')))
    return 'its stem';
  return out < 0 ? 'its left arm' : 'its right arm';
}

/**
 * A stem between two poles that opens into a lane across its end. Frame: origin at the middle, the stem at −y; `across`
 * and the arms run along +x, the stem's poles away from the lane.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | touching | each arm's inner end on its stem pole and the stem pole's end 0 on the arm: corner to corner | |
 * | square | arm-left–stem-left, arm-right–stem-right | |
 * | gap, side 1; parallel; ends-level | stem-left–stem-right in their middles | width |
 * | gap, side 1; parallel; ends-level | arm-left in its middle–across beside it | width |
 *
 * Usual: 3 ft lanes, a 12 ft pole across two arms of 8 ft, a little inside their ends: estimate.
 */
export const backT: ObstacleKind = {
  id: 'back-t',
  title: 'Back-through T',
  alsoCalled: ['back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'Back up the stem, turn the quarters to one side and back out through that arm.',
  words: { noun: 'T', isEntered: true, part: partOfLanes },
  params: {
    // With more, no pole would be long enough to lie across.
    width: { ...LANE_WIDTH, most: feet(6) },
    length: { ...POLE_PARAMS.length, label: 'Pole across' },
    stemLength: { ...POLE_PARAMS.length, label: 'Stem poles', usual: feet(8) },
    armLength: { ...POLE_PARAMS.length, label: 'Arm poles', usual: feet(8), least: feet(2), most: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const length = numberValue(values, 'length');
    const stemLength = numberValue(values, 'stemLength');
    const armLength = numberValue(values, 'armLength');
    const thickness = numberValue(values, 'thickness');
    const half = thickness / 2;
    // The arms begin a thickness beyond the stem's inner faces, so that they meet its poles corner to corner.
    const inner = width / 2 + thickness;
    const middle = inner + armLength / 2;
    const nearest = wholeInches(2 * middle);
    if (length < nearest - TOUCH) {
      const why = `A pole of ${lengthWords(length)} does not lie across two arms of ${lengthWords(armLength)} and a lane of ${lengthWords(width)}: it takes ${lengthWords(nearest)}.`;
      return infeasible(why, { length: nearest });
    }
    const arm = { length: armLength, thickness };
    const stem = { length: stemLength, thickness };
    const down = -Math.PI / 2;
    const stemAt = (side: 1 | -1): Pose => ({
      x: side * (width / 2 + half),
      y: -thickness - stemLength / 2,
      angle: down,
    });
    const pieces = centredPieces([
      pieceOfKind('across', 'pole', { length, thickness }, { x: 0, y: width + half, angle: 0 }),
      pieceOfKind('arm-left', 'pole', arm, { x: -middle, y: -half, angle: 0 }),
      pieceOfKind('arm-right', 'pole', arm, { x: middle, y: -half, angle: 0 }),
      pieceOfKind('stem-left', 'pole', stem, stemAt(-1)),
      pieceOfKind('stem-right', 'pole', stem, stemAt(1)),
    ]);
    const corner = (which: 'left' | 'right', end: 0 | 1, side: 1 | -1) => [
      constraintOf(
        `corner-${which}-arm`,
        'touching',
        [{ piece: `arm-${which}`, at: end }, { piece: `stem-${which}` }],
        {
          side,
        },
      ),
      constraintOf(`corner-${which}-stem`, 'touching', [{ piece: `stem-${which}`, at: 0 }, { piece: `arm-${which}` }], {
        side: -1,
      }),
      constraintOf(`square-${which}`, 'square', [{ piece: `arm-${which}` }, { piece: `stem-${which}` }]),
    ];
    const heldLane = (id: string, a: { piece: string; at: number }, b: { piece: string; at: number }) => [
      constraintOf(`lane-${id}`, 'gap', [a, b], { hold: width, side: 1 }),
      constraintOf(`parallel-${id}`, 'parallel', [{ piece: a.piece }, { piece: b.piece }]),
      constraintOf(`level-${id}`, 'ends-level', [a, b]),
    ];
    const constraints = [
      ...corner('left', 1, -1),
      ...corner('right', 0, 1),
      ...heldLane('stem', { piece: 'stem-left', at: 0.5 }, { piece: 'stem-right', at: 0.5 }),
      ...heldLane('across', { piece: 'arm-left', at: 0.5 }, { piece: 'across', at: 0.5 - middle / length }),
    ];
    const [across, , , stemLeft] = pieces;
    if (across === undefined || stemLeft === undefined) throw new Error('back-t: it has a stem and a pole across');
    const y = across.pose.y - half - width / 2;
    const foot = stemLeft.pose.y - stemLength / 2;
    const far = Math.max(length / 2, inner + armLength);
    const passages = (['left', 'right'] as const).flatMap((hand): Passage[] => {
      const end = { x: hand === 'left' ? -far : far, y };
      const lane: Lane = { spots: [{ x: 0, y: foot }, { x: 0, y }, end], beside: [stemLeft, across] };
      return [
        {
          id: `turn-and-back-${hand}`,
          title: `turn and back up the T, a quarter turn ${hand}, and back out`,
          gaits: ['walk'],
          stations: turnAndBack(lane),
        },
        {
          id: `in-${hand}`,
          title: `ride into the T from the ${hand} and back out of its stem`,
          gaits: ['walk'],
          stations: inAndOut(reversedLane(lane)),
        },
      ];
    });
    return { kind: 'built', pieces, constraints, passages, facts: { width } };
  },
};
