import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cardText, readCard } from '../../../src/core/score/read-card.ts';
import { scoreCardJsonSchema } from '../../../src/core/score/score-card.ts';
import { cardBy, given, tappedAll, wholeCards } from './cards.ts';

const CARD = tappedAll(cardBy('ewu', ['11', '12']), given('11', [1, 0, -0.5], { 3: ['hit', 'hit'] }));

/** The text of the card with one thing in it changed. */
function changed(change: (file: Record<string, never>) => void): string {
  const file = JSON.parse(cardText(CARD)) as Record<string, never>;
  change(file);
  return JSON.stringify(file);
}

function why(text: string): string {
  const read = readCard(text);
  return read.kind === 'refused' ? read.why : 'read';
}

test('what is written is read', () => {
  fc.assert(
    fc.property(wholeCards(['1', '2', '3']), (card) => {
      expect(readCard(cardText(card))).toEqual({ kind: 'read', card });
    }),
  );
});

test('the schema in assets is that of this program', () => {
  expect(readFileSync('assets/schema/score-card.schema.json', 'utf8')).toBe(scoreCardJsonSchema());
});

describe('refused with its reason:', () => {
  test.each([
    ['an empty file', '', 'The file is empty.'],
    ['a file that is cut off', cardText(CARD).slice(0, 200), 'cut off'],
    ['a course', '{"format":"polewright-course","version":1}', '"polewright-score-card"'],
    ['a list', '[]', 'a list of 0'],
    ['a newer version', changed((file) => Object.assign(file, { version: 2 })), 'newer Polewright'],
    ['a version that never was', changed((file) => Object.assign(file, { version: 0 })), 'version of the card is 0'],
    ['a quarter point', cardText(CARD).replace('"score": -0.5', '"score": -0.25'), 'score'],
    ['more than the scale', cardText(CARD).replace('"score": -0.5', '"score": -4'), 'a score of -4'],
    ['an unknown penalty', cardText(CARD).replace(/"hit"\n/, '"sneezed"\n'), 'unknown penalty "sneezed"'],
    ['an entry twice', cardText(CARD).replace('"id": "entry-12"', '"id": "entry-11"'), 'Two entries'],
    ['what no card has', changed((file) => Object.assign(file, { winner: '11' })), 'winner'],
  ])('%s', (_, text, says) => {
    expect(why(text)).toContain(says);
  });

  test('any text, without throwing', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readCard(text).kind).toBe('refused');
      }),
    );
  });
});
