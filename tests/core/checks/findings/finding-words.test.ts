import { describe, expect, test } from 'vitest';
import type { Limit } from '../../../../src/core/checks/check.ts';
import { askerWords, bandWords, measuredWords } from '../../../../src/core/checks/findings/finding-words.ts';
import { obstacleWords, pieceWords } from '../../../../src/core/checks/findings/thing-words.ts';
import { replaceLayout } from '../../../../src/core/course/layouts.ts';
import { FOOT } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { scene } from '../scene.ts';

const limit = (band: Partial<Limit>): Limit => ({ unit: 'ft', source: 'test', grade: 'A', ...band });

describe('a band in words', () => {
  test.each([
    [limit({ least: 3, most: 3.5, multiples: true }), 'ft', "3' to 3' 6\" or a whole multiple"],
    [limit({ least: 3, most: 3.5 }), 'm', '0.91 m to 1.07 m (3 to 3.5 ft in the book)'],
    [limit({ least: 30, unit: 'in' }), 'ft', 'at least 2\' 6"'],
    [limit({ most: 30, unit: 'cm' }), 'ft', 'at most 11¾" (30 cm in the book)'],
    [limit({ most: 30, unit: 'cm' }), 'm', 'at most 0.30 m'],
    [limit({ least: 2, unit: 'm', house: 'ponies' }), 'ft', 'at least 6\' 6¾"'],
    [limit({ least: 6, most: 6 }), 'ft', "6'"],
    [limit({ least: 4, most: 8, unit: 'count' }), 'm', '4 to 8'],
    [limit({ most: 10, unit: 'degree' }), 'ft', 'at most 10°'],
  ] as const)('%j in %s', (band, unit, words) => {
    expect(bandWords(band, unit)).toBe(words);
  });

  test('names who asks', () => {
    expect(askerWords(limit({}))).toBe('the book asks for');
    expect(askerWords(limit({ grade: 'E' }))).toBe('good practice asks for');
    expect(askerWords(limit({ grade: 'E', house: 'mud' }))).toBe('the house rule asks for');
  });
});

describe('a measured value in words', () => {
  test.each([
    [6 * FOOT, "6'"],
    // A quarter inch is 6.35 mm: these print like the limit and are not.
    [6 * FOOT - 0.002, "just under 6'"],
    [7 * FOOT + 0.002, "just over 7'"],
    [6.5 * FOOT, '6\' 6"'],
  ])('%d m', (value, words) => {
    expect(measuredWords(limit({ least: 6, most: 7 }), value, 'ft')).toBe(words);
  });
});

describe('names', () => {
  const course = scene([
    { kind: 'fan', at: [60, 50] },
    { kind: 'scenery', at: [20, 20] },
    { kind: 'gate', at: [120, 50] },
    { kind: 'spoke', at: [150, 60] },
  ]);
  const read = survey(course);

  test.each([
    ['fan-1', 'the fan (obstacle 1)'],
    ['scenery-1', 'the scenery'],
    ['gone-1', 'gone-1'],
  ])('the obstacle %s is %s', (id, words) => {
    expect(obstacleWords(read, id)).toBe(words);
  });

  test.each([
    ['fan-1/pole-2', 'pole 2 of the fan (obstacle 1)'],
    ['gate-1/gate', 'the gate (obstacle 2)'],
    ['spoke-1/marker', 'the marker of the spoke (obstacle 3)'],
    ['gone-1/pole-1', 'gone-1/pole-1'],
  ])('the piece %s is %s', (key, words) => {
    expect(pieceWords(read, key)).toBe(words);
  });

  test('a designer’s own name is kept as it is written', () => {
    const named = replaceLayout(course, (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => (each.id === 'fan-1' ? { ...each, name: 'Peacock' } : each)),
    }));
    expect(obstacleWords(survey(named), 'fan-1')).toBe('Peacock (obstacle 1)');
  });
});
