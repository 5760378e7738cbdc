import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ScoreCard } from '../../../src/core/score/score-card.ts';
import { type CardRow, placings, tally } from '../../../src/core/score/tally.ts';
import { tapped } from '../../../src/core/score/taps.ts';
import { cardBy, given, tappedAll, wholeCards } from './cards.ts';

const NUMBERS = ['11', '12', '13', '14'];

function rowOf(card: ScoreCard, number: string): CardRow {
  const row = tally(card).find(({ entry }) => entry.number === number);
  if (row === undefined) throw new Error(`there is no ${number}`);
  return row;
}

const places = (card: ScoreCard) => Object.fromEntries(tally(card).map(({ entry, place }) => [entry.number, place]));

describe('by hand', () => {
  test('70 + ½ + 1 − 1½, less a light touch and a hit, are 68½', () => {
    const card = tappedAll(cardBy('ewu', ['11']), given('11', [0.5, 1, -1.5], { 2: ['light-touch', 'hit'] }));
    expect(rowOf(card, '11')).toMatchObject({ status: 'whole', scores: 0, penalties: 1.5, total: 68.5, place: 1 });
  });

  test('nothing given: no total and no place', () => {
    expect(rowOf(cardBy('ewu', ['11']), '11')).toMatchObject({ status: 'open', missing: [1, 2, 3], isTied: false });
    expect(rowOf(cardBy('ewu', ['11']), '11').total).toBeUndefined();
  });

  test('a go that is not finished says what is missing, has a total so far and no place', () => {
    const card = tappedAll(cardBy('ewu', ['11', '12']), [...given('11', [1, null, 1]), ...given('12', [0, 0, 0])]);
    expect(rowOf(card, '11')).toMatchObject({ status: 'begun', missing: [2], total: 72 });
    expect(places(card)).toEqual({ 11: undefined, 12: 1 });
  });

  test('a penalty alone leaves the go unfinished', () => {
    const card = tapped(cardBy('ewu', ['11']), {
      kind: 'penalty',
      entry: 'entry-11',
      leg: 'leg-1',
      penalty: 'dropped',
      by: 1,
    });
    expect(rowOf(card, '11')).toMatchObject({ status: 'begun', total: 65, missing: [1, 2, 3] });
  });

  test('a zero score is last with 0, a disqualified one has neither total nor place', () => {
    const card = tappedAll(cardBy('ewu', NUMBERS), [
      ...given('11', [1.5, 1.5, 1.5]),
      ...given('12', [-1.5, -1.5, -1.5]),
      { kind: 'rule', entry: 'entry-13', ruling: 'wrong-order' },
      ...given('14', [1, 1, 1]),
      { kind: 'rule', entry: 'entry-14', ruling: 'other' },
    ]);
    expect(places(card)).toEqual({ 11: 1, 12: 2, 13: 3, 14: undefined });
    expect(rowOf(card, '13')).toMatchObject({ status: 'zero-score', total: 0 });
    expect(rowOf(card, '14').status).toBe('disqualified');
    expect(rowOf(card, '14').total).toBeUndefined();
  });

  test('two level share a place, and the next place is left out', () => {
    const card = tappedAll(cardBy('ewu', NUMBERS), [
      ...given('11', [1, 0, 0]),
      ...given('12', [0, 1, 0]),
      ...given('13', [0, 0, 0]),
      ...given('14', [1, 1, 0]),
    ]);
    expect(places(card)).toEqual({ 11: 2, 12: 2, 13: 4, 14: 1 });
    expect(rowOf(card, '11').isTied).toBe(true);
    expect(rowOf(card, '13').isTied).toBe(false);
  });

  test('the order that the judge types breaks a tie; who is not named comes after', () => {
    const level = tappedAll(
      cardBy('ewu', ['11', '12', '13']),
      ['11', '12', '13'].flatMap((each) => given(each, [0, 0, 0])),
    );
    const card = tapped(level, { kind: 'order', entry: 'entry-12', order: 1 });
    expect(places(card)).toEqual({ 11: 2, 12: 1, 13: 2 });
    expect(rowOf(card, '12')).toMatchObject({ isTied: false, brokenBy: 'order' });
    expect(rowOf(card, '13').isTied).toBe(true);
  });

  test('the time breaks a tie only where it decides, and only among entries that all have one', () => {
    const level = tappedAll(cardBy('mule-association', ['11', '12']), [
      ...given('11', [0, 0, 0]),
      ...given('12', [0, 0, 0]),
      { kind: 'time', entry: 'entry-11', time: 100 },
      { kind: 'time', entry: 'entry-12', time: 90 },
    ]);
    expect(places(level)).toEqual({ 11: 1, 12: 1 });
    const timed = tapped(level, { kind: 'ties', ties: 'time' });
    expect(places(timed)).toEqual({ 11: 2, 12: 1 });
    expect(rowOf(timed, '12').brokenBy).toBe('time');
    expect(places(tapped(timed, { kind: 'time', entry: 'entry-12', time: null }))).toEqual({ 11: 1, 12: 1 });
  });

  test('where the list says so, a go with an obstacle left out is below every correct one, whatever its total', () => {
    const card = tappedAll(cardBy('trade-press', ['11', '12']), [
      ...given('11', [1.5, 1.5, 1.5], { 2: ['left-out'] }),
      ...given('12', [-1.5, -1.5, -1.5], { 1: ['dropped'] }),
    ]);
    expect(rowOf(card, '11').total).toBe(69.5);
    expect(rowOf(card, '12').total).toBe(60.5);
    expect(places(card)).toEqual({ 11: 2, 12: 1 });
  });

  test('an obstacle without a score does not hold a led go up', () => {
    const card = tappedAll(cardBy('led', ['11']), given('11', [1, 'none', 0.5]));
    expect(rowOf(card, '11')).toMatchObject({ status: 'whole', total: 71.5 });
  });

  test('a struck obstacle counts for nobody, nor do the penalties there, and it counts again when it is taken back', () => {
    const card = tappedAll(cardBy('ewu', ['11', '12']), [
      ...given('11', [1, -1.5, 0], { 2: ['knock-down'] }),
      ...given('12', [0, null, 0]),
    ]);
    const struck = tapped(card, { kind: 'strike', leg: 'leg-2', why: 'A pole broke.' });
    expect(places(struck)).toEqual({ 11: 1, 12: 2 });
    expect(rowOf(struck, '11').total).toBe(71);
    expect(tapped(struck, { kind: 'strike', leg: 'leg-2', why: '' })).toEqual(card);
  });

  test('no total is below 0 where the book scores from 0', () => {
    const refusals = Array.from({ length: 15 }, () => 'refusal');
    const low = (book: string) => rowOf(tappedAll(cardBy(book, ['11']), given('11', [0, 0, 0], { 1: refusals })), '11');
    expect(low('mule-association').total).toBe(0);
    expect(low('ewu').total).toBe(-5);
  });

  test('who does not ride has no place', () => {
    const card = tappedAll(cardBy('ewu', ['11']), [
      ...given('11', [0, 0, 0]),
      { kind: 'scratch', entry: 'entry-11', scratched: true },
    ]);
    expect(rowOf(card, '11').status).toBe('scratched');
    expect(places(card)).toEqual({ 11: undefined });
  });
});

