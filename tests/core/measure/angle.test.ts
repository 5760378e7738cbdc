import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printAngle, readAngle } from '../../../src/core/measure/angle.ts';

describe('an angle is read', () => {
  test.each<[string, number]>([
    ['45°', Math.PI / 4],
    ['45 deg', Math.PI / 4],
    ['-90 degrees', -Math.PI / 2],
    ['22½°', Math.PI / 8],
    ['22,5º', Math.PI / 8],
    ['1.5 rad', 1.5],
    ['1/4 turn', Math.PI / 2],
    ['0°', 0],
  ])('%s', (text, radians) => {
    const reading = readAngle(text);
    expect(reading).toEqual({ kind: 'read', value: expect.closeTo(radians, 12) });
  });

  test('in degrees when it has no unit, and says so', () => {
    expect(readAngle('-45')).toEqual({ kind: 'read', value: -Math.PI / 4, note: '45 was read as degrees.' });
  });

  test.each<[string, string]>([
    ['', 'Nothing is written. Write an angle such as 45° or -22.5 deg.'],
    ['north', '"north" is not an angle. Write an angle such as 45° or -22.5 deg.'],
    ['45 ft', '"ft" after 45 is not a unit of angle. Write °, deg, rad or turn.'],
    ["45° 30'", '"° 30\'" after 45 is not a unit of angle. Write °, deg, rad or turn.'],
    ['4000°', '4000° is more than ten turns. Write less than 3600°.'],
    ['1e3', '1e3 is written with a power of ten. Write the number in full.'],
    ['1,500', 'The comma in 1,500 may stand for decimals or for thousands. Write 1.500 or 1500.'],
  ])('not from %j', (text, why) => {
    expect(readAngle(text)).toEqual({ kind: 'refused', why });
  });
});

describe('an angle is printed', () => {
  test.each<[number, string]>([
    [Math.PI / 4, '45°'],
    [Math.PI / 8, '22.5°'],
    [-Math.PI / 2, '−90°'],
    [-1e-6, '0°'],
    [Number.NaN, '–'],
  ])('%d as %s', (radians, text) => {
    expect(printAngle(radians)).toBe(text);
  });

  test('and read again is the same to a tenth of a degree', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (radians) => {
        const reading = readAngle(printAngle(radians));
        expect(reading.kind === 'read' && Math.abs(reading.value - radians)).toBeLessThanOrEqual(
          0.0501 * (Math.PI / 180),
        );
      }),
    );
  });
});
