import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { SCORE_CAUTION } from '../../src/core/score/score-card.ts';
import { survey } from '../../src/core/survey.ts';
import { judge } from '../../src/sheets/judge.ts';
import { manoeuvres } from '../../src/sheets/manoeuvres.ts';
import {
  entriesOf,
  expectLegible,
  LETTER,
  PAPERS_HELD,
  pagesOf,
  rowsOf,
  starter,
  textsOf,
  withEntries,
  withLegs,
  wordsOn,
} from './cards.ts';

const OPEN = starter('larkhollow-open');
/** Two lines to write in, of 8 mm each. */
const LEAST_ROW = 16;

function tiersOf(legs: number): number {
  const [first] = rowsOf(pagesOf(judge, withLegs(OPEN, legs)));
  return Math.round((first?.height ?? 0) / LEAST_ROW);
}

describe.each(PAPERS_HELD)('on %s', (_, options) => {
  test.each(['larkhollow-open', 'larkhollow-day', 'larkhollow-walk-jog', 'home-six-poles'])('%s is legible', (name) => {
    const course = starter(name);
    const pages = pagesOf(judge, withEntries(course, entriesOf(9)), options);
    expectLegible(pages);
    for (const { height } of rowsOf(pages)) expect(height).toBeGreaterThanOrEqual(LEAST_ROW);
  });

  test.each([4, 8, 12, 16])('%d obstacles fit, each with its number, in the order of the ride', (count) => {
    const pages = pagesOf(judge, withLegs(OPEN, count), options);
    expectLegible(pages);
    const heads = wordsOn(pages.pages[0]).filter(({ size, align }) => size === 4.6 && align === 'middle');
    expect(heads.map(({ text }) => Number(text))).toEqual(Array.from({ length: count }, (_, i) => i + 1));
  });
});

test('more obstacles than fit stand in a second tier', () => {
  expect([tiersOf(4), tiersOf(10), tiersOf(20)]).toEqual([1, 1, 2]);
});

describe('rows', () => {
  const rows = (course: typeof OPEN, chosen: Readonly<Record<string, string>> = {}): number =>
    rowsOf(pagesOf(judge, course, { ...LETTER, chosen })).reduce((sum, { count }) => sum + count, 0);

  test('are one an entry, blank where only the count is known, and ten where nothing is', () => {
    expect(rows(withEntries(OPEN, entriesOf(23)))).toBe(23);
    expect(rows({ ...OPEN, class: { ...OPEN.class, entries: 17 } })).toBe(17);
    expect(rows({ ...OPEN, class: { ...OPEN.class, entries: 0 } })).toBe(10);
  });

  test('are not made for who does not ride, and more where they are asked for', () => {
    const [first, ...others] = entriesOf(6);
    if (first === undefined) throw new Error('six were asked for');
    const course = withEntries(OPEN, [{ ...first, scratched: true }, ...others]);
    expect(rows(course)).toBe(5);
    expect(rows(course, { blank: '10' })).toBe(15);
    expect(textsOf(pagesOf(judge, course))).not.toContain('401');
  });

  test('stand in the order of go, with their names unless these are left out', () => {
    const course = withEntries(OPEN, entriesOf(8).toReversed());
    const numbers = textsOf(pagesOf(judge, course)).filter((text) => /^4\d\d$/.test(text));
    expect(numbers).toEqual(['408', '407', '406', '405', '404', '403', '402', '401']);
    expect(textsOf(pagesOf(judge, course))).toContain('Juniper Hale');
    expect(textsOf(pagesOf(judge, course, { ...LETTER, chosen: { names: 'number' } }))).not.toContain('Juniper Hale');
  });
});

describe('the card', () => {
  const pages = pagesOf(judge, withEntries(OPEN, entriesOf(20)));
  const said = (page: number) =>
    wordsOn(pages.pages[page] ?? pages.pages[0])
      .map(({ text }) => text)
      .join(' ');

  test('says on every page what it is of, that it is no result, and has a line to sign', () => {
    for (let page = 0; page < pages.pages.length; page += 1) {
      expect(said(page)).toContain('Open Trail');
      expect(said(page)).toContain(SCORE_CAUTION);
      expect(said(page)).toContain('Signature');
      expect(said(page)).toContain(`Page ${page + 1} of ${pages.pages.length}`);
    }
  });

  test('has the list of penalties with its source on the first page, and says that the book in force has none', () => {
    expect(said(0)).toContain('Light touch of a pole');
    expect(said(0)).toContain('EWU Scoresheet Trail');
    expect(said(0).replaceAll('\n', ' ')).toContain('American Mule Association has no list');
    expect(said(1)).not.toContain('Light touch of a pole');
  });

  test('can have the list on every page', () => {
    const every = pagesOf(judge, withEntries(OPEN, entriesOf(20)), { ...LETTER, chosen: { list: 'every' } });
    for (const page of every.pages)
      expect(
        wordsOn(page)
          .map(({ text }) => text)
          .join(' '),
      ).toContain('Light touch');
  });

  test('is heard: how many rows and obstacles a page has', () => {
    expect(pages.pages[0].about).toMatch(/^Judge’s card: .* page 1 of \d+: \d+ rows and 10 obstacles\.$/);
  });
});

test('a long name of an obstacle is cut in its head and stands whole below', () => {
  const name =
    'The very long and winding obstacle that the committee could not agree on and so gave every name at once';
  const [layout, ...others] = OPEN.layouts;
  const obstacles = layout.obstacles.map((each, i) => (i === 0 ? { ...each, name } : each));
  const course = withLegs({ ...OPEN, layouts: [{ ...layout, obstacles }, ...others] }, 10);
  const pages = pagesOf(judge, course);
  expectLegible(pages);
  expect(textsOf(pages).join(' ')).toContain(name);
});

test('a layout without a ride has a card without columns', () => {
  const pages = pagesOf(judge, blankCourse());
  expectLegible(pages);
  expect(rowsOf(pages).reduce((sum, { count }) => sum + count, 0)).toBe(10);
});

test('manoeuvres are a few words: what it is, the hand, the gait, the lead', () => {
  expect(manoeuvres(survey(OPEN)).map(({ number, name }) => `${number} ${name}`)).toEqual([
    '1 Gate, left-hand push',
    '2 Jog-overs',
    '3 Bridge, walk',
    '4 Lope-overs, left lead',
    '5 Fan, left lead',
    '6 Spoke, right lead',
    '7 Back-through L, turn 180° left',
    '8 Marker serpentine, jog',
    '9 Box, turn 360° left',
    '10 Side pass, left',
  ]);
});
