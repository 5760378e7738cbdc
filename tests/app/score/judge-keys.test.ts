import { expect, test } from 'vitest';
import { entryAside, keyAct, scoreSteps } from '../../../src/app/score/judge-keys.ts';
import { tapped } from '../../../src/core/score/taps.ts';
import { cardBy } from '../../core/score/cards.ts';

const CARD = cardBy('ewu', ['11', '12', '13']);
const MIDDLE = { entry: 'entry-12', leg: 'leg-2' };

test('the scores go in halves from the least to the most', () => {
  expect(scoreSteps(CARD)).toEqual([-1.5, -1, -0.5, 0, 0.5, 1, 1.5]);
});

test.each([
  ['1', { kind: 'tap', tap: { kind: 'score', ...MIDDLE, score: -1.5 } }],
  ['7', { kind: 'tap', tap: { kind: 'score', ...MIDDLE, score: 1.5 } }],
  ['8', undefined],
  ['0', undefined],
  ['ArrowRight', { kind: 'go', place: { entry: 'entry-12', leg: 'leg-3' } }],
  ['ArrowLeft', { kind: 'go', place: { entry: 'entry-12', leg: 'leg-1' } }],
  ['PageDown', { kind: 'go', place: { entry: 'entry-13', leg: 'leg-1' } }],
  ['PageUp', { kind: 'go', place: { entry: 'entry-11', leg: 'leg-1' } }],
  ['x', undefined],
])('%s', (key, act) => {
  expect(keyAct(CARD, MIDDLE, key)).toEqual(act);
});

test('past the ends nothing happens', () => {
  expect(keyAct(CARD, { entry: 'entry-11', leg: 'leg-1' }, 'ArrowLeft')).toBeUndefined();
  expect(keyAct(CARD, { entry: 'entry-13', leg: 'leg-3' }, 'ArrowRight')).toBeUndefined();
  expect(entryAside(CARD, { entry: 'entry-13', leg: 'leg-3' }, 1)).toBeUndefined();
});

test('who does not ride is passed over', () => {
  const card = tapped(CARD, { kind: 'scratch', entry: 'entry-12', scratched: true });
  expect(entryAside(card, { entry: 'entry-11', leg: 'leg-1' }, 1)?.entry).toBe('entry-13');
  expect(entryAside(card, { entry: 'entry-13', leg: 'leg-1' }, -1)?.entry).toBe('entry-11');
});
