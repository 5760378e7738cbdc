import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Limit, RuleBook } from '../../../../src/core/checks/check.ts';
import { isInBand } from '../../../../src/core/checks/rulebooks/band.ts';
import { LIMITS } from '../../../../src/core/checks/rulebooks/limits.ts';
import {
  bandOf,
  inPrintedUnit,
  limitsOf,
  PRACTICE,
  RULEBOOKS,
  rulebookById,
  usualOf,
} from '../../../../src/core/checks/rulebooks/rulebooks.ts';
import type { Level, RuleChoice } from '../../../../src/core/course/course.ts';

const FOLDER = 'assets/rulebooks';
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const UNITS: Readonly<Record<string, readonly string[]>> = {
  length: ['in', 'ft', 'cm', 'm'],
  count: ['count'],
  angle: ['degree'],
  time: ['s'],
};
const KEYS = ['least', 'most', 'unit', 'multiples', 'measured', 'weight', 'source', 'url', 'grade', 'note'];

const judgedBy = (rulebook: RuleChoice, level: Level = 'open', horse = 'stock-horse') =>
  limitsOf({ rulebook, horse, class: { show: '', title: '', level, date: '', entries: 0 } });

/** What a book prints for all, for a level and for ponies. */
const printedBy = ({ limits, levels = {}, ponies = {} }: RuleBook): readonly (readonly [string, Limit])[] =>
  [limits, ...Object.values(levels), ponies].flatMap((each) => Object.entries(each));

