import { feet } from '../measure/quantity.ts';
import { amount } from '../pieces/params.ts';
import type { ObstacleKind } from './obstacle.ts';
import { cross, held, POLE_PARAMS, pieceAt, reach, spin } from './parts.ts';
import type { Passage, Station } from './passage.ts';
import { refused, taped } from './words.ts';

const SIDES = ['south', 'east', 'north', 'west'] as const;
type Side = (typeof SIDES)[number];
const OPPOSITE: Readonly<Record<Side, Side>> = { south: 'north', north: 'south', east: 'west', west: 'east' };

/**
 * Four equal poles laid square, each with one end against the next. Frame: origin at the middle of the inside, sides
 * square to the axes. south, east, north and west are the poles; each runs counter-clockwise, its +y side inwards, its
 * end (1) against the inner side of the next. Poles longer than the inside stick out past their corner.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | touching, side 1 | each pole's end 1, the next | |
 * | square | south–east, east–north, north–west | |
 * | gap, side 1 | south–north and east–west, where the middle is | side |
 *
 * Usual: 6 ft inside (5 to 6 ft, four equal poles: Horse Illustrated, August 2005), of 8 ft poles, which a truck carries.
 */
export const box: ObstacleKind = {
  id: 'box',
  title: 'Box',
  group: 'Over poles',
  about: 'A square of poles: the horse goes in, turns with all four feet inside, and goes out.',
  params: {
    side: {
      kind: 'length',
      label: 'Inside',
      says: 'From pole to pole, inside to inside.',
      usual: feet(6),
      least: feet(4),
      most: feet(16),
    },
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(8) },
  },
  build(values) {
    const side = amount(values, 'side');
    const length = amount(values, 'length');
    const thickness = amount(values, 'thickness');
    if (side > length) {
      const why = `Poles of ${taped(length)} do not close a box of ${taped(side)} inside. With them it is at most ${taped(length)}.`;
      return refused(why, { side: length });
    }
    const out = (side + thickness) / 2;
    // The pole's end is at the corner, so its middle lies half a length before it.
    const back = (side - length) / 2;
    const pieces = SIDES.map((id, i) => {
      const angle = (i * Math.PI) / 2;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      return pieceAt(id, 'pole', { length, thickness }, { x: back * c + out * s, y: back * s - out * c, angle });
    });
    const middle = 1 - side / (2 * length);
    const next = (i: number) => SIDES[(i + 1) % 4] ?? 'south';
    const constraints = [
      ...SIDES.map((id, i) =>
        held(`corner-${id}`, 'touching', [{ piece: id, at: 1 }, { piece: next(i) }], { side: 1 }),
      ),
      ...SIDES.slice(0, 3).map((id, i) => held(`square-${id}`, 'square', [{ piece: id }, { piece: next(i) }])),
      ...(['south', 'east'] as const).map((id) =>
        held(
          `inside-${id}`,
          'gap',
          [
            { piece: id, at: middle },
            { piece: OPPOSITE[id], at: middle },
          ],
          { hold: side, side: 1 },
        ),
      ),
    ];
    const passages = (['south', 'north'] as const).flatMap((from): Passage[] => {
      const suffix = from === 'south' ? '' : '-return';
      const where = from === 'south' ? '' : ' from the far side';
      const into = cross(from, middle, 1);
      const centre = reach(from, { x: (middle - 0.5) * length, y: out, angle: Math.PI / 2 });
      const turned = (id: string, title: string, stations: readonly Station[]): Passage => ({
        id: `${id}${suffix}`,
        title,
        gaits: ['walk'],
        stations: [into, centre, ...stations],
      });
      const over = cross(OPPOSITE[from], middle, -1);
      const same = cross(from, middle, -1);
      return [
        turned('turn-left', `into the box${where}, a full turn left, and straight on out`, [spin(2 * Math.PI), over]),
        turned('turn-right', `into the box${where}, a full turn right, and straight on out`, [
          spin(-2 * Math.PI),
          over,
        ]),
        turned('half-left', `into the box${where}, half a turn left, and out the same way`, [spin(Math.PI), same]),
        turned('half-right', `into the box${where}, half a turn right, and out the same way`, [spin(-Math.PI), same]),
        {
          id: `through${suffix}`,
          title: `straight through the box${where}`,
          gaits: ['walk', 'jog', 'lope'],
          stations: [into, over],
        },
      ];
    });
    return { kind: 'built', pieces, constraints, passages, facts: { inside: side, diagonal: side * Math.SQRT2 } };
  },
};
