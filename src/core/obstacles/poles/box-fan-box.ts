import { feet, inches } from '../../measure/quantity.ts';
import { numberValue, type Values } from '../../pieces/params.ts';
import type { Piece } from '../../pieces/piece.ts';
import { convexOverlapArea } from '../../plane/convex-clip.ts';
import type { Pose } from '../../plane/pose.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  centredPieces,
  constraintOf,
  crossStation,
  footprintOf,
  gaitParam,
  gaitsOn,
  POLE_PARAMS,
  pairs,
  pieceOfKind,
  slowerGaitHint,
} from '../parts.ts';
import type { Passage } from '../passage.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';
import { type BoxSize, boxConstraints, boxPoles, middleOfSide } from './box.ts';
import { type FanShape, fan, fanFault, fanShape, nearestInnerGap } from './fan.ts';

/** From the first box to the last the line turns at most so far, or it comes back into the first. Estimate: 240°. */
const MOST_TURN = (240 * Math.PI) / 180;
/** Pieces that share less than this touch, m². */
const TOUCHING = 1e-6;

/** Boxes of poles as long as their inside: longer ones would stick out into the fan. */
function boxes(values: Values): readonly [BoxSize, BoxSize] {
  const side = numberValue(values, 'side');
  const size = { side, length: side, thickness: numberValue(values, 'thickness') };
  // South is the side to the fan in both, its pole running outwards.
  return [
    { ...size, prefix: 'first-', winding: -1 },
    { ...size, prefix: 'last-', winding: 1 },
  ];
}

/** The first box, the fan and the last box about the meeting point of the fan's poles, the fan's middle towards +y. */
function poleGroups(values: Values, shape: FanShape): readonly [Piece[], Piece[], Piece[]] {
  const count = numberValue(values, 'poles');
  const length = numberValue(values, 'length');
  const size = { length, thickness: numberValue(values, 'thickness') };
  const [first, last] = boxes(values);
  const half = (first.side + size.thickness) / 2;
  const at = (i: number) => Math.PI / 2 + (i - (count - 1) / 2) * shape.angle;
  /** On the line's circle at an angle, and so far on from there; the frame's +y is the way of travel. */
  const frame = (angle: number, on: number): Pose => ({
    x: shape.lineRadius * Math.cos(angle) - on * Math.sin(angle),
    y: shape.lineRadius * Math.sin(angle) + on * Math.cos(angle),
    angle,
  });
  const out = shape.innerRadius + length / 2;
  const poles = Array.from({ length: count }, (_, i) => {
    const pose = { x: out * Math.cos(at(i)), y: out * Math.sin(at(i)), angle: at(i) };
    return pieceOfKind(`pole-${i + 1}`, 'pole', size, pose);
  });
  return [boxPoles(first, frame(at(-1), -half)), poles, boxPoles(last, frame(at(count), half))];
}

/** Why these values cannot be laid or ridden. */
function boxFanBoxFault(values: Values): string | undefined {
  const shape = fanShape(values);
  const why = fanFault(values, shape);
  if (why !== undefined || shape === undefined) return why ?? 'This fan cannot be laid.';
  const turn = (numberValue(values, 'poles') + 1) * shape.angle;
  if (turn > MOST_TURN) {
    return `From the first box to the last the line turns by ${Math.round((turn * 180) / Math.PI)}°: more than 240° brings it back into the first.`;
  }
  const rings = poleGroups(values, shape).map((pieces) => pieces.map(footprintOf));
  const overlaps = pairs([...rings, ...rings.slice(0, 1)]).some(([a, b]) =>
    a.some((one) => b.some((other) => convexOverlapArea(one, other) > TOUCHING)),
  );
  return overlaps ? 'The boxes lie on the poles of the fan or on each other.' : undefined;
}

/**
 * A box, a fan and a box on one line: straight through the first, round over the fan, straight through the last. Frame:
 * origin at the middle of it all, outer ends of the fan towards +y. `first-south` and `last-south` are the sides to the
 * fan; fan poles count from the first box to the last, which is the way to the left.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | a box's | the poles of each | side |
 * | a fan's | the poles between | gap, innerGap |
 * | gap, ends-level, angle-between, side 1 | first-south–the first pole, the last pole–last-south, on the line | gap; the fan's angle |
 *
 * Two 12 ft boxes with a three-pole spoke between: trade press; 12 ft sets with every space 6 or 12 ft: trade press.
 */
