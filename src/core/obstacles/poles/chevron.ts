import { feet, inches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  centredPieces,
  constraintOf,
  cornerConstraints,
  cornerSetback,
  crossStation,
  degrees,
  gaitParam,
  gaitsOn,
  gapForGait,
  POLE_PARAMS,
  pairs,
  pieceOfKind,
  poseStation,
} from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';

/** So much of an arm, about its middle, is there to be ridden over; the rest is too near an end. Estimate. */
const RIDDEN = 0.8;

/** What is crossed: the points, or the arms that are on the rider's left or right as they are ridden. */
function partOfChevrons([first]: readonly Station[]): string {
  if (first?.kind !== 'cross') return 'the points of the chevrons';
  // Towards the points a left arm is crossed against its +y side.
  const isAhead = first.way === (first.piece.startsWith('left') ? -1 : 1);
  return `the ${isAhead === first.piece.startsWith('left') ? 'left' : 'right'} arms of the chevrons`;
}

/**
 * Arrowheads of two poles each, one behind the other. Frame: origin at the middle, the points towards +x; `left-1` and
 * `right-1` are the first arrowhead at −x, each pole running from the point outwards.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | angle-between, side 1; ends-level, apart | the two arms of an arrowhead at 0 | their angle; nothing apart |
 * | parallel | left-n–left-(n+1) | |
 * | gap | left-n–left-(n+1) (side −1), right-n–right-(n+1) (side 1), straight across | gap |
 *
 * The gap is square between arms, where a horse goes over the arms of one side; over the points it is a little wider.
 * Three arrowheads of 8 ft poles, swept back by 15°: estimate.
 */
export const chevron: ObstacleKind = {
  id: 'chevron',
  title: 'Chevron run',
  alsoCalled: ['arrowheads', 'v poles'],
  family: 'poles',
  about: 'Arrowheads of two poles in a row, ridden over their points or over the arms of one side.',
  words: { noun: 'chevrons', part: partOfChevrons },
  params: {
    arrows: { kind: 'count', label: 'Arrowheads', usual: 3, least: 2, most: 8 },
    gap: {
      kind: 'length',
      label: 'Gap',
      says: 'Inside to inside, square from arm to arm.',
      usual: feet(3),
      least: inches(12),
      most: feet(14),
    },
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(8) },
    sweep: {
      kind: 'angle',
      label: 'Swept back by',
      says: 'How far the arms are turned back from square to the run.',
      usual: degrees(15),
      least: degrees(5),
      most: degrees(30),
    },
    gait: gaitParam('jog'),
  },
  gapParam: GAP_ITSELF,
  usual: gapForGait,
  build(values) {
    const count = numberValue(values, 'arrows');
    const gap = numberValue(values, 'gap');
    const length = numberValue(values, 'length');
    const thickness = numberValue(values, 'thickness');
    const sweep = numberValue(values, 'sweep');
    const square = gap + thickness;
    /** By how much of a pole the square line comes further out at each arm. */
    const drift = (square * Math.tan(sweep)) / length;
    if (drift > RIDDEN) {
      const nearest = degrees(Math.floor((Math.atan((RIDDEN * length) / square) * 180) / Math.PI));
      const why = `Arms of ${lengthWords(length)} swept back so far do not lie behind one another at a gap of ${lengthWords(gap)}.`;
      return infeasible(`${why} Swept back by ${Math.round((nearest * 180) / Math.PI)}° they do.`, { sweep: nearest });
    }
    const pitch = square / Math.cos(sweep);
    const between = Math.PI - 2 * sweep;
    const shy = cornerSetback(thickness, between);
    const out = shy + length / 2;
    const arm = (id: string, x: number, side: 1 | -1) => {
      const angle = side * (Math.PI / 2 + sweep);
      const pose = { x: x + out * Math.cos(angle), y: out * Math.sin(angle), angle };
      return pieceOfKind(id, 'pole', { length, thickness }, pose);
    };
    const tips = Array.from({ length: count }, (_, i) => i * pitch);
    const pieces = centredPieces([
      ...tips.map((x, i) => arm(`left-${i + 1}`, x, 1)),
      ...tips.map((x, i) => arm(`right-${i + 1}`, x, -1)),
    ]);
    const [left, right] = [pieces.slice(0, count), pieces.slice(count)];
    const across = (side: 'left' | 'right', i: number) => [
      { piece: `${side}-${i}`, at: 0.5 - drift / 2 },
      { piece: `${side}-${i + 1}`, at: 0.5 + drift / 2 },
    ];
    const constraints = [
      ...tips.flatMap((_, i) => [
        constraintOf(`angle-${i + 1}`, 'angle-between', [{ piece: `left-${i + 1}` }, { piece: `right-${i + 1}` }], {
          hold: between,
          side: 1,
        }),
        ...cornerConstraints(String(i + 1), [`left-${i + 1}`, 0], [`right-${i + 1}`, 0]),
      ]),
      ...pairs(tips).flatMap((_, i) => [
        constraintOf(`parallel-${i + 1}`, 'parallel', [{ piece: `left-${i + 1}` }, { piece: `left-${i + 2}` }]),
        constraintOf(`gap-left-${i + 1}`, 'gap', across('left', i + 1), { hold: gap, side: -1 }),
        constraintOf(`gap-right-${i + 1}`, 'gap', across('right', i + 1), { hold: gap, side: 1 }),
      ]),
    ];
    const gaits = gaitsOn(values);
    const ways = ([1, -1] as const).flatMap((way): Passage[] => {
      const suffix = way === 1 ? '' : '-return';
      const where = way === 1 ? '' : ' from the other end';
      const at = (i: number) => 0.5 + (i - (count - 1) / 2) * drift;
      const order = <T>(items: readonly T[]) => (way === 1 ? items : items.toReversed());
      const arms = [
        { side: 'left', poles: left, over: -way as 1 | -1 },
        { side: 'right', poles: right, over: way },
      ];
      const sides = arms.map(({ side, poles, over }): Passage => {
        const stations = order(poles.map(({ id }, i) => crossStation(id, at(i), over)));
        // As the rider sees them: from the other end the left ones are on the right.
        const hand = (way === 1) === (side === 'left') ? 'left' : 'right';
        return { id: `${side}${suffix}`, title: `over the ${hand} arms of the chevrons${where}`, gaits, stations };
      });
      // In the frame of a left arm the run's forward is turned back by its own angle.
      const heading = -(Math.PI / 2 + sweep) + (way === 1 ? 0 : Math.PI);
      const points: Passage = {
        id: `points${suffix}`,
        title: `over the points of the chevrons${where}`,
        gaits,
        stations: order(left.map(({ id }) => poseStation(id, { x: -out, y: 0, angle: heading }))),
      };
      // A long run leaves its arms behind: then only the points are left.
      return (count - 1) * drift > RIDDEN ? [points] : [...sides, points];
    });
    return {
      kind: 'built',
      pieces,
      constraints,
      passages: ways,
      facts: { pitch, pointGap: pitch - thickness / Math.cos(sweep) },
    };
  },
};
