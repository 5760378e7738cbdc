/** Every kind at placements worked out by hand. */
import { describe, expect, test } from 'vitest';
import type { GrippedPose } from '../../../src/core/constraints/constraint.ts';
import { constraintKind } from '../../../src/core/constraints/constraints.ts';
import { grippedWall } from '../../../src/core/constraints/grip.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';

const T = 0.1;
function pole(x: number, y: number, angle = 0, at = 0.5): GrippedPose {
  return { pose: { x, y, angle }, length: 4, width: T, at };
}
function marker(x: number, y: number, angle = 0): GrippedPose {
  return { pose: { x, y, angle }, length: 0.3048, width: 0.3048, at: 0.5 };
}
const ARENA = { length: 60, width: 30 };
const quarter = Math.PI / 2;

interface Row {
  kind: string;
  what: string;
  held: readonly GrippedPose[];
  hold?: number;
  side?: 1 | -1;
}
const MET: readonly Row[] = [
  { kind: 'gap', what: 'two parallel poles 2 m centre to centre', held: [pole(0, 0), pole(0, 2)], hold: 1.9 },
  { kind: 'gap', what: 'the second on the −y side', held: [pole(0, 0), pole(0, -2)], hold: 1.9, side: -1 },
  // A 3-4-5 tape across parallel poles 3 m apart: cos α = 3/5, so each pole takes t/2 ÷ 3/5 off the 5 m.
  { kind: 'gap', what: 'a slanting tape', held: [pole(0, 0), pole(4, 3)], hold: 5 - T / 0.6 },
  // 60° fan with its meeting point at the origin, tape at 3 m: chord 2·3·sin 30° = 3, less t/cos 30°.
  {
    kind: 'gap',
    what: 'a fan of 60° taped 3 m from where the poles would meet',
    held: [pole(4, 0, 0, 0.25), pole(4 * Math.cos(Math.PI / 3), 4 * Math.sin(Math.PI / 3), Math.PI / 3, 0.25)],
    hold: 3 - T / Math.cos(Math.PI / 6),
  },
  { kind: 'parallel', what: 'end for end', held: [pole(0, 0, 0.3), pole(5, 1, 0.3 + Math.PI)] },
  { kind: 'square', what: 'either way round', held: [pole(0, 0, 0.3), pole(5, 1, 0.3 - quarter)] },
  { kind: 'angle-between', what: 'clockwise', held: [pole(0, 0, 1), pole(5, 1, 0.6)], hold: 0.4, side: -1 },
  { kind: 'in-line', what: 'one after the other', held: [pole(0, 0, quarter), pole(0, 9, -quarter)] },
  { kind: 'on-line', what: 'the pole aims at the marker', held: [pole(5, 0), marker(1, 0, 0.2)] },
  { kind: 'ends-level', what: 'parallel poles', held: [pole(0, 0, 0, 0), pole(0, 2, 0, 0)] },
  { kind: 'ends-level', what: 'poles laid end for end', held: [pole(0, 0, 0, 0), pole(0, 2, Math.PI, 1)] },
  {
    kind: 'ends-level',
    what: 'two poles of a fan',
    held: [pole(4, 0, 0, 0), pole(4 * Math.cos(1), 4 * Math.sin(1), 1, 0)],
  },
  { kind: 'touching', what: 'a corner', held: [pole(0, 2 + T / 2, quarter, 0), pole(0, 0)] },
  { kind: 'apart', what: 'two markers 2 m apart', held: [marker(0, 0), marker(2.3048, 0)], hold: 2 },
  // 12 ft pole, 1 ft base, 2 ft clear: the near end lies 2.5 ft from the marker's middle.
  {
    kind: 'marker-clear',
    what: 'an arm of a spoke, 2 ft clear',
    held: [marker(0, 0), { ...pole(0, 0.762 + 2, quarter, 0), length: 4 }],
    hold: 0.6096,
  },
  { kind: 'marker-clear', what: 'the other end near', held: [marker(0, 0), pole(-3, 0, 0, 1)], hold: 1 - 0.1524 },
  { kind: 'angle-to-wall', what: 'the west wall', held: [pole(9, 9, 0), grippedWall(ARENA, 'west')], hold: quarter },
  { kind: 'off-wall', what: 'along the south wall', held: [pole(9, 2), grippedWall(ARENA, 'south')], hold: 1.95 },
  { kind: 'off-wall', what: 'along the north wall', held: [pole(9, 27), grippedWall(ARENA, 'north')], hold: 2.95 },
  { kind: 'off-wall', what: 'end to the east wall', held: [pole(55, 9, 0, 1), grippedWall(ARENA, 'east')], hold: 3 },
  { kind: 'gap-ends', what: 'two parallel poles', held: [pole(0, 0), pole(0, 2)], hold: 1.9 },
  { kind: 'gap-ends', what: 'two poles laid end for end', held: [pole(0, 0), pole(0, 2, Math.PI)], hold: 1.9 },
  { kind: 'equal-gaps', what: 'three poles in a row', held: [pole(0, 0), pole(0, 2), pole(0, 4)] },
  { kind: 'equal-gaps', what: 'on the −y side', held: [pole(0, 4), pole(0, 2.5), pole(0, 1)], side: -1 },
  { kind: 'centres-level', what: 'a long and a short pole', held: [pole(0, 0), { ...pole(0, 2), length: 3, at: 0.1 }] },
  // 12 ft and 8 ft pole striped every 2 ft: the third stripe of the one is centred 1 ft before its middle, the first of the
  // other 3 ft before its middle.
  {
    kind: 'stripe-to-stripe',
    what: 'the third stripe of one to the first of the other',
    held: [
      { ...pole(0, 0, 0, 0.4), length: 12 * FOOT },
      { ...pole(2 * FOOT, 2, 0, 0.1), length: 8 * FOOT },
    ],
  },
  { kind: 'ends-touching', what: 'the corner of a V', held: [pole(2, 0, 0, 0), pole(0, 2, quarter, 0)] },
  { kind: 'beside', what: 'a marker beside a pole', held: [marker(1, 1 + T / 2 + 0.1524), pole(0, 0)], hold: 1 },
  { kind: 'beside', what: 'on the −y side', held: [marker(1, -1 - T / 2 - 0.1524), pole(0, 0)], hold: 1, side: -1 },
  { kind: 'on-arc', what: 'a pole gripped at its near end', held: [marker(0, 0), pole(5, 4, 0, 0)], hold: 5 },
  {
    kind: 'mirrored',
    what: 'a V about a pole between',
    held: [pole(1, 3, 1), pole(-1, 3, -1 + Math.PI), pole(0, -4, quarter)],
  },
  {
    kind: 'mirrored-centre',
    what: 'about the middle of the long side',
    held: [pole(20, 5, 0.3), pole(40, 5, -0.3), grippedWall(ARENA, 'south')],
  },
  {
    kind: 'mirrored-centre',
    what: 'about the middle of the short side',
    held: [pole(20, 5, 0.3), pole(20, 25, -0.3), grippedWall(ARENA, 'east')],
  },
  { kind: 'clear-of-wall', what: 'just so far', held: [pole(9, 2), grippedWall(ARENA, 'south')], hold: 1.95 },
  { kind: 'off-wall', what: 'end to the west wall', held: [pole(5, 9, 0, 0), grippedWall(ARENA, 'west')], hold: 3 },
];

