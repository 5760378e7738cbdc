/** The catalogue of words: as a list to read, and as what another language has to give. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { counted, pluralForm } from '../../src/core/text/sentence.ts';
import { catalogue, type Translated } from '../../src/words/catalogue.ts';
import { listedTexts } from './listing.ts';

const GOLDEN = 'tests/words/catalogue.txt';

const listed = Object.entries(catalogue).flatMap(([room, words]) =>
  listedTexts(`src/words/${fileName(room)}.ts`, words, room),
);

/** `byEar` is in `by-ear.ts`. */
function fileName(room: string): string {
  return room.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

describe('the catalogue', () => {
  // Updated by POLEWRIGHT_UPDATE=1: a change of words is read in the diff of the list.
  test('is the list that was read', () => {
    const list = `${listed.map(({ key, text }) => `${key}\n  ${text}`).join('\n')}\n`;
    if (process.env.POLEWRIGHT_UPDATE === '1' || !existsSync(GOLDEN)) writeFileSync(GOLDEN, list);
    expect(list).toBe(readFileSync(GOLDEN, 'utf8'));
  });

  test.each(listed)('$key fills in all that it is given and is not empty', ({ text }) => {
    expect(text.trim()).not.toBe('');
    expect(text).not.toMatch(/undefined|null|NaN|\[object|\$\{|function|=>/);
  });

  test('has one word for a thing: none of those that it gave up', () => {
    const old =
      /\b(leaves? (its|their) bands?|what follows|says who|may take|gather|raking|raked|kept course|upright|lying|take (it )?away|take off|erase|copy of|order of the go|1 findings)\b/i;
    expect(listed.filter(({ text }) => old.test(text))).toEqual([]);
  });
});

describe('another language', () => {
  const some = {
    title: 'Title',
    of: (count: number, name: string) => `${count} of ${name}`,
    rows: [['a', 'b']],
  } as const;
  type Other = Translated<typeof some>;

  test('gives every text with other words, and takes the same values', () => {
    const other: Other = { title: 'Titel', of: (count, name) => `${count} von ${name}`, rows: [['c', 'd']] };
    expect(other.of(2, 'drei')).toBe('2 von drei');
  });

  test('is refused by its type when a text is missing or takes another value', () => {
    // @ts-expect-error a text is missing.
    const lacking: Other = { title: 'Titel', rows: [['c', 'd']] };
    // @ts-expect-error a number is no name.
    const wrong: Other = { title: 'Titel', of: (count: string) => count, rows: [['c', 'd']] };
    expect([lacking, wrong].length).toBe(2);
  });

  test('has the plurals of its own rules', () => {
    const forms = { one: 'drąg', few: 'drągi', many: 'drągów', other: 'drąga' };
    const polish = new Intl.PluralRules('pl');
    expect([1, 3, 5, 22].map((count) => pluralForm(count, forms, polish))).toEqual([
      'drąg',
      'drągi',
      'drągów',
      'drągi',
    ]);
  });
});

test('one thing is counted in the singular, any other number in the plural', () => {
  expect([0, 1, 2, 21].map((count) => counted(count, 'finding'))).toEqual([
    ...['0 findings', '1 finding', '2 findings', '21 findings'],
  ]);
  expect(counted(1, 'fix', 'fixes')).toBe('1 fix');
  expect(counted(3, 'fix', 'fixes')).toBe('3 fixes');
});
