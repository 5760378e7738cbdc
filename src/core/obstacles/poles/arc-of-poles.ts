/** Poles that point away from one centre, as a fan and a curved run lay them. */
import type { Metres, Radians } from '../../measure/quantity.ts';
import { numberValue, type Values } from '../../pieces/params.ts';
import type { Built } from '../obstacle.ts';
import { constraintOf, crossStation, gaitsOn, pairs, pieceOfKind } from '../parts.ts';

/** Where the poles lie: the centre is at (0, −`centre`), the middle of the arc towards +y. */
export interface PoleArc {
  /** Between neighbours. */
  readonly angle: Radians;
  /** From the centre to the inner ends, and of the line of travel. */
  readonly innerRadius: Metres;
  readonly lineRadius: Metres;
  /** Inside to inside at the inner ends. */
  readonly innerGap: Metres;
  readonly centre: Metres;
  /** What is ridden over, for the words of its ways: `the fan`. */
  readonly what: string;
}

/**
 * The pieces, constraints and ways of poles on an arc; `pole-1` is the rightmost. Values: `poles`, `length`,
 * `thickness`, `gap`, `line`, `gait`.
 */
export function arcOfPoles(
  values: Values,
  { angle, innerRadius, lineRadius, innerGap, centre, what }: PoleArc,
): Pick<Built, 'pieces' | 'constraints' | 'passages'> {
  const count = numberValue(values, 'poles');
  const length = numberValue(values, 'length');
  const line = numberValue(values, 'line');
  const size = { length, thickness: numberValue(values, 'thickness') };
  const out = innerRadius + length / 2;
  const pieces = Array.from({ length: count }, (_, i) => {
    const heading = Math.PI / 2 + (i - (count - 1) / 2) * angle;
    const pose = { x: out * Math.cos(heading), y: out * Math.sin(heading) - centre, angle: heading };
    return pieceOfKind(`pole-${i + 1}`, 'pole', size, pose);
  });
  const constraints = pairs(pieces).flatMap(([a, b], i) => {
    const at = (fraction: number) => [
      { piece: a.id, at: fraction },
      { piece: b.id, at: fraction },
    ];
    return [
      constraintOf(`gap-${i + 1}`, 'gap', at(line), { hold: numberValue(values, 'gap'), side: 1 }),
      constraintOf(`inner-gap-${i + 1}`, 'gap', at(0), { hold: innerGap, side: 1 }),
      constraintOf(`level-${i + 1}`, 'ends-level', at(line)),
    ];
  });
  const gaits = gaitsOn(values, lineRadius);
  const left = pieces.map(({ id }) => crossStation(id, line, 1));
  const right = pieces.toReversed().map(({ id }) => crossStation(id, line, -1));
  return {
    pieces,
    constraints,
    passages: [
      { id: 'left', title: `over ${what}, turning left`, gaits, stations: left },
      { id: 'right', title: `over ${what}, turning right`, gaits, stations: right },
    ],
  };
}
