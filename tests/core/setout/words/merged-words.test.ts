import { expect, test } from 'vitest';
import { mergedSentences } from '../../../../src/core/setout/words/merged-words.ts';

test('sentences that differ in their ends only are told as one', () => {
  expect(
    mergedSentences([
      `Tape 3' 0" from pole 1 to pole 2, inside to inside, at ends A and C.`,
      `Tape 3' 0" from pole 1 to pole 2, inside to inside, at ends B and D.`,
      'Bring ends A and C level with each other.',
    ]),
  ).toEqual([
    `Tape 3' 0" from pole 1 to pole 2, inside to inside, at ends A and C, and at ends B and D.`,
    'Bring ends A and C level with each other.',
  ]);
  expect(
    mergedSentences([
      `Tape 27' 10" from the north wall to the near side of pole 1 at end A, square to the wall.`,
      `Tape 27' 10" from the north wall to the near side of pole 1 at end B, square to the wall.`,
    ]),
  ).toEqual([`Tape 27' 10" from the north wall to the near side of pole 1 at ends A and B, square to the wall.`]);
});

test.each([
  [[`Tape 3' 0" to end A.`, `Tape 3' 1" to end B.`]],
  [[`Tape 3' 0" straight from end A to end D.`, `Tape 3' 0" straight from end B to end C.`]],
  [["Lay pole 2 (12', ends C and D).", 'Hold pole 1.']],
  [['Bring ends A and C level with each other.', 'Bring ends B and D level with each other.']],
  [[`Tape 3' 0" to end A.`, 'Hold pole 1.', `Tape 3' 0" to end B.`]],
])('%j stay as they are', (sentences) => {
  expect(mergedSentences(sentences)).toEqual(sentences);
});