export const boxFanBox: ObstacleKind = {
  id: 'box-fan-box',
  title: 'Box, fan, box',
  family: 'poles',
  about: 'Two boxes to ride through with a fan between them: straight, round and straight again in one rhythm.',
  words: { noun: 'boxes', ridden: 'through {} and over the fan between them' },
  params: {
    ...fan.params,
    poles: { kind: 'count', label: 'Fan poles', usual: 3, least: 1, most: 5 },
    length: { ...POLE_PARAMS.length, label: 'Fan pole length' },
    side: {
      kind: 'length',
      label: 'Box inside',
      says: 'From pole to pole, inside to inside; its poles are as long.',
      usual: feet(12),
      least: feet(6),
      most: feet(16),
    },
    line: {
      kind: 'fraction',
      label: 'Line at',
      says: 'How far along the fan poles the horse goes, from their inner ends.',
      usual: 2 / 3,
      least: 0.5,
      most: 1,
    },
    innerGap: { kind: 'length', label: 'Inner gap', usual: feet(1), least: inches(2), most: feet(14) },
    gait: gaitParam('lope'),
  },
  gapParam: GAP_ITSELF,
  build(values) {
    const why = boxFanBoxFault(values);
    if (why !== undefined) {
      const fits = (tried: Values) => boxFanBoxFault(tried) === undefined;
      const innerGap = nearestInnerGap(values, fits);
      if (innerGap === undefined) return infeasible(why, undefined);
      const cure = `An inner gap of ${lengthWords(innerGap)} makes it right.`;
      return infeasible(`${why} ${cure}${slowerGaitHint(values, fits)}`, { innerGap });
    }
    const shape = fanShape(values);
    if (shape === undefined) throw new Error('box-fan-box: what fits has a shape');
    const [first, poles, last] = poleGroups(values, shape);
    const pieces = centredPieces([...first, ...poles, ...last]);
    const line = numberValue(values, 'line');
    const gap = numberValue(values, 'gap');
    const sizes = boxes(values);
    const middle = middleOfSide(sizes[0]);
    const round = [
      { piece: 'first-south', at: middle },
      ...poles.map(({ id }) => ({ piece: id, at: line })),
      { piece: 'last-south', at: middle },
    ];
    const constraints = [
      ...boxConstraints(sizes[0]),
      ...boxConstraints(sizes[1]),
      ...pairs(round).flatMap(([a, b], i) => {
        const inFan = i > 0 && i < poles.length;
        const ends = [
          { piece: a.piece, at: 0 },
          { piece: b.piece, at: 0 },
        ];
        return [
          constraintOf(`gap-${i + 1}`, 'gap', [a, b], { hold: gap, side: 1 }),
          constraintOf(`level-${i + 1}`, 'ends-level', [a, b]),
          // A box's pole is longer or shorter inwards than a fan's: their inner ends are no measure.
          inFan
            ? constraintOf(`inner-gap-${i + 1}`, 'gap', ends, { hold: numberValue(values, 'innerGap'), side: 1 })
            : constraintOf(`angle-${i + 1}`, 'angle-between', [{ piece: a.piece }, { piece: b.piece }], {
                hold: shape.angle,
                side: 1,
              }),
        ];
      }),
    ];
    const gaits = gaitsOn(values, shape.lineRadius);
    // Poles of the first box run clockwise, those of the last the other way round: their +y sides look outwards and inwards.
    const over = [
      crossStation('first-north', middle, -1),
      ...round.map(({ piece, at }) => crossStation(piece, at, 1)),
      crossStation('last-north', middle, -1),
    ];
    const back = [
      crossStation('last-north', middle, 1),
      ...round.toReversed().map(({ piece, at }) => crossStation(piece, at, -1)),
      crossStation('first-north', middle, 1),
    ];
    const passages: Passage[] = [
      { id: 'left', title: 'through the boxes and over the fan between them, turning left', gaits, stations: over },
      { id: 'right', title: 'through the boxes and over the fan between them, turning right', gaits, stations: back },
    ];
    return { kind: 'built', pieces, constraints, passages, facts: shape };
  },
};