describe.each(FILES)('the file %s', (name) => {
  const book: RuleBook = JSON.parse(readFileSync(`${FOLDER}/${name}`, 'utf8'));
  const entries = printedBy(book);

  test('is named for its id and says what it is', () => {
    expect(`${book.id}.json`).toBe(name);
    for (const text of [book.title, book.edition, book.about]) expect(text).not.toBe('');
    const more = Object.keys(book).filter((key) => !['about', 'edition', 'id', 'limits', 'title'].includes(key));
    expect(['levels', 'ponies', 'scoring', 'usual']).toEqual(expect.arrayContaining(more));
    const levels = ['open', 'amateur', 'youth', 'novice', 'walk-jog', 'led'];
    expect(levels).toEqual(expect.arrayContaining(Object.keys(book.levels ?? {})));
  });

  test.each(entries)('%s is a band in its own unit, with its source', (limitName, limit) => {
    const known = LIMITS[limitName];
    expect(known, `${limitName} has no title in limits.ts`).toBeDefined();
    expect(UNITS[known?.quantity ?? '']).toContain(limit.unit);
    expect(Object.keys(limit).filter((key) => !KEYS.includes(key))).toEqual([]);
    expect(limit.least ?? limit.most).toBeTypeOf('number');
    if (limit.least !== undefined && limit.most !== undefined) expect(limit.least).toBeLessThanOrEqual(limit.most);
    if (limit.multiples !== undefined) {
      expect(limit.multiples).toBe(true);
      expect(limit.least, 'multiples of a band need both of its ends').toBeGreaterThan(0);
      expect(limit.most).toBeDefined();
      expect(limit.note, 'a rule about multiples says where it comes from').toBeDefined();
    }
    expect(['must', 'should', 'note', undefined]).toContain(limit.weight);
    expect('ABCDE').toContain(limit.grade);
    expect(limit.source.length).toBeGreaterThan(0);
    if (limit.grade === 'E') expect(['estimate', 'common practice, no source']).toContain(limit.source);
    else expect(limit.url).toMatch(/^https?:\/\//);
  });
});

describe('what is usual', () => {
  const rows = [...RULEBOOKS, PRACTICE].flatMap((book) =>
    Object.entries(book.usual ?? {}).map(([limit, usual]) => ({ book: book.id, limit, usual })),
  );

  test.each(rows)('$book: $limit is a value in the unit of its limit, with its source', ({ limit, usual }) => {
    expect(UNITS[LIMITS[limit]?.quantity ?? '']).toContain(usual.unit);
    expect(usual.value).toBeGreaterThan(0);
    expect(usual.source).not.toBe('');
  });

  test.each(rows)('$book: $limit is allowed by the book that says so', ({ book, limit, usual }) => {
    const own = (rulebookById(book) ?? PRACTICE).limits[limit];
    const value = usualOf(limit, { id: book, house: {} });
    if (own !== undefined) expect(isInBand(bandOf(own), value ?? 0), `${usual.value} ${usual.unit}`).toBe(true);
  });

  test('is the book’s word where it has one, and practice’s elsewhere', () => {
    expect(usualOf('back.width', { id: 'trade-press', house: {} })).toBeCloseTo(33 * 0.0254, 12);
    expect(usualOf('back.width', { id: 'mule-association', house: {} })).toBeCloseTo(3 * 0.3048, 12);
    expect(usualOf('gap.lope', { id: 'mule-association', house: {} })).toBeUndefined();
  });
});

describe('the rule books', () => {
  test('are all read, each under its id, the mule association first', () => {
    expect([...RULEBOOKS.map((book) => book.id), PRACTICE.id].sort()).toEqual(
      FILES.map((name) => name.replace('.json', '')).sort(),
    );
    expect(RULEBOOKS[0]?.id).toBe('mule-association');
    expect(rulebookById('trade-press')?.title).toBe('Trade press, general');
    expect(rulebookById('no-such-book')).toBeUndefined();
  });

  test('every limit that has a title is printed by some book', () => {
    const printed = new Set([...RULEBOOKS, PRACTICE].flatMap((book) => printedBy(book).map(([limit]) => limit)));
    expect(Object.keys(LIMITS).filter((name) => !printed.has(name))).toEqual([]);
  });
});

describe('the limits in force', () => {
  test('are the book over designers’ practice', () => {
    const mule = judgedBy({ id: 'mule-association', house: {} });
    const press = judgedBy({ id: 'trade-press', house: {} });
    expect(mule['obstacle.room']?.source).toBe('estimate');
    expect(press['obstacle.room']).toMatchObject({ least: 24, unit: 'ft' });
    expect(press['wall.clear']).toBe(PRACTICE.limits['wall.clear']);
    expect(mule['back.width']).toMatchObject({ least: 30, unit: 'in' });
  });

  test('leave a book silent where it prints nothing', () => {
    expect(judgedBy({ id: 'mule-association', house: {} })['water-box.length']).toBeUndefined();
    expect(judgedBy({ id: 'no-such-book', house: {} })['gap.lope']).toBeUndefined();
  });

  test('are overridden by a house rule, both ends at once, in the book’s unit', () => {
    const house = { 'gap.lope': { least: 1.8, reason: 'ponies' } };
    const limit = judgedBy({ id: 'mule-association', house })['gap.lope'];
    expect(limit).toMatchObject({ unit: 'ft', multiples: true, house: 'ponies', source: 'house rule: ponies' });
    expect(limit?.least).toBeCloseTo(1.8 / 0.3048, 12);
    expect(limit?.most).toBeUndefined();
  });

  test('a house rule also sets what no book prints, and silences the recommendation beside it', () => {
    const house = {
      'water-box.length': { least: 2, most: 2.5, reason: 'big horses' },
      'gap.walk': { least: 0.4, reason: 'ponies' },
    };
    const limits = judgedBy({ id: 'mule-association', house });
    expect(limits['water-box.length']).toMatchObject({ least: 2, most: 2.5, unit: 'm' });
    expect(limits['gap.walk.recommended']).toBeUndefined();
  });

  test('change with the level where a book or practice says so, and only there', () => {
    const ewu: RuleChoice = { id: 'ewu', house: {} };
    expect(judgedBy(ewu)['level.lope']).toBeUndefined();
    expect(judgedBy(ewu, 'walk-jog')['level.lope']).toMatchObject({ most: 0, grade: 'A' });
    const mule: RuleChoice = { id: 'mule-association', house: {} };
    expect(judgedBy(mule, 'walk-jog')['level.lope']).toMatchObject({ most: 0, grade: 'E' });
    expect(judgedBy(mule, 'walk-jog')['back.width']).toBe(judgedBy(mule, 'open')['back.width']);
  });

  test('are those for ponies where the horse is one and the book has a table for them', () => {
    const poles: RuleChoice = { id: 'ground-poles', house: {} };
    expect(judgedBy(poles)['gap.lope']).toMatchObject({ least: 270, most: 366, unit: 'cm' });
    expect(judgedBy(poles, 'open', 'pony')['gap.lope']).toMatchObject({ least: 240, most: 280, unit: 'cm' });
    const mule: RuleChoice = { id: 'mule-association', house: {} };
    expect(judgedBy(mule, 'open', 'pony')['gap.lope']).toEqual(judgedBy(mule)['gap.lope']);
  });

  test('are the same object while the choice is', () => {
    const rulebook: RuleChoice = { id: 'trade-press', house: {} };
    expect(judgedBy(rulebook)).toBe(judgedBy(rulebook));
  });
});

describe('a printed value', () => {
  test('turns into SI units and back', () => {
    const inches: Limit = { least: 28, most: 36, unit: 'in', source: 'test', grade: 'E' };
    expect(bandOf(inches)).toEqual({ least: 28 * 0.0254, most: 36 * 0.0254 });
    expect(bandOf({ most: 10, unit: 'degree', source: 'test', grade: 'E' })).toEqual({ most: Math.PI / 18 });
    const metric = bandOf({ least: 70, most: 75, unit: 'cm', multiples: true, source: 'test', grade: 'E' });
    expect(metric.least).toBeCloseTo(0.7, 12);
    expect(metric.multiples).toBe(true);
    expect(inPrintedUnit(inches, 0.762)).toBeCloseTo(30, 12);
  });
});
