import { feet, type Metres, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  constraintOf,
  crossStation,
  gaitParam,
  gaitsOn,
  MARKER_BASE,
  POLE_PARAMS,
  pieceOfKind,
  poseStation,
  stockMinTurnRadius,
} from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import { boxConstraints, boxPoles, middleOfSide, unclosedBox } from '../poles/box.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';

/** From the poles to the middle of the horse on the circle: half a stance, a hoof and a hand's breadth. Estimate. */
const OFF_POLES: Metres = 0.3;
/**
 * A pole is crossed no nearer to its corner than this, where it would roll or the next pole is in the way: a little
 * over 2 ft. Estimate.
 */
const OFF_CORNER: Metres = 0.62;
/** From the marker's base to the middle of the horse. As at a serpentine. Estimate. */
const OFF_MARKER: Metres = 0.6;

const QUARTERS = [0, 1, 2, 3, 4];

/**
 * A square of poles with a marker in its middle, to be ridden round inside. Frame: origin at the marker; the poles lie as
 * a box's.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | a box's | the four poles | side |
 * | beside, side 1 | marker, south and marker, east | half the side less half the base |
 * | parallel | marker, south | |
 *
 * Four poles of 12 ft or more with a marker in the middle, to be jogged round: led trail divisions of the Pinto Horse
 * Association's rule book, 2011.
 */
export const squareMarker: ObstacleKind = {
  id: 'square-marker',
  title: 'Square with a marker',
  alsoCalled: ['cone box', 'turn round'],
  family: 'poles',
  about: 'Ride into a square of poles, once round the marker in its middle, and out.',
  words: { noun: 'square', ridden: 'through {}', isEntered: true },
  params: {
    side: {
      kind: 'length',
      label: 'Inside',
      says: 'From pole to pole, inside to inside.',
      usual: feet(12),
      least: feet(8),
      most: feet(16),
    },
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, least: feet(12) },
    markerBase: MARKER_BASE,
    // On 20 ft poles it would still be too tight to lope.
    gait: { ...gaitParam('jog'), options: { walk: 'Walk', jog: 'Jog' } },
  },
  limits: ['square.pole'],
  build(values) {
    const side = numberValue(values, 'side');
    const length = numberValue(values, 'length');
    const thickness = numberValue(values, 'thickness');
    const base = numberValue(values, 'markerBase');
    const size = { side, length, thickness };
    const gait = chosenGait(values);
    const least = stockMinTurnRadius(gait);
    const lineRadius = side / 2 - OFF_POLES;
    const wanted = Math.max(least, base / 2 + OFF_MARKER);
    if (lineRadius < wanted) {
      const nearest = wholeInches(2 * (wanted + OFF_POLES));
      const why = `Inside ${lengthWords(side)} the line turns on a radius of ${roughLength(lineRadius)}: too tight to ${gait} round the marker ${bracketedLength(wanted)}. ${lengthWords(nearest)} inside makes it right.`;
      return infeasible(why, { side: nearest, ...(length < nearest ? { length: nearest } : {}) }, { lineRadius });
    }
    const open = unclosedBox(size);
    if (open !== undefined) return infeasible(open.why.replace(/ With them.*/, ''), { length: side });
    const middle = middleOfSide(size);
    const poles = boxPoles(size);
    const marker = pieceOfKind('marker', 'marker', { base }, { x: 0, y: 0, angle: 0 });
    const off = (side - base) / 2;
    const constraints = [
      ...boxConstraints(size),
      constraintOf('middle-south', 'beside', [{ piece: 'marker' }, { piece: 'south' }], { hold: off, side: 1 }),
      constraintOf('middle-east', 'beside', [{ piece: 'marker' }, { piece: 'east' }], { hold: off, side: 1 }),
      constraintOf('parallel', 'parallel', [{ piece: 'marker' }, { piece: 'south' }]),
    ];
    const gaits = gaitsOn(values, lineRadius);
    // The line comes in a little nearer to the middle than the circle's side, and swings out to it.
    const aside = Math.min(lineRadius, side / 2 - OFF_CORNER) / length;
    const passages = ([1, -1] as const).flatMap((from) =>
      (['left', 'right'] as const).map((hand): Passage => {
        const [near, far] = from === 1 ? (['south', 'north'] as const) : (['north', 'south'] as const);
        const way = hand === 'left' ? 1 : -1;
        // A left-hand circle is come upon at its right.
        const start = from === 1 ? 0 : Math.PI;
        const round = QUARTERS.map((i): Station => {
          const at = (way === 1 ? start : start + Math.PI) + (way * i * Math.PI) / 2;
          const place = { x: lineRadius * Math.cos(at), y: lineRadius * Math.sin(at), angle: at + (way * Math.PI) / 2 };
          return poseStation('marker', place);
        });
        const where = from === 1 ? '' : ' from the far side';
        return {
          id: `${hand}${from === 1 ? '' : '-return'}`,
          title: `into the square${where}, once round the marker to the ${hand}, and straight on out`,
          gaits,
          // Poles run counter-clockwise, inwards on their +y side.
          stations: [
            crossStation(near, middle + way * aside, 1),
            ...round,
            crossStation(far, middle - way * aside, -1),
          ],
        };
      }),
    );
    return { kind: 'built', pieces: [...poles, marker], constraints, passages, facts: { inside: side, lineRadius } };
  },
};
