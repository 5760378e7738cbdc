import { describe, expect, test } from 'vitest';
import { scribe } from '../../src/sheets/scribe.ts';
import {
  entriesOf,
  expectLegible,
  PAPERS_HELD,
  pagesOf,
  rowsOf,
  starter,
  textsOf,
  withEntries,
  withLegs,
} from './cards.ts';

const OPEN = starter('larkhollow-open');
/** Penalties to tick, the score, the sum so far: 8 mm each. */
const LEAST_ROW = 24;

describe.each(PAPERS_HELD)('on %s', (_, options) => {
  test.each([4, 8, 12, 16])('%d obstacles are legible', (count) => {
    const pages = pagesOf(scribe, withEntries(withLegs(OPEN, count), entriesOf(7)), options);
    expectLegible(pages);
    for (const { height } of rowsOf(pages)) expect(height).toBeGreaterThanOrEqual(LEAST_ROW);
    expect(rowsOf(pages).reduce((sum, row) => sum + row.count, 0)).toBe(7);
  });
});

test('every obstacle of every entry has the points of the list to tick', () => {
  const texts = textsOf(pagesOf(scribe, withEntries(OPEN, entriesOf(3))));
  // The list below the card has each once.
  for (const points of ['½', '3'])
    expect(texts.filter((text) => text === points).length).toBeGreaterThanOrEqual(3 * 10);
  expect(texts.filter((text) => text === '½').length).toBe(3 * 10 + 1);
  expect(texts.filter((text) => text === 'So far').length).toBe(3);
});

test('it is the scribe who signs', () => {
  expect(textsOf(pagesOf(scribe, OPEN))).toContain('Scribe, name');
});
