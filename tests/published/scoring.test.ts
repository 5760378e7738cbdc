/** Scoring as rule books and score sheets print it; the source stands beside each. */
import { describe, expect, test } from 'vitest';
import { cardScoring } from '../../src/core/score/card-scoring.ts';
import { tally } from '../../src/core/score/tally.ts';
import { cardBy, given, tappedAll } from '../core/score/cards.ts';

const EWU = cardScoring({ id: 'ewu', house: {} });

/** EWU Regelbuch 2011 Teil 2, § 7410: 70 is average; an obstacle is scored in halves, each with its word. */
test('EWU § 7410: 70, and seven scores with their words', () => {
  expect(EWU.base).toBe(70);
  expect(Object.fromEntries(Object.entries(EWU.scale.words).map(([points, word]) => [Number(points), word]))).toEqual({
    [-1.5]: 'extremely poor',
    [-1]: 'very poor',
    [-0.5]: 'poor',
    0: 'correct',
    0.5: 'good',
    1: 'very good',
    1.5: 'excellent',
  });
});

/** EWU Scoresheet Trail, year not shown. */
describe('EWU score sheet', () => {
  test.each([
    ['light-touch', 0.5],
    ['hit', 1],
    ['gait-short', 1],
    ['two-feet', 1],
    ['skipped-space', 1],
    ['split-pole', 1],
    ['gait-long', 3],
    ['wrong-lead', 3],
    ['knock-down', 3],
    ['dropped', 5],
    ['refusal', 5],
    ['gate-lost', 5],
    ['not-completed', 5],
    ['hand', 5],
    ['disobedience', 5],
  ])('%s costs %d', (id, points) => {
    expect(EWU.penalties.find((each) => each.id === id)?.points).toBe(points);
  });

  test('stepping out of an obstacle costs 3 to 5', () => {
    const costs = EWU.penalties.filter(({ id }) => id.startsWith('step-out')).map(({ points }) => points);
    expect([Math.min(...costs), Math.max(...costs)]).toEqual([3, 5]);
  });

  test.each(['wrong-order', 'not-attempted', 'wrong-line', 'outside', 'rein-hand'])('%s is a zero score', (ruling) => {
    const card = tappedAll(cardBy('ewu', ['11']), [
      ...given('11', [1, 1, 1]),
      { kind: 'rule', entry: 'entry-11', ruling },
    ]);
    expect(tally(card)[0]).toMatchObject({ status: 'zero-score', total: 0 });
  });
});

/** EWU § 7410: penalties are subtracted, independent of the obstacle score. The example is ours, by that rule. */
test('EWU § 7410: a very good obstacle with a hit and a knock-down', () => {
  const card = tappedAll(cardBy('ewu', ['11']), given('11', [1, 0, 0], { 1: ['hit', 'knock-down'] }));
  expect(tally(card)[0]).toMatchObject({ scores: 1, penalties: 4, total: 67 });
});

/** American Mule Association, rule 215 (year not shown): from 0 to infinity, 70 average; wrong order is elimination. */
test('AMA 215: 70, never below 0; an obstacle out of order is elimination', () => {
  const card = tappedAll(cardBy('mule-association', ['11', '12']), [
    ...given('11', [0, 0, 0]),
    ...given('12', [1.5, 1.5, 1.5]),
    { kind: 'rule', entry: 'entry-12', ruling: 'wrong-order' },
  ]);
  expect(card.scoring).toMatchObject({ base: 70, least: 0 });
  expect(tally(card).map(({ place, total }) => [place, total])).toEqual([
    [1, 70],
    [undefined, undefined],
  ]);
});

/** Missouri Fox Trotting Horse Breed Association 2025, p. 103: 5, and not above a correct ride. */
test('MFTHBA 2025: an obstacle not attempted costs 5 and the place above correct rides', () => {
  const card = tappedAll(cardBy('stock-horse', ['11', '12']), [
    ...given('11', [1.5, 1.5, 1.5], { 1: ['left-out'] }),
    ...given('12', [-0.5, -1.5, -1.5]),
  ]);
  expect(tally(card).map(({ place, total }) => [place, total])).toEqual([
    [2, 69.5],
    [1, 66.5],
  ]);
});

/** Pony of the Americas Club, in-hand trail (year not shown): no score on that obstacle, not disqualified. */
test('POAC in-hand: a missed obstacle has no score, and the go is placed', () => {
  const card = tappedAll(cardBy('led', ['11']), given('11', [0.5, 'none', 0]));
  expect(tally(card)[0]).toMatchObject({ status: 'whole', total: 70.5, place: 1 });
});

/** EWU § 7409: a damaged obstacle's score is struck for everyone. */
test('EWU § 7409: a struck obstacle counts for nobody', () => {
  const card = tappedAll(cardBy('ewu', ['11', '12']), [
    ...given('11', [0, 1.5, 0]),
    ...given('12', [0.5, null, 0]),
    { kind: 'strike', leg: 'leg-2', why: 'a broken pole' },
  ]);
  expect(tally(card).map(({ place, total }) => [place, total])).toEqual([
    [2, 70],
    [1, 70.5],
  ]);
});
