import { describe, expect, test } from 'vitest';
import { jsx, jsxs } from '../../../src/app/jsx/jsx-runtime.ts';
import { withoutBreaks } from '../../../src/app/jsx/no-break.ts';
import { printLength, readLength } from '../../../src/core/measure/length.ts';

function Nothing(): null {
  return null;
}

describe('what may not break across lines', () => {
  test.each([
    [`6' 3½" from the wall`, `6'\u00a03½" from the wall`],
    [`from 5' 0½" to 12'`, `from 5'\u00a00½" to 12'`],
    ['1.90 m and 20 cm', '1.90\u00a0m and 20\u00a0cm'],
    ['about 2 min 44 s', 'about 2\u00a0min 44\u00a0s'],
    ['4 gaps of 3 poles, 2 more', '4 gaps of 3 poles, 2 more'],
    [`the judge's 3 poles`, `the judge's 3 poles`],
  ])('%s', (plain, set) => {
    expect(withoutBreaks(plain)).toBe(set);
  });

  test('every length that is printed has no plain space left, and is read again', () => {
    for (const unit of ['ft', 'm'] as const) {
      for (const value of [0.1, 0.3048, 1.9, 2.0066, 30.4927]) {
        const text = withoutBreaks(printLength(value, unit));
        expect(text).not.toContain(' ');
        expect(readLength(text, unit)).toEqual(readLength(printLength(value, unit), unit));
      }
    }
  });
});

describe('an element of the page', () => {
  const children = (element: ReturnType<typeof jsx>) => (element.props as { readonly children: unknown }).children;

  test('has its texts without breaks, one or several', () => {
    expect(children(jsx('p', { children: `6' 3"` }))).toBe(`6'\u00a03"`);
    expect(children(jsxs('p', { children: [`6' 3"`, 4, ' wide'] }))).toEqual([`6'\u00a03"`, 4, ' wide']);
  });

  test('keeps what is no text of its own: values of fields, and what a component is given', () => {
    expect(jsx('input', { value: `6' 3"` }).props).toEqual({ value: `6' 3"` });
    expect(children(jsx(Nothing, { children: `6' 3"` }))).toBe(`6' 3"`);
  });
});
