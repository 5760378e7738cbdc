import { describe, expect, test } from 'vitest';
import { PRACTICE, RULEBOOKS } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import { cardScoring } from '../../../src/core/score/card-scoring.ts';

const by = (id: string) => cardScoring({ id, house: {} });

describe.each([...RULEBOOKS, PRACTICE].map((book) => [book.id, book.scoring] as const))('the book %s', (_, scoring) => {
  test('says what of its scoring was seen, and gives a source for every number', () => {
    expect(scoring?.about).not.toBe('');
    const { base, scale, penalties = [], rulings = [], unscored, struck, zero, tie } = scoring ?? {};
    const cited = [base, scale, unscored, struck, zero, tie].flatMap((each) => each ?? []);
    for (const { source, url, grade } of [...cited, ...penalties, ...rulings]) {
      expect(source).not.toBe('');
      if (grade === 'E') expect(source).toBe('common practice, no source');
      else expect(url).toMatch(/^https?:\/\//);
    }
  });

  test('counts in halves, and says what a fault is', () => {
    for (const { points, fault } of scoring?.penalties ?? []) {
      expect(Number.isInteger(points * 2) && points > 0, fault).toBe(true);
      expect(fault).not.toBe('');
    }
  });
});

describe.each([...RULEBOOKS.map(({ id }) => id), 'undecided', 'a-book-that-is-not-there'])('a card by %s', (id) => {
  test('goes from 70 in halves from −1½ to 1½, every step with its word', () => {
    const { base, scale } = by(id);
    expect([base, scale.least, scale.most]).toEqual([70, -1.5, 1.5]);
    expect(
      Object.keys(scale.words)
        .map(Number)
        .sort((a, b) => a - b),
    ).toEqual([-1.5, -1, -0.5, 0, 0.5, 1, 1.5]);
  });

  test('has penalties of ½, 1, 3 and 5, each id once, with sources', () => {
    const { penalties } = by(id);
    expect([...new Set(penalties.map(({ points }) => points))]).toEqual([0.5, 1, 3, 5]);
    expect(new Set(penalties.map((each) => each.id)).size).toBe(penalties.length);
    for (const { source } of penalties) expect(source).not.toBe('');
  });

  test('says when its list is another book’s', () => {
    expect(by(id).about.some((text) => text.includes('the list is that of'))).toBe(id !== 'ewu');
  });
});

describe('an obstacle out of order', () => {
  test('is a zero score by the EWU, and elimination by the mule association, which the borrowed list does not soften', () => {
    const rule = (id: string) => by(id).rulings.find((each) => each.id === 'wrong-order');
    expect(rule('ewu')?.effect).toBe('zero-score');
    expect(rule('mule-association')).toMatchObject({
      effect: 'disqualified',
      source: expect.stringContaining('rule 215'),
    });
  });

  test('costs 5 and the place above correct goes, where a book without a list is in force', () => {
    expect(by('trade-press').penalties.find(({ id }) => id === 'left-out')).toMatchObject({ points: 5, below: true });
    expect(by('ewu').penalties.some(({ id }) => id === 'left-out')).toBe(false);
  });
});

test('only the mule association has a rule for ties, and only with unnumbered obstacles', () => {
  const ruled = RULEBOOKS.filter(({ id }) => by(id).tie !== undefined).map(({ id }) => id);
  expect(ruled).toEqual(['mule-association']);
  expect(by('mule-association').tie?.only).toBe('unnumbered obstacles');
});
