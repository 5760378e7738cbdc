import { expect, test } from 'vitest';
import { printedFact, spelled } from '../../../src/app/set/printed.ts';

test('facts are spelled as words, and angles among them as degrees', () => {
  expect(spelled('lineRadius')).toBe('Line radius');
  expect(printedFact('angle', Math.PI / 6, 'ft')).toBe('30°');
});
