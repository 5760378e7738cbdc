/** What people are told when something cannot be laid, and that the values offered are the nearest. */
import { describe, expect, test } from 'vitest';
import { buildKind } from '../../../src/core/obstacles/build.ts';
import type { Infeasible } from '../../../src/core/obstacles/obstacle.ts';
import { obstacleKind } from '../../../src/core/obstacles/obstacles.ts';
import type { Values } from '../../../src/core/pieces/params.ts';

const FT = 0.3048;
const IN = 0.0254;

function refusal(id: string, values: Values): Infeasible {
  const kind = obstacleKind(id);
  if (kind === undefined) throw new Error(id);
  const result = buildKind(kind, values);
  if (result.kind !== 'infeasible') throw new Error(`${id} was built`);
  return result;
}

describe('a fan of 8 ft poles, 1 ft at the inner ends and 6 ft at two-thirds', () => {
  const short = { length: 8 * FT, innerGap: 1 * FT, gap: 6 * FT, line: 2 / 3 };

  test('is too tight to lope, and an inner gap of 2 ft 8 in makes it right', () => {
    const { why, nearest, facts } = refusal('fan', { ...short, gait: 'lope' });
    expect(why).toBe(
      'The line turns on a radius of 6.8 ft (2.07 m): too tight to lope (10 ft, 3.05 m). An inner gap of 2 ft 8 in (0.81 m) makes it right. Or ride it at a jog as it lies.',
    );
    expect(nearest?.innerGap).toBeCloseTo(32 * IN, 12);
    expect((facts.lineRadius ?? 0) / FT).toBeCloseTo(6.802517, 5);
  });

  test('is still too tight with an inch less', () => {
    expect(refusal('fan', { ...short, innerGap: 31 * IN, gait: 'lope' }).why).toContain('too tight to lope');
  });

  test('is right at a jog, and then lists no lope', () => {
    const fan = obstacleKind('fan');
    const result = fan && buildKind(fan, { ...short, gait: 'jog' });
    expect(result?.kind === 'built' && result.passages[0]?.gaits).toEqual(['jog', 'walk']);
  });
});

test('a fan that does not open is a run', () => {
  const { why, nearest } = refusal('fan', { gap: 2 * FT, innerGap: 2 * FT });
  expect(why).toContain(
    'The gap on the line, 2 ft (0.61 m), is not wider than the inner gap, 2 ft (0.61 m): that is a run',
  );
  expect(nearest?.innerGap).toBeCloseTo(1 * FT, 12);
});

test('poles that are too short cannot open so far', () => {
  const { why, facts } = refusal('fan', { length: 4 * FT, line: 0.5, gap: 6 * FT, gait: 'walk' });
  expect(why).toContain(
    'Poles of 4 ft (1.22 m) cannot open from 1 ft (0.30 m) at their inner ends to 6 ft (1.83 m) at 0.50',
  );
  expect(facts).toEqual({});
});

test('poles that lie almost end to end are no fan', () => {
  const { why, facts } = refusal('fan', { poles: 2, length: 4 * FT, line: 0.5, gap: 5 * FT - 3 * IN, gait: 'walk' });
  expect(why).toContain('Neighbours at 139° to each other are too wide for a fan (80°).');
  expect(facts.angle).toBeCloseTo(2 * Math.asin(45 / 48), 9);
});

test('too many poles would go round the circle', () => {
  const { why } = refusal('fan', { poles: 8, length: 8 * FT, gait: 'walk' });
  expect(why).toContain('8 poles at 56° to each other go more than once round the circle.');
});

test('a spoke of short poles rides too hard at the lope, and stands further off the marker', () => {
  const { why, nearest } = refusal('spoke', { length: 8 * FT, line: 2 / 3, gait: 'lope' });
  expect(why).toContain('radius of 7.8 ft (2.39 m): too tight to lope (10 ft, 3.05 m)');
  // 10 ft less 0.5 ft of base and 5 ft 4 in along the pole.
  expect(nearest?.clear).toBeCloseTo(50 * IN, 12);
});

test('many arms near a small marker lie on one another', () => {
  expect(refusal('spoke', { arms: 8, clear: 6 * IN, markerBase: 6 * IN, thickness: 8 * IN }).why).toContain(
    '8 poles 6 in (0.15 m) clear of the marker lie on one another at their near ends.',
  );
});

test('short poles do not close a wide box', () => {
  const { why, nearest } = refusal('box', { side: 8 * FT, length: 6 * FT });
  expect(why).toContain('Poles of 6 ft (1.83 m) do not close a box of 8 ft (2.44 m) inside.');
  expect(nearest).toEqual({ side: 6 * FT });
});

test('short poles end before an L has turned its corner', () => {
  const { why, nearest } = refusal('back-l', { length: 5 * FT, width: 3 * FT });
  expect(why).toContain('they must be 5 ft 4 in (1.63 m) or longer');
  expect(nearest?.length).toBeCloseTo(64 * IN, 12);
});

test('two poles as far apart as the feet of a horse leave its hooves no room', () => {
  const { why, nearest } = refusal('side-pass-between', { gap: 4 * FT });
  expect(why).toContain('With 4 ft (1.22 m) between the poles a hoof comes down on one');
  expect(nearest?.gap).toBeCloseTo(54 * IN, 12);
});

