import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstJsonFault } from '../../../src/core/files/json.ts';

describe('the place where a text stops being JSON', () => {
  test.each<[string, number, string]>([
    ['', 0, 'a value'],
    ['{"a": 1,}', 8, 'a field name in double quotes'],
    ["{'a': 1}", 1, 'a field name in double quotes'],
    ['{"a" 1}', 5, 'a colon'],
    ['{"a": }', 6, 'a value'],
    ['[1 2]', 3, 'a comma or ]'],
    ['[1, ]', 4, 'a value'],
    ['[1, 2', 5, 'a comma or ]'],
    ['01', 1, 'the end of the file'],
    ['{} {}', 3, 'the end of the file'],
    ['"a\nb"', 2, 'a closing quote'],
    ['"abc', 4, 'a closing quote'],
    ['"a\\x"', 2, 'an escape such as \\n or \\u00bd'],
    ['[.5]', 1, 'a value'],
    ['undefined', 0, 'a value'],
  ])('%j', (text, at, wanted) => {
    expect(firstJsonFault(text)).toEqual({ at, wanted });
  });

  test('is nowhere exactly when the platform reads it too', () => {
    const json = fc.json().map((text) => text.slice(0, 200));
    const mangled = fc.tuple(
      json,
      fc.nat(200),
      fc.constantFrom('', '"', '\\', ',', ':', '{', ']', 'e', '-', ' ', '\t'),
    );
    fc.assert(
      fc.property(mangled, ([text, at, sign]) => {
        const tried = text.slice(0, at) + sign + text.slice(at);
        let platform = true;
        try {
          JSON.parse(tried);
        } catch {
          platform = false;
        }
        expect(firstJsonFault(tried) === undefined).toBe(platform);
      }),
      { numRuns: 2000 },
    );
  });
});
