import { feet, inches } from '../../measure/quantity.ts';
import { numberValue, type Params, type Values } from '../../pieces/params.ts';
import type { Built, ObstacleKind } from '../obstacle.ts';
import {
  constraintOf,
  crossStation,
  gaitParam,
  gaitsOn,
  gapForGait,
  POLE_PARAMS,
  pairs,
  pieceOfKind,
} from '../parts.ts';
import { GAP_ITSELF } from '../traits.ts';

/** Poles in a row, from the first to the last, and the fraction along them at which they are ridden. */
export const ROW_PARAMS = {
  poles: { kind: 'count', label: 'Poles', usual: 4, least: 1, most: 12 },
  gap: {
    kind: 'length',
    label: 'Gap',
    says: 'Inside to inside, from pole to pole.',
    usual: feet(3),
    least: inches(12),
    most: feet(30),
  },
  ...POLE_PARAMS,
  // Poles of 3 to 12 ft are in use (trade press, 1992).
  length: { ...POLE_PARAMS.length, least: feet(3) },
  line: {
    kind: 'fraction',
    label: 'Line at',
    says: 'How far along the poles the horse goes.',
    usual: 0.5,
    least: 0.1,
    most: 0.9,
  },
  gait: gaitParam('jog'),
} as const satisfies Params;

/** The poles of a run by its values; `raised` gives the values of each that lift its ends. */
export function buildRun(values: Values, raised: (i: number) => Values = () => ({})): Built {
  const count = numberValue(values, 'poles');
  const gap = numberValue(values, 'gap');
  const line = numberValue(values, 'line');
  const size = { length: numberValue(values, 'length'), thickness: numberValue(values, 'thickness') };
  const pitch = gap + size.thickness;
  const pieces = Array.from({ length: count }, (_, i) =>
    pieceOfKind(
      `pole-${i + 1}`,
      'pole',
      { ...size, ...raised(i) },
      { x: (i - (count - 1) / 2) * pitch, y: 0, angle: Math.PI / 2 },
    ),
  );
  const constraints = pairs(pieces).flatMap(([a, b], i) => {
    const at = (fraction: number) => [
      { piece: a.id, at: fraction },
      { piece: b.id, at: fraction },
    ];
    return [
      constraintOf(`gap-${i + 1}`, 'gap', at(line), { hold: gap, side: -1 }),
      constraintOf(`parallel-${i + 1}`, 'parallel', [{ piece: a.id }, { piece: b.id }]),
      constraintOf(`level-${i + 1}`, 'ends-level', at(0.5)),
    ];
  });
  const gaits = gaitsOn(values);
  const what = count === 1 ? 'the pole' : 'the poles';
  return {
    kind: 'built',
    pieces,
    constraints,
    passages: [
      {
        id: 'forward',
        title: `over ${what}`,
        gaits,
        stations: pieces.map((piece) => crossStation(piece.id, line, -1)),
      },
      {
        id: 'return',
        title: `over ${what} from the other end`,
        gaits,
        stations: pieces.toReversed().map((piece) => crossStation(piece.id, line, 1)),
      },
    ],
    facts: { pitch, depth: (count - 1) * pitch + size.thickness },
  };
}

/**
 * Parallel poles, ridden straight over. Frame: origin at the middle of the run, poles parallel to y, ridden along +x;
 * fraction 0 of a pole is its −y end.
 *
 * | held between neighbours | grips | hold |
 * |---|---|---|
 * | gap, side −1 | both at `line` | gap |
 * | parallel | | |
 * | ends-level | both at 0.5 | |
 *
 * Usual: four poles, the least that most books call a pole obstacle (EWU § 7404, Horse Illustrated 2005); 3 ft, a jog-over
 * (American Mule Association rule 216).
 */
export const run: ObstacleKind = {
  id: 'run',
  title: 'Run of poles',
  alsoCalled: ['walk overs', 'walkovers', 'jog overs', 'lope overs', 'trot poles', 'canter poles', 'straight', 'logs'],
  nounByGait: { walk: 'walk-over', jog: 'jog-over', lope: 'lope-over', none: 'pole' },
  family: 'poles',
  about: 'Parallel poles in a row: walk-overs, jog-overs or lope-overs, by the gap and the gait.',
  params: ROW_PARAMS,
  gapParam: GAP_ITSELF,
  usual: gapForGait,
  crossedTogether: true,
  build: (values) => buildRun(values),
};