describe('a constraint met by hand', () => {
  test.each(MET)('$kind: $what', ({ kind: id, held, hold = 0, side = 1 }) => {
    const kind = constraintKind(id);
    if (kind === undefined) throw new Error(`no kind ${id}`);
    for (const row of kind.residuals(held, hold, side)) expect(row.value).toBeCloseTo(0, 12);
    if (kind.unit !== 'none') expect(kind.measure(held, side)).toBeCloseTo(hold, 12);
  });

  test('what must be at least so far from a wall may be farther, and pulls only when it is nearer', () => {
    const kind = constraintKind('clear-of-wall');
    const rows = (y: number, angle: number) =>
      (kind?.residuals([pole(9, y, angle), grippedWall(ARENA, 'south')], 2, 1) ?? []).map(({ value }) => value);
    expect(rows(9, 0.7)).toEqual([0, 0]);
    expect(rows(1.05, 0)).toEqual([-1, -1]);
    // Square to the wall: only the near end is too near.
    expect(rows(3, quarter)).toEqual([-1, 0]);
  });

  test.each(['gap', 'gap-ends'])('the tape of a %s goes from face to face', (id) => {
    const [from, to] = constraintKind(id)?.dimension?.([pole(0, 0), pole(0, 2)], 1) ?? [];
    const x = id === 'gap' ? 0 : -2;
    expect([from, to]).toEqual([
      { x, y: T / 2 },
      { x, y: 2 - T / 2 },
    ]);
  });

  test('a pole on the wrong side measures below every gap', () => {
    const gap = constraintKind('gap');
    expect(gap?.measure([pole(0, 0), pole(0, -2)], 1)).toBeLessThan(-2);
    expect(gap?.measure([pole(0, 0), pole(3, 0)], 1)).toBeLessThan(-T);
    expect(gap?.measure([pole(0, 0), pole(0, 0)], 1)).toBeLessThan(-T);
  });

  test('a grip too few is a programmer’s mistake, told with both counts', () => {
    expect(() => constraintKind('gap')?.measure([pole(0, 0)], 1)).toThrow('gap takes 2 grips, got 1');
  });
});
