import { describe, expect, test } from 'vitest';
import { cardTable, pointsText } from '../../../src/core/score/card-table.ts';
import { SCORE_CAUTION } from '../../../src/core/score/score-card.ts';
import { safeCell } from '../../../src/core/text/safe-cell.ts';
import { cardBy, given, tappedAll } from './cards.ts';

test.each([
  [1.5, '+1½'],
  [0.5, '+½'],
  [0, '0'],
  [-0.5, '−½'],
  [-1, '−1'],
  [70.5, '+70½'],
])('%d is written %s', (points, text) => {
  expect(pointsText(points, 'plus')).toBe(text);
});

describe('a table of the card', () => {
  const card = tappedAll(cardBy('ewu', ['11', '12', '13']), [
    ...given('11', [1, 0.5, -1.5], { 2: ['hit'] }),
    ...given('12', [1, null, null]),
    { kind: 'rule', entry: 'entry-13', ruling: 'rein-hand' },
    { kind: 'note', entry: 'entry-11', note: '=SUM(A1)' },
    { kind: 'remark', entry: 'entry-11', leg: 'leg-2', note: 'hind' },
  ]);
  const [head = [], first = [], second = [], third = [], last = []] = cardTable(card);
  const at = (row: readonly string[], title: string) => row[head.indexOf(title)];

  test('has a row an entry with every score, penalty, sum and place', () => {
    expect(at(first, '1. Gate, left-hand push')).toBe('1');
    expect(at(first, '3. Box, turn 360° left')).toBe('-1.5');
    expect(at(first, '2. penalties')).toBe('1 Hit of, or step on, a pole, cone or obstacle');
    expect([at(first, 'Scores'), at(first, 'Penalties'), at(first, 'Total'), at(first, 'Place')]).toEqual([
      '0',
      '1',
      '69',
      '1',
    ]);
  });

  test('says what is not finished and what ended a go', () => {
    expect(at(second, 'State')).toBe('not finished, without 2 3');
    expect(at(second, 'Place')).toBe('');
    expect([at(third, 'State'), at(third, 'Ruling'), at(third, 'Place')]).toEqual([
      'zero score',
      'Fault of the rein hand',
      '2',
    ]);
  });

  test('is marked as no official result, and no note is a formula', () => {
    expect(last).toEqual([SCORE_CAUTION]);
    expect(at(first, 'Note')).toBe("'=SUM(A1); 2: hind");
  });
});

describe('a cell that a spreadsheet would take for a formula', () => {
  test.each(['=1+1', '+cmd', '-cmd', '@SUM(A1)', '\t=1', '\r=1', '+1-1', '-1.5x'])('%j gets an apostrophe', (text) => {
    expect(safeCell(text)).toBe(`'${text}`);
  });

  test.each(['', '12', '-1.5', '+1', 'a=b', '1. Gate', 'Larkhollow', '−½'])('%j stays', (text) => {
    expect(safeCell(text)).toBe(text);
  });
});
