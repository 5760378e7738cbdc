import fc from 'fast-check';
import { expect, test } from 'vitest';
import { safeCell } from '../../../src/core/text/safe-cell.ts';

test.each([
  ['=1+1', "'=1+1"],
  ['+cmd', "'+cmd"],
  ['-2+3', "'-2+3"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', "'\t=1"],
  ['\ttext', "'\ttext"],
  ['\rtext', "'\rtext"],
  ['  =1', "'  =1"],
  ['\uFF1D1', "'\uFF1D1"],
])('%j becomes %j', (text, cell) => {
  expect(safeCell(text)).toBe(cell);
});

test.each(['Pole fan', '', '-1.5', '+3', '-0,5', 'a=b', '1 - 2', "'quoted"])('%j is left as it is', (text) => {
  expect(safeCell(text)).toBe(text);
});

test('no cell begins as a formula, and only an apostrophe is ever added', () => {
  fc.assert(
    fc.property(fc.string(), fc.constantFrom('', '=', '+', '-', '@', '\t', ' @'), (text, start) => {
      const cell = safeCell(start + text);
      expect([start + text, `'${start}${text}`]).toContain(cell);
      if (!/^\s*[+-]?\d/.test(cell)) expect(cell).not.toMatch(/^\s*[=+\-@]/);
    }),
  );
});
