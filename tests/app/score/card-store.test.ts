import { describe, expect, test } from 'vitest';
import { createCardStore } from '../../../src/app/score/card-store.ts';
import { currentCard } from '../../../src/core/score/blank-card.ts';
import { cardText, readCard } from '../../../src/core/score/read-card.ts';
import type { ScoreCard } from '../../../src/core/score/score-card.ts';
import type { KeptCard } from '../../../src/storage/score-cards.ts';
import { COLUMNS, cardBy, courseBy, given } from '../../core/score/cards.ts';

/** A place that holds one card as text, as the browser does. */
function place(text: string | null = null) {
  let kept = text;
  return {
    text: () => kept,
    read: (): KeptCard => {
      if (kept === null) return { kind: 'none' };
      const read = readCard(kept);
      return read.kind === 'read'
        ? { kind: 'kept', card: read.card }
        : { kind: 'unreadable', why: read.why, text: kept };
    },
    write: (_: string, card: ScoreCard) => {
      kept = cardText(card);
      return true;
    },
  };
}

const COURSE = courseBy('ewu', ['11', '12']);
const MADE = {
  blank: () => cardBy('ewu', ['11', '12']),
  current: (card: ScoreCard) => currentCard(COURSE, COLUMNS, card),
};
const [FIRST, SECOND] = given('11', [1, 0.5]);
if (FIRST === undefined || SECOND === undefined) throw new Error('two taps were asked for');

describe('a card in a browser', () => {
  test('is kept with each tap, and found as it was left', () => {
    const shelf = place();
    const store = createCardStore('slot/main', MADE, shelf);
    expect(shelf.text()).toBeNull();
    store.tap(FIRST);
    store.tap(SECOND);
    expect(createCardStore('slot/main', MADE, shelf).state().card).toEqual(store.state().card);
  });

  test('goes back to the same objects, tap by tap, and keeps that too', () => {
    const shelf = place();
    const store = createCardStore('slot/main', MADE, shelf);
    const seen = [store.state().card];
    for (const tap of [FIRST, SECOND]) {
      store.tap(tap);
      seen.push(store.state().card);
    }
    for (const card of seen.slice(0, -1).toReversed()) {
      store.undo();
      expect(store.state().card).toBe(card);
    }
    store.undo();
    expect(store.state().card).toBe(seen[0]);
    expect(shelf.read()).toEqual({ kind: 'kept', card: seen[0] });
  });

  test('a tap that changes nothing is no step to take back', () => {
    const store = createCardStore('slot/main', MADE, place());
    store.tap(FIRST);
    store.tap(FIRST);
    expect(store.state().past.length).toBe(1);
  });

  test('says when the browser keeps nothing', () => {
    const store = createCardStore('slot/main', MADE, { read: () => ({ kind: 'none' }), write: () => false });
    store.tap(FIRST);
    expect(store.state()).toMatchObject({ isKept: false, past: [expect.anything()] });
  });

  test('that cannot be read is not written over by a tap, only when a person begins a new one', () => {
    const shelf = place('{"format":"polewright-score-card","version":99}');
    const store = createCardStore('slot/main', MADE, shelf);
    expect(store.state().unreadable).toContain('version 99');
    store.tap(FIRST);
    expect(shelf.text()).toContain('99');
    store.replace(MADE.blank());
    store.tap(FIRST);
    expect(store.state().unreadable).toBeUndefined();
    expect(shelf.read()).toEqual({ kind: 'kept', card: store.state().card });
  });
});

describe('a card that another tab judges', () => {
  test('is shown as that tab writes it, and nothing is written here', () => {
    const shelf = place();
    const [here, there] = [createCardStore('slot/main', MADE, shelf), createCardStore('slot/main', MADE, shelf)];
    here.setElsewhere(true);
    there.tap(FIRST);
    here.tap(SECOND);
    here.undo();
    here.replace(MADE.blank());
    expect(shelf.read()).toEqual({ kind: 'kept', card: there.state().card });
    here.follow();
    expect(here.state().card).toEqual(there.state().card);
  });

  test('goes on here with all that the other tab wrote', () => {
    const shelf = place();
    const [here, there] = [createCardStore('slot/main', MADE, shelf), createCardStore('slot/main', MADE, shelf)];
    here.setElsewhere(true);
    there.tap(FIRST);
    here.setElsewhere(false);
    here.tap(SECOND);
    expect(here.state().card.entries[0]?.cells).toMatchObject({ 'leg-1': { score: 1 }, 'leg-2': { score: 0.5 } });
  });
});

test('a card that nobody was given anything on follows the course; a begun one keeps its list', () => {
  const shelf = place();
  const before = createCardStore('slot/main', MADE, shelf);
  before.tap({ kind: 'judge', judge: 'Ada Fenn' });
  const mules = courseBy('mule-association', ['11', '12']);
  const [one] = COLUMNS;
  if (one === undefined) throw new Error('there are columns');
  const later = { blank: MADE.blank, current: (card: ScoreCard) => currentCard(mules, [one], card) };
  const fresh = createCardStore('slot/main', later, shelf).state().card;
  expect([fresh.scoring.book, fresh.columns.length, fresh.judge]).toEqual(['American Mule Association', 1, 'Ada Fenn']);
  before.tap(FIRST);
  const begun = createCardStore('slot/main', later, shelf).state().card;
  expect([begun.scoring.book, begun.columns.length]).toEqual(['EWU, Germany', 3]);
});
