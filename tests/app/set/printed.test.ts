import { expect, test } from 'vitest';
import { paramText, printedFact, spelled } from '../../../src/app/set/printed.ts';
import type { Param } from '../../../src/core/pieces/params.ts';

const fraction: Param = { kind: 'fraction', label: 'Line at', usual: 0.5, least: 0, most: 1 };
const length: Param = { kind: 'length', label: 'Gap', usual: 1, least: 0, most: 10 };

test('fractions that people say are shown as they say them', () => {
  expect(paramText(fraction, 2 / 3, 'ft')).toBe('2/3');
  expect(paramText(fraction, 0.4, 'ft')).toBe('0.4');
});

test('lengths are shown in the unit of the course', () => {
  expect(paramText(length, 1.905, 'ft')).toBe(`6' 3"`);
  expect(paramText(length, 1.905, 'm')).toMatch(/^1\.9[01] m$/);
});

test('facts are spelled as words, and angles among them as degrees', () => {
  expect(spelled('lineRadius')).toBe('Line radius');
  expect(printedFact('angle', Math.PI / 6, 'ft')).toBe('30°');
});