describe('on any card', () => {
  const cards = wholeCards(NUMBERS);
  const points = (card: ScoreCard) => new Map(card.scoring.penalties.map(({ id, points: each }) => [id, each]));

  test('a whole total is the base and the scores less the penalties', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const cost = points(card);
        for (const { entry, status, total } of tally(card)) {
          if (status !== 'whole') continue;
          const cells = Object.values(entry.cells);
          const sum = cells.reduce((all, { score }) => all + Number(score), 70);
          const less = cells.flatMap(({ penalties }) => penalties).reduce((all, id) => all + (cost.get(id) ?? 0), 0);
          expect(total).toBe(sum - less);
        }
      }),
    );
  });

  test('the order of the entries changes no place and no tie', () => {
    const permuted = cards.chain((card) =>
      fc
        .shuffledSubarray(card.entries, { minLength: card.entries.length })
        .map((entries) => [card, { ...card, entries }] as const),
    );
    const said = (card: ScoreCard) =>
      Object.fromEntries(tally(card).map(({ entry, ...row }) => [entry.id, row] as const));
    fc.assert(
      fc.property(permuted, ([card, other]) => {
        expect(said(other)).toEqual(said(card));
      }),
    );
  });

  test('a tie has at least two, with one place and one total, and the places before it are full', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const rows = tally(card);
        for (const row of rows.filter(({ isTied }) => isTied)) {
          const same = rows.filter(({ place }) => place === row.place);
          expect(same.length).toBeGreaterThan(1);
          for (const other of same) expect(other).toMatchObject({ isTied: true, total: row.total });
        }
        for (const { place } of rows) {
          if (place === undefined) continue;
          expect(rows.filter((other) => other.place !== undefined && other.place < place).length).toBe(place - 1);
        }
      }),
    );
  });

  test('a higher place has no lower total, but for a go that may not be placed above others', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const placed = placings(tally(card)).filter(({ place }) => place !== undefined);
        for (const [i, row] of placed.entries()) {
          const next = placed[i + 1];
          if (next !== undefined && next.status !== 'zero-score')
            expect(row.total).toBeGreaterThanOrEqual(next.total ?? 0);
          if (row.status === 'zero-score') expect(next?.status ?? 'zero-score').toBe('zero-score');
        }
      }),
    );
  });
});
