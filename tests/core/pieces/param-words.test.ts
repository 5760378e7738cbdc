import { expect, test } from 'vitest';
import { paramText, paramWords } from '../../../src/core/pieces/param-words.ts';
import type { Param } from '../../../src/core/pieces/params.ts';

const fraction: Param = { kind: 'fraction', label: 'Line at', usual: 0.5, least: 0, most: 1 };
const length: Param = { kind: 'length', label: 'Gap', usual: 1, least: 0, most: 10 };
const choice: Param = {
  kind: 'choice',
  label: 'Paint',
  usual: 'plain',
  options: { plain: 'Plain', ends: 'Painted ends' },
};

test('fractions that people say are shown as they say them', () => {
  expect(paramText(fraction, 2 / 3, 'ft')).toBe('2/3');
  expect(paramText(fraction, 0.4, 'ft')).toBe('0.4');
});

test('lengths are shown in the unit of the course', () => {
  expect(paramText(length, 1.905, 'ft')).toBe(`6' 3"`);
  expect(paramText(length, 1.905, 'm')).toMatch(/^1\.9[01] m$/);
});

test('a choice is said by its label in a sentence, and the rest as in a field', () => {
  expect(paramWords(choice, 'ends', 'ft')).toBe('painted ends');
  expect(paramWords(length, 1.905, 'ft')).toBe(`6' 3"`);
});
