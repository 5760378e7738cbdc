import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printLength, readLength } from '../../../src/core/measure/length.ts';
import { FOOT, INCH, type LengthUnit } from '../../../src/core/measure/quantity.ts';

describe('a length is read as people write it', () => {
  test.each<[string, number]>([
    ["6'", 1.8288],
    ['6\' 3 1/2"', 1.9177],
    ['6ft 3in', 1.905],
    ['6FT 3IN', 1.905],
    ['6 feet 3 inches', 1.905],
    ['6 feet and 3 inches', 1.905],
    ['6ft. 3in.', 1.905],
    ['1 foot', 0.3048],
    ['75 1/2 in', 1.9177],
    ['75½ in', 1.9177],
    ['75-1/2"', 1.9177],
    ['1.9m', 1.9],
    ['1,9 m', 1.9],
    [',5 m', 0.5],
    ['190 cm', 1.9],
    ['1905 mm', 1.905],
    ['1 m 90 cm', 1.9],
    ['1 m 90 cm 5 mm', 1.905],
    ['2 metres', 2],
    ['6′ 3½″', 1.9177],
    ['6’ 3½”', 1.9177],
    ["6' 3''", 1.905],
    ['6\'-3"', 1.905],
    ['6\', 3"', 1.905],
    ['½"', 0.0127],
    ['3/4 in', 0.01905],
    ['1⁄2 in', 0.0127],
    ['.5 ft', 0.1524],
    ['-6"', -0.1524],
    ['−1.5 m', -1.5],
    ['+2 m', 2],
    ['0 m', 0],
    ['-0"', 0],
    ['  6  \'  3  "  ', 1.905],
    ['12\u00a0ft', 3.6576],
    ['100000 mm', 100],
  ])('%s', (text, metres) => {
    expect(readLength(text, 'ft')).toEqual({ kind: 'read', value: metres });
    expect(readLength(text, 'm')).toEqual({ kind: 'read', value: metres });
  });

  test.each<[string, LengthUnit, number, string]>([
    ['6', 'ft', 1.8288, '6 was read as 6 feet.'],
    ['6', 'm', 6, '6 was read as 6 metres.'],
    ['6 1/2', 'ft', 1.9812, '6 1/2 was read as 6 1/2 feet.'],
    ['-2,5', 'm', -2.5, '2,5 was read as 2,5 metres.'],
    ["6' 3", 'm', 1.905, '3 was read as inches.'],
    ["6'3½", 'ft', 1.9177, '3 1/2 was read as inches.'],
  ])('%s without its unit, in a course in %s, says what was assumed', (text, unit, value, note) => {
    expect(readLength(text, unit)).toEqual({ kind: 'read', value, note });
  });
});

const EXAMPLE = 'Write a length such as 6\' 3 1/2", 75 in or 1.9 m.';

