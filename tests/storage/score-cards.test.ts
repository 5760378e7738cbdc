import { expect, test } from 'vitest';
import { readScoreCard, scoreCardKey, writeScoreCard } from '../../src/storage/score-cards.ts';
import { cardBy } from '../core/score/cards.ts';

function shelf() {
  const kept = new Map<string, string>();
  return {
    kept,
    open: () => ({
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
    }),
  };
}
const CARD = cardBy('ewu', ['11']);

test('a card is found under its name, and no other', () => {
  const { open } = shelf();
  expect(writeScoreCard('a/main', CARD, open)).toBe(true);
  expect(readScoreCard('a/main', open)).toEqual({ kind: 'kept', card: CARD });
  expect(readScoreCard('b/main', open)).toEqual({ kind: 'none' });
});

test('what is no card is told, and stays', () => {
  const { open, kept } = shelf();
  kept.set(scoreCardKey('a/main'), '{}');
  expect(readScoreCard('a/main', open)).toMatchObject({ kind: 'unreadable', text: '{}' });
  expect(kept.get(scoreCardKey('a/main'))).toBe('{}');
});

test('a browser that stores nothing has none, and says so when something is to be kept', () => {
  const denied = () => {
    throw new DOMException('no', 'SecurityError');
  };
  expect(readScoreCard('a/main', denied)).toEqual({ kind: 'none' });
  expect(writeScoreCard('a/main', CARD, denied)).toBe(false);
});
