import { describe, expect, test } from 'vitest';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Param } from '../../../src/core/pieces/params.ts';
import { printValue, readValue } from '../../../src/desk/commands/typed.ts';

const GAP: Param = { kind: 'length', label: 'Gap', usual: 3 * FOOT, least: FOOT, most: 30 * FOOT };
const POLES: Param = { kind: 'count', label: 'Poles', usual: 4, least: 2, most: 12 };
const LINE: Param = { kind: 'fraction', label: 'Line at', usual: 2 / 3, least: 0.2, most: 1 };
const ANGLE: Param = { kind: 'angle', label: 'Angle', usual: 0, least: -1, most: 1 };
const GAIT: Param = {
  kind: 'choice',
  label: 'Gait',
  usual: 'jog',
  options: { walk: 'Walk', 'side-pass': 'Side pass' },
};

describe('a typed value', () => {
  test.each([
    [GAP, `6' 3 1/2"`, 6 * FOOT + 3.5 * INCH],
    [GAP, '75 in', 75 * INCH],
    [GAP, '1.9m', 1.9],
    [GAP, '1 ft', FOOT],
    [POLES, ' 5 ', 5],
    [LINE, '2/3', 2 / 3],
    [LINE, '67 %', 0.67],
    [ANGLE, '-22.5°', -Math.PI / 8],
  ])('is read by the kind of its parameter: %o “%s”', (param, text, value) => {
    expect(readValue(text, param, 'ft')).toMatchObject({ kind: 'read', value: expect.closeTo(value, 12) });
  });

  test.each([
    ['walk', 'walk'],
    ['Side pass', 'side-pass'],
    [' SIDE-PASS ', 'side-pass'],
  ])('of a choice is found by id or title: “%s”', (text, value) => {
    expect(readValue(text, GAIT, 'ft')).toEqual({ kind: 'read', value });
  });

  test('outside its bounds is refused in the unit of the course', () => {
    expect(readValue('8 in', GAP, 'ft')).toEqual({
      kind: 'refused',
      why: `Gap must lie between 1' and 30'; 8" does not.`,
    });
    expect(readValue('20 cm', GAP, 'm')).toEqual({
      kind: 'refused',
      why: 'Gap must lie between 0.30 m and 9.14 m; 0.20 m does not.',
    });
  });
});

describe('a printed value', () => {
  test.each([
    [GAP, 1.905, `6' 3"`],
    [POLES, 4, '4'],
    [LINE, 2 / 3, '2/3'],
    [LINE, 0.5, '1/2'],
    [LINE, 0.61, '0.61'],
    [LINE, 1, '1'],
    [GAIT, 'side-pass', 'Side pass'],
  ])('reads as people say it: %o %s', (param, value, text) => {
    expect(printValue(value, param, 'ft')).toBe(text);
  });
});