test('markers too near for the gait bend the line too tight', () => {
  const { why, nearest } = refusal('serpentine', { gap: 6 * FT, gait: 'lope' });
  expect(why).toContain('Markers 6 ft (1.83 m) apart bend the line on a radius of 3.7 ft (1.13 m): too tight to lope');
  expect(nearest?.gap).toBeCloseTo((12 + 2 / 12) * FT, 9);
});

test('a value outside its bounds is named with the bounds in feet and metres, all of them at once', () => {
  const { why, nearest } = refusal('fan', { length: 80 * FT, poles: 2.5, gait: 'gallop', line: 2 });
  expect(why).toBe(
    'Poles: 2.5 is not a whole number. Pole length: 80 ft (24.38 m) is outside 4 ft (1.22 m) to 16 ft (4.88 m). ' +
      'Line at: 2 is outside 0.2 to 1. Gait: "gallop" is none of walk, jog, lope.',
  );
  expect(nearest).toEqual({ poles: 3, length: 16 * FT, line: 1, gait: 'jog' });
});

describe('corners', () => {
  const DEG = Math.PI / 180;

  test.each([
    // The walls are 3 ft 4 in apart on their axes: 40 in / tan 40°, and 24 in beside each other.
    ['back-v', { length: 5 * FT, width: 3 * FT, angle: 80 * DEG }, 'length', 72],
    ['back-zigzag', { length: 4 * FT, width: 3 * FT, angle: 90 * DEG }, 'length', 64],
    // 3 ft and 2 ft of lane.
    ['back-u', { length: 4 * FT }, 'length', 60],
    // Two lanes of 3 ft and three thicknesses.
    ['back-u', { endLength: 6 * FT }, 'endLength', 84],
    // A lane, two thicknesses and an arm of 6 ft.
    ['back-t', { length: 8 * FT, armLength: 6 * FT }, 'length', 116],
  ])('a %s of poles that are too short says how long they must be', (id, values, key, wanted) => {
    const { why, nearest } = refusal(id, values);
    expect(Number(nearest?.[key]) / IN).toBeCloseTo(wanted, 9);
    const feet = Math.floor(wanted / 12);
    expect(why).toContain(`${feet} ft${wanted % 12 === 0 ? '' : ` ${wanted % 12} in`} (`);
  });
});

describe('markers to back round', () => {
  test('in a triangle are three', () => {
    const { why, nearest } = refusal('back-markers', { markers: 5 });
    expect(why).toBe('A triangle has three markers; 5 stand in a row.');
    expect(nearest).toEqual({ shape: 'row' });
  });

  test('stand at least two backing radii apart', () => {
    const { why, nearest } = refusal('back-markers', { gap: 36 * IN, base: 6 * IN });
    expect(why).toContain('too tight to back (2 ft, 0.60 m)');
    // 1.2 m less 6 in, in whole inches.
    expect(nearest?.gap).toBeCloseTo(42 * IN, 9);
  });
});

describe('runs', () => {
  const DEG = Math.PI / 180;

  test('of poles that meet at their ends are turned less', () => {
    const { why, nearest } = refusal('zigzag', { length: 12 * FT, turn: 20 * DEG, gap: 3 * FT });
    expect(why).toContain('Poles of 12 ft (3.66 m) turned by 20° meet at their ends.');
    // 36 + 4/cos θ − 144 sin θ − 4 cos θ is positive at 14° and negative at 15°.
    expect(nearest?.turn).toBeCloseTo(14 * DEG, 12);
  });

  test('that are raised come higher than their poles are thick', () => {
    const { why, nearest } = refusal('raised-run', { height: 3 * IN });
    expect(why).toContain('lies on the ground: raised, it comes to 5 in (0.13 m) or more');
    expect(nearest?.height).toBeCloseTo(5 * IN, 12);
  });

  test('on too small a circle get a larger one', () => {
    const { why, nearest } = refusal('curved-run', {
      radius: 8 * FT,
      gait: 'lope',
      length: 8 * FT,
      gap: 6 * FT,
      poles: 3,
    });
    expect(why).toContain('A radius of 8 ft (2.44 m) is too tight to lope (10 ft, 3.05 m).');
    expect(nearest?.radius).toBeCloseTo(10 * FT, 9);
  });

  test('of chevrons keep their arms behind one another', () => {
    const { nearest } = refusal('chevron', { length: 4 * FT, gap: 8 * FT, sweep: 30 * DEG });
    // tan⁻¹(0.8 · 48 in / 100 in) = 21.0°.
    expect(nearest?.sweep).toBeCloseTo(21 * DEG, 12);
  });
});

test('a part of a wheel that all but closes is made whole', () => {
  const { why, nearest } = refusal('spoke', { arms: 5, spread: (340 * Math.PI) / 180 });
  expect(why).toContain('A wheel of 340° has its last pole nearer to its first');
  expect(nearest).toEqual({ spread: 2 * Math.PI });
});

test('scenery beyond what such a thing can be is named with its bounds', () => {
  const { why, nearest } = refusal('scenery', { piece: 'marker', across: 5 * FT });
  expect(why).toBe('Base of a marker: 5 ft (1.52 m) is outside 6 in (0.15 m) to 2 ft (0.61 m).');
  expect(nearest).toEqual({ across: 2 * FT });
});
