import { expect, test } from 'vitest';
import { HINTS } from '../../../src/app/first/visit.ts';
import { hintWords } from '../../../src/words/first-visit.ts';

test('there are as many hints as there are words for', () => {
  expect(hintWords.hints).toHaveLength(HINTS);
});
