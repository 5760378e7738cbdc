import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankCard, hasColumns, withColumns, withEntriesOf } from '../../../src/core/score/blank-card.ts';
import type { ScoreCard } from '../../../src/core/score/score-card.ts';
import { type Tap, tapped } from '../../../src/core/score/taps.ts';
import { additions, COLUMNS, cardBy, courseBy, given, tappedAll } from './cards.ts';

const CARD = cardBy('ewu', ['11', '12']);
const AT = { entry: 'entry-11', leg: 'leg-1' } as const;

/** Of several scores in one place the last one stands, so only one is drawn for each place. */
const oneScoreEach = fc
  .array(additions(CARD), { maxLength: 30 })
  .map((taps) =>
    taps.filter(
      (tap, i) =>
        tap.kind !== 'score' ||
        !taps.slice(0, i).some((other) => other.kind === 'score' && other.entry === tap.entry && other.leg === tap.leg),
    ),
  );

describe('taps', () => {
  test('in any order make the same card', () => {
    const shuffled = oneScoreEach.chain((taps) =>
      fc.shuffledSubarray(taps, { minLength: taps.length }).map((other) => [taps, other] as const),
    );
    fc.assert(
      fc.property(shuffled, ([taps, other]) => {
        expect(tappedAll(CARD, other)).toEqual(tappedAll(CARD, taps));
      }),
    );
  });

  test('a penalty that is given and taken back leaves the card as it was', () => {
    fc.assert(
      fc.property(fc.array(additions(CARD), { maxLength: 12 }), additions(CARD), (taps, one) => {
        fc.pre(one.kind === 'penalty');
        const before = tappedAll(CARD, taps);
        const back = { ...one, by: -1 } as Tap;
        expect(tapped(tapped(before, one), back)).toEqual(before);
      }),
    );
  });

  test('what changes nothing answers with the same object', () => {
    const card = tappedAll(CARD, given('11', [1, 0.5, 0], { 1: ['hit'] }));
    const nothing: readonly Tap[] = [
      { kind: 'score', ...AT, score: 1 },
      { kind: 'score', entry: 'entry-12', leg: 'leg-1', score: null },
      { kind: 'penalty', ...AT, penalty: 'dropped', by: -1 },
      { kind: 'penalty', entry: 'entry-12', leg: 'leg-2', penalty: 'hit', by: -1 },
      { kind: 'remark', entry: 'entry-12', leg: 'leg-2', note: '' },
      { kind: 'rule', entry: 'entry-12', ruling: null },
      { kind: 'strike', leg: 'leg-1', why: ' ' },
      { kind: 'judge', judge: '' },
    ];
    for (const tap of nothing) expect(tapped(card, tap), tap.kind).toBe(card);
  });

  test('share with the card before what they do not touch', () => {
    const after = tapped(CARD, { kind: 'score', ...AT, score: 1 });
    expect(after.entries[1]).toBe(CARD.entries[1]);
    expect(after.scoring).toBe(CARD.scoring);
  });

  test.each([
    [{ kind: 'score', ...AT, score: 2 }, 'a score of 2 where halves from -1.5 to 1.5'],
    [{ kind: 'score', ...AT, score: 0.25 }, 'a score of 0.25'],
    [{ kind: 'penalty', ...AT, penalty: 'sneezed', by: 1 }, 'no penalty sneezed'],
    [{ kind: 'rule', entry: 'entry-11', ruling: 'rude' }, 'no ruling rude'],
    [{ kind: 'note', entry: 'entry-99', note: 'x' }, 'no entry entry-99'],
    [{ kind: 'strike', leg: 'leg-9', why: 'x' }, 'no leg leg-9'],
  ] as const satisfies readonly (readonly [Tap, string])[])('%j throws', (tap, says) => {
    expect(() => tapped(CARD, tap)).toThrow(says);
  });

  test('numbers are typed as entries come, and corrected', () => {
    const typed = tappedAll(cardBy('ewu', []), [
      { kind: 'enter', entry: 'typed-1', number: '21' },
      { kind: 'enter', entry: 'typed-1', number: '27' },
    ]);
    expect(typed.entries.map(({ id, number }) => [id, number])).toEqual([['typed-1', '27']]);
  });
});

describe('a card of a class', () => {
  const course = courseBy('ewu', ['11', '12']);

  test('has its entries in the order of go, and stays the same object while they do', () => {
    const card = blankCard(course, COLUMNS);
    expect(card.entries.map(({ number }) => number)).toEqual(['11', '12']);
    expect(withEntriesOf(course, card)).toBe(card);
  });

  test('takes a new order, a corrected number and who does not ride from the class, and keeps what was given', () => {
    const card: ScoreCard = tappedAll(blankCard(course, COLUMNS), [
      ...given('11', [1, 1, 1]),
      { kind: 'enter', entry: 'typed-1', number: '99' },
    ]);
    const list = [
      { id: 'entry-12', number: '12', rider: '', horse: '', scratched: true as const },
      { id: 'entry-11', number: '111', rider: '', horse: '' },
    ];
    const now = withEntriesOf({ ...course, class: { ...course.class, list } }, card);
    expect(now.entries.map(({ number, scratched }) => [number, scratched])).toEqual([
      ['12', true],
      ['111', undefined],
      ['99', undefined],
    ]);
    expect(now.entries[1]?.cells).toBe(card.entries[0]?.cells);
  });

  test('keeps that somebody did not come, which only the card says', () => {
    const card = tapped(blankCard(course, COLUMNS), { kind: 'scratch', entry: 'entry-11', scratched: true });
    expect(withEntriesOf(course, card)).toBe(card);
  });

  test('keeps what was given with its leg when the ride is another one', () => {
    const card = tappedAll(blankCard(course, COLUMNS), [
      ...given('11', [1, 0.5, -1]),
      { kind: 'strike', leg: 'leg-3', why: 'broken' },
    ]);
    const [one, two, three] = COLUMNS as [(typeof COLUMNS)[0], (typeof COLUMNS)[0], (typeof COLUMNS)[0]];
    const turned = [
      { ...three, number: 1 },
      { ...one, number: 2 },
    ];
    expect(hasColumns(card, COLUMNS)).toBe(true);
    expect(hasColumns(card, turned)).toBe(false);
    const now = withColumns(card, turned);
    expect(now.columns).toEqual([
      { ...three, number: 1, struck: 'broken' },
      { ...one, number: 2 },
    ]);
    expect(now.entries).toBe(card.entries);
    expect(withColumns(now, [one, two, three]).columns.map(({ leg }) => leg)).toEqual(['leg-1', 'leg-2', 'leg-3']);
  });
});
