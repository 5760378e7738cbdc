import { feet, inches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  constraintOf,
  crossStation,
  degrees,
  gaitParam,
  gaitsOn,
  gapForGait,
  POLE_PARAMS,
  pairs,
  pieceOfKind,
  stockMinTurnRadius,
} from '../parts.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';

/**
 * A run whose poles are turned to the one side and the other by turns; the horse bends with them, square over each in its
 * middle. Frame: origin at the middle of the run, ridden along +x; `pole-1` is turned left, fraction 0 of a pole is its
 * −y end.
 *
 * | held between neighbours | grips | hold |
 * |---|---|---|
 * | gap, side −1 | both at 0.5 | gap |
 * | angle-between | | twice the turn |
 * | ends-level | both at 0.5 | |
 *
 * Measured from the middle of one pole to the middle of the next (trade press on lope-overs). A zigzag may be a pole
 * obstacle (Horse Illustrated 2005). 8 ft poles turned by 15°: estimate.
 */
export const zigzag: ObstacleKind = {
  id: 'zigzag',
  title: 'Zigzag run',
  alsoCalled: ['slanted', 'w'],
  family: 'poles',
  about: 'Poles turned left and right by turns: the horse bends with them and keeps to their middles.',
  words: { noun: 'zigzag' },
  params: {
    poles: { kind: 'count', label: 'Poles', usual: 4, least: 2, most: 12 },
    gap: {
      kind: 'length',
      label: 'Gap',
      says: 'Inside to inside, from the middle of one pole to the middle of the next.',
      usual: feet(3),
      least: inches(12),
      most: feet(30),
    },
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(8) },
    turn: {
      kind: 'angle',
      label: 'Turned by',
      says: 'How far each pole is turned from square to the run.',
      usual: degrees(15),
      least: degrees(2),
      most: degrees(30),
    },
    gait: gaitParam('jog'),
  },
  gapParam: GAP_ITSELF,
  usual: gapForGait,
  build(values) {
    const gap = numberValue(values, 'gap');
    const thickness = numberValue(values, 'thickness');
    const length = numberValue(values, 'length');
    const gait = chosenGait(values);
    const least = stockMinTurnRadius(gait);
    const shape = (turn: number) => {
      const pitch = gap + thickness / Math.cos(turn);
      return {
        pitch,
        lineRadius: pitch / (2 * Math.sin(turn)),
        // Between the ends that come together; both lean towards the line half-way between them.
        ends: pitch - length * Math.sin(turn) - thickness * Math.cos(turn),
      };
    };
    const fits = (turn: number) => shape(turn).ends >= 0 && shape(turn).lineRadius >= least;
    const turn = numberValue(values, 'turn');
    const facts = shape(turn);
    if (!fits(turn)) {
      const tried = Array.from({ length: 29 }, (_, i) => degrees(30 - i));
      const nearest = tried.find((each) => each < turn && fits(each));
      const why =
        facts.ends < 0
          ? `Poles of ${lengthWords(length)} turned by ${Math.round((turn * 180) / Math.PI)}° meet at their ends.`
          : `The line bends on a radius of ${roughLength(facts.lineRadius)}: too tight to ${gait} ${bracketedLength(least)}.`;
      if (nearest === undefined) return infeasible(why, undefined, facts);
      return infeasible(
        `${why} Turned by ${Math.round((nearest * 180) / Math.PI)}° it is right.`,
        { turn: nearest },
        facts,
      );
    }
    const count = numberValue(values, 'poles');
    const pieces = Array.from({ length: count }, (_, i) =>
      pieceOfKind(
        `pole-${i + 1}`,
        'pole',
        { length, thickness },
        {
          x: (i - (count - 1) / 2) * facts.pitch,
          y: 0,
          angle: Math.PI / 2 + (i % 2 === 0 ? turn : -turn),
        },
      ),
    );
    const constraints = pairs(pieces).flatMap(([a, b], i) => {
      const middles = [
        { piece: a.id, at: 0.5 },
        { piece: b.id, at: 0.5 },
      ];
      return [
        constraintOf(`gap-${i + 1}`, 'gap', middles, { hold: gap, side: -1 }),
        constraintOf(`angle-${i + 1}`, 'angle-between', [{ piece: a.id }, { piece: b.id }], {
          hold: 2 * turn,
          side: i % 2 === 0 ? -1 : 1,
        }),
        constraintOf(`level-${i + 1}`, 'ends-level', middles),
      ];
    });
    const gaits = gaitsOn(values, facts.lineRadius);
    return {
      kind: 'built',
      pieces,
      constraints,
      passages: [
        { id: 'forward', title: 'over the zigzag', gaits, stations: pieces.map(({ id }) => crossStation(id, 0.5, -1)) },
        {
          id: 'return',
          title: 'over the zigzag from the other end',
          gaits,
          stations: pieces.toReversed().map(({ id }) => crossStation(id, 0.5, 1)),
        },
      ],
      facts,
    };
  },
};
