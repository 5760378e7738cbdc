import type { Constraint } from '../../constraints/constraint.ts';
import { feet, type Metres } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { Piece } from '../../pieces/piece.ts';
import { compose, mirrorImage, ORIGIN, type Pose } from '../../plane/pose.ts';
import type { Infeasible, ObstacleKind } from '../obstacle.ts';
import { constraintOf, crossStation, POLE_PARAMS, pieceOfKind, poseStation, turnStation } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';

const SIDES = ['south', 'east', 'north', 'west'] as const;
type Side = (typeof SIDES)[number];
const OPPOSITE: Readonly<Record<Side, Side>> = { south: 'north', north: 'south', east: 'west', west: 'east' };

/** A box to be laid: the side of its inside, its poles, and the names of their ids. */
export interface BoxSize {
  readonly side: Metres;
  readonly length: Metres;
  readonly thickness: Metres;
  /** Before each pole's id: `first-` gives `first-south`. */
  readonly prefix?: string;
  /** −1: its mirror image, in which poles run clockwise. */
  readonly winding?: 1 | -1;
}

/** How far along its pole the middle of a side lies. */
export function middleOfSide({ side, length }: Pick<BoxSize, 'side' | 'length'>): number {
  return 1 - side / (2 * length);
}

/** The four poles about the middle of the inside. */
export function boxPoles(
  { side, length, thickness, prefix = '', winding = 1 }: BoxSize,
  frame: Pose = ORIGIN,
): Piece[] {
  const out = (side + thickness) / 2;
  // The pole's end is at the corner, so its middle lies half a length before it.
  const back = (side - length) / 2;
  return SIDES.map((id, i) => {
    const angle = (i * Math.PI) / 2;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const pose = { x: back * c + out * s, y: back * s - out * c, angle };
    return pieceOfKind(
      prefix + id,
      'pole',
      { length, thickness },
      compose(frame, winding === 1 ? pose : mirrorImage(pose)),
    );
  });
}

/** What holds the four poles together. */
export function boxConstraints({ side, length, prefix = '', winding = 1 }: BoxSize): Constraint[] {
  const at = middleOfSide({ side, length });
  const next = (i: number) => SIDES[(i + 1) % 4] ?? 'south';
  const pole = (id: Side) => prefix + id;
  return [
    ...SIDES.map((id, i) =>
      constraintOf(`${prefix}corner-${id}`, 'touching', [{ piece: pole(id), at: 1 }, { piece: pole(next(i)) }], {
        side: winding,
      }),
    ),
    ...SIDES.slice(0, 3).map((id, i) =>
      constraintOf(`${prefix}square-${id}`, 'square', [{ piece: pole(id) }, { piece: pole(next(i)) }]),
    ),
    ...(['south', 'east'] as const).map((id) =>
      constraintOf(
        `${prefix}inside-${id}`,
        'gap',
        [
          { piece: pole(id), at },
          { piece: pole(OPPOSITE[id]), at },
        ],
        { hold: side, side: winding },
      ),
    ),
  ];
}

/** Why poles do not close a box, and the side that they do close. */
export function unclosedBox({ side, length }: Pick<BoxSize, 'side' | 'length'>): Infeasible | undefined {
  if (side <= length) return undefined;
  const why = `Poles of ${lengthWords(length)} do not close a box of ${lengthWords(side)} inside. With them it is at most ${lengthWords(length)}.`;
  return infeasible(why, { side: length });
}

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
  alsoCalled: ['square', 'turn in the box', '360'],
  family: 'poles',
  about: 'A square of poles: the horse goes in, turns with all four feet inside, and goes out.',
  words: { noun: 'box', ridden: 'straight through {}', isEntered: true },
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
  limits: ['box.side'],
  build(values) {
    const side = numberValue(values, 'side');
    const length = numberValue(values, 'length');
    const thickness = numberValue(values, 'thickness');
    const size = { side, length, thickness };
    const open = unclosedBox(size);
    if (open !== undefined) return open;
    const out = (side + thickness) / 2;
    const middle = middleOfSide(size);
    const pieces = boxPoles(size);
    const constraints = boxConstraints(size);
    const passages = (['south', 'north'] as const).flatMap((from): Passage[] => {
      const suffix = from === 'south' ? '' : '-return';
      const where = from === 'south' ? '' : ' from the far side';
      const into = crossStation(from, middle, 1);
      const centre = poseStation(from, { x: (middle - 0.5) * length, y: out, angle: Math.PI / 2 });
      const turned = (id: string, title: string, stations: readonly Station[]): Passage => ({
        id: `${id}${suffix}`,
        title,
        gaits: ['walk'],
        stations: [into, centre, ...stations],
      });
      const over = crossStation(OPPOSITE[from], middle, -1);
      const same = crossStation(from, middle, -1);
      return [
        turned('turn-left', `into the box${where}, a full turn left, and straight on out`, [
          turnStation(2 * Math.PI),
          over,
        ]),
        turned('turn-right', `into the box${where}, a full turn right, and straight on out`, [
          turnStation(-2 * Math.PI),
          over,
        ]),
        turned('half-left', `into the box${where}, half a turn left, and out the same way`, [
          turnStation(Math.PI),
          same,
        ]),
        turned('half-right', `into the box${where}, half a turn right, and out the same way`, [
          turnStation(-Math.PI),
          same,
        ]),
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