describe('a length that could mean two things, or none, is refused with what would be right', () => {
  test.each<[string, string]>([
    ['', `Nothing is written. ${EXAMPLE}`],
    ['   ', `Nothing is written. ${EXAMPLE}`],
    ['abc', `"abc" is not part of a length. ${EXAMPLE}`],
    ['NaN', `"nan" is not part of a length. ${EXAMPLE}`],
    ['Infinity', `"infinity" is not part of a length. ${EXAMPLE}`],
    ['"', `""" is not part of a length. ${EXAMPLE}`],
    ['--6', `"-6" is not part of a length. ${EXAMPLE}`],
    ['6\' 3" wide', `"wide" is not part of a length. ${EXAMPLE}`],
    ['1e99', '1e99 is written with a power of ten. Write the number in full.'],
    ['6\' 14"', '14 inches make a foot or more. Write 7\' 2" if that is meant.'],
    ['6\' 12"', "12 inches make a foot or more. Write 7' if that is meant."],
    ['1 m 190 cm', '190 centimetres make a metre or more. Write 2.90 m if that is meant.'],
    ['6 7', '6 and 7 stand side by side without a unit. Write 6\' 7".'],
    ['1 905 mm', '1 and 905 stand side by side without a unit. Write 1905 with its unit.'],
    ['6 - 3', '"- 3" after 6 is not a unit. Write ft, in, m, cm or mm.'],
    ['1,234', 'The comma in 1,234 may stand for decimals or for thousands. Write 1.234 or 1234.'],
    ['1,234.5 m', '1,234.5 has two decimal signs. Write it with one, as in 1234.5.'],
    ['1.2.3', '1.2.3 has two decimal signs. Write it with one, as in 1234.5.'],
    ['6 ft 3 m', 'Feet and metres are mixed. Write the whole length in one of the two.'],
    ['3" 6\'', 'Feet cannot follow inches. Write the larger unit first, each once.'],
    ["6' 6'", 'Feet cannot follow feet. Write the larger unit first, each once.'],
    ['6.5\' 3"', '6.5 feet has a fraction and inches follow. Write the fraction in the last unit only.'],
    ['6 yd', '"yd" is not a unit that is read here. Write ft, in, m, cm or mm.'],
    ['45°', '"°" after 45 is not a unit. Write ft, in, m, cm or mm.'],
    ['1m90', '90 at the end has no unit. Write ft, in, m, cm or mm after it.'],
    ['31/2"', '31/2 is one or more, which a fraction here may not be. Write it as in 3 1/2 or 3.5.'],
    ['3 7/2 in', '7/2 is one or more, which a fraction here may not be. Write it as in 3 1/2 or 3.5.'],
    ['3.5 1/2 in', '3.5 1/2 has decimals and a fraction. Write one of the two, as in 3.5 or 3 1/2.'],
    ['1/0 in', '1/0 divides by nothing. Write a fraction such as 1/2.'],
    ['10001 m', '10001 m is more than 10 km. Nothing in an arena is so long.'],
    ['9'.repeat(61), `This is 61 signs long; 60 is the most. ${EXAMPLE}`],
  ])('%s', (text, why) => {
    expect(readLength(text, 'ft')).toEqual({ kind: 'refused', why });
  });

  test('whatever is typed gets an answer, and a value that is read is finite', () => {
    const typed = fc.stringMatching(/^[0-9 '"/.,½¼a-z-]{0,30}$/);
    fc.assert(
      fc.property(fc.oneof(typed, fc.string()), (text) => {
        const reading = readLength(text, 'ft');
        if (reading.kind === 'read') expect(Number.isFinite(reading.value)).toBe(true);
        else expect(reading.why).toMatch(/^[^a-z].*\.$/s);
      }),
    );
  });
});

describe('a length is printed', () => {
  test.each<[number, string]>([
    [0, '0"'],
    [6 * FOOT, "6'"],
    [6 * FOOT + 3.5 * INCH, '6\' 3½"'],
    [6 * FOOT + 0.25 * INCH, '6\' 0¼"'],
    [4 * INCH, '4"'],
    [0.75 * INCH, '¾"'],
    [11.88 * INCH, "1'"],
    [11.87 * INCH, '11¾"'],
    [5 * FOOT + 11.9 * INCH, "6'"],
    [-(6 * FOOT + 3 * INCH), '−6\' 3"'],
    [-0.001, '0"'],
    [100 * FOOT, "100'"],
    [Number.NaN, '–'],
    [Number.POSITIVE_INFINITY, '–'],
  ])('%d m in feet is %s', (metres, text) => {
    expect(printLength(metres, 'ft')).toBe(text);
  });

  test.each<[number, string]>([
    [0, '0.00 m'],
    [1.9, '1.90 m'],
    [1.905, '1.91 m'],
    [-0.004, '0.00 m'],
    [-2.5, '−2.50 m'],
    [60, '60.00 m'],
    [Number.NaN, '–'],
  ])('%d m in metres is %s', (metres, text) => {
    expect(printLength(metres, 'm')).toBe(text);
  });

  test.each<[LengthUnit, number]>([
    ['ft', INCH / 4],
    ['m', 0.01],
  ])('in %s and read again is the same length to the printed grain', (unit, grain) => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (metres) => {
        const reading = readLength(printLength(metres, unit), unit);
        expect(reading.kind).toBe('read');
        if (reading.kind !== 'read') return;
        expect(reading.note).toBeUndefined();
        expect(Math.abs(reading.value - metres)).toBeLessThanOrEqual(grain / 2 + 1e-9);
        expect(printLength(reading.value, unit)).toBe(printLength(metres, unit));
      }),
    );
  });
});
