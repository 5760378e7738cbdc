/** Every word that a person reads in the app comes from the catalogue: none stands in the code of a room. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/words/catalogue.ts';
import { visibleStrings } from './visible-strings.ts';

/** Whatever a person sees or hears of the app. */
const ROOMS = ['src/app', 'src/desk'];
/** The app's own name and the typeface. */
const SAME_IN_ALL_LANGUAGES = new Set([
  'Polewright',
  'Inter, system-ui, "Segoe UI", Roboto, "Helvetica Neue", sans-serif',
  '{} {}px {}',
]);

function filesBelow(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path).flatMap((name) => filesBelow(join(path, name)));
}

const FILES = ROOMS.flatMap(filesBelow).filter((path) => /\.tsx?$/.test(path));

describe('the words of the app', () => {
  test('every room that is read exists', () => {
    expect(ROOMS.filter((room) => !existsSync(room))).toEqual([]);
    expect(FILES.length).toBeGreaterThan(150);
  });

  test.each(FILES)('%s takes its words from the catalogue', (path) => {
    const found = visibleStrings(path, readFileSync(path, 'utf8'));
    expect(
      found.filter(({ text }) => !SAME_IN_ALL_LANGUAGES.has(text)).map(({ line, text }) => `${line}: ${text}`),
    ).toEqual([]);
  });

  test('no text of the catalogue is left over', () => {
    const code =
      FILES.map((path) => readFileSync(path, 'utf8')).join('\n') + readFileSync('src/words/by-ear.ts', 'utf8');
    const unused = Object.entries(catalogue).flatMap(([room, words]) => {
      const lists = ['desk', 'firstVisit'].includes(room) ? Object.values(words) : [words];
      return lists
        .flatMap((list) => Object.keys(list))
        .filter((key) => !new RegExp(`\\.${key}\\b`).test(code))
        .map((key) => `${room}.${key}`);
    });
    expect(unused).toEqual([]);
  });

  test('a text, a label and a sentence in the code are found; an id, a class and a key are not', () => {
    const source = `const a = <p className="one of two">Some <b>{x ? 'Choose one' : "two words"}</b></p>;
      const b = <button aria-label={x ? 'free' : y} title="go" data-key="some-id" onClick={() => say('Moved it')} />;
      if (key === 'Two words') put({ 'has words': \`\${n} poles\` }, 'id-1', 'Enter');`;
    expect(visibleStrings('a.tsx', source).map(({ text }) => text)).toEqual([
      ...['Some', 'Choose one', 'two words', 'free', 'go', 'Moved it', '{} poles'],
    ]);
  });
});
