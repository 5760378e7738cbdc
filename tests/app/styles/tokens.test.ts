import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const FOLDER = new URL('../../../src/app/styles/', import.meta.url);
const TOKENS = 'tokens.css';
/** What the fonts' file has in its place: names of faces, not sizes or colours. */
const FACES = 'typeface.css';

/** All declarations of a style sheet, with the line that each stands on. */
function declarations(
  file: string,
): readonly { readonly at: string; readonly property: string; readonly value: string }[] {
  const text = readFileSync(new URL(file, FOLDER), 'utf8').replace(/\/\*[\s\S]*?\*\//g, (comment) =>
    comment.replace(/[^\n]/g, ''),
  );
  return [...text.matchAll(/([\w-]+):\s*([^;{}]+);/g)].map(({ 1: property = '', 2: value = '', index }) => ({
    at: `${file}:${text.slice(0, index).split('\n').length}`,
    property,
    value,
  }));
}

const sheets = readdirSync(FOLDER).filter((file) => file.endsWith('.css') && file !== TOKENS && file !== FACES);
const all = sheets.flatMap(declarations);
const told = (faults: typeof all) => faults.map(({ at, property, value }) => `${at} ${property}: ${value}`);

test('no size of letters is below 13 px', () => {
  const sizes = declarations(TOKENS).filter(({ property }) => property.startsWith('--text-'));
  expect(sizes.length).toBeGreaterThan(0);
  for (const { property, value } of sizes) {
    expect(value, property).toMatch(/^[\d.]+rem$/);
    expect(Number.parseFloat(value) * 16, property).toBeGreaterThanOrEqual(13);
  }
});

test('a size of letters stands in the tokens only', () => {
  const sizes = all.filter(({ property }) => property === 'font-size' || property === 'font');
  expect(sizes.length).toBeGreaterThan(0);
  expect(told(sizes.filter(({ value }) => !/var\(--text-|^inherit$/.test(value)))).toEqual([]);
});

test('a colour stands in the tokens only', () => {
  const colours = /#[0-9a-f]{3,8}\b|\b(?:rgb|rgba|hsl|hsla|oklch|color)\(/i;
  expect(told(all.filter(({ value }) => colours.test(value)))).toEqual([]);
});

test('a radius and a space between things come from the tokens', () => {
  const spaced = all.filter(({ property }) => /^(padding|margin|gap|row-gap|column-gap|border-radius)/.test(property));
  // A pixel is a hair line, and what keeps clear of a button's side is as wide as the button.
  const raw = spaced.filter(({ value }) => /(?<![\w.-])(?!1px|46px)\d+(?:\.\d+)?px/.test(value));
  expect(told(raw)).toEqual([]);
});

test('every token that is used is there, and every token there is used', () => {
  const named = new Set(declarations(TOKENS).flatMap(({ property }) => (property.startsWith('--') ? [property] : [])));
  const own = new Set(all.flatMap(({ property }) => (property.startsWith('--') ? [property] : [])));
  const uses = [...all, ...declarations(TOKENS)].flatMap(({ value }) =>
    [...value.matchAll(/var\((--[\w-]+)/g)].map(([, name = '']) => name),
  );
  expect([...new Set(uses)].filter((name) => !named.has(name) && !own.has(name))).toEqual([]);
  expect([...named].filter((name) => !uses.includes(name))).toEqual([]);
});
