/** Every word that a person reads in the app comes from the catalogue: none stands in the code of a room. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { visibleStrings } from './visible-strings.ts';

/** Rooms whose words are all in the catalogue. */
const ROOMS = [
  ...['src/app/ride', 'src/app/change', 'src/app/day', 'src/app/post', 'src/app/help'],
  ...['src/app/boundary.tsx', 'src/app/dialog.tsx', 'src/app/live-region.tsx', 'src/app/autosave-context.tsx'],
];
/** The app's own name, and what is typed on a keyboard or written in a file whatever the language. */
const SAME_IN_ALL_LANGUAGES = new Set(['Polewright']);

function filesBelow(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path).flatMap((name) => filesBelow(join(path, name)));
}

const FILES = ROOMS.flatMap(filesBelow).filter((path) => /\.tsx?$/.test(path));

describe('the words of the app', () => {
  test('every room that is read exists', () => {
    expect(ROOMS.filter((room) => !existsSync(room))).toEqual([]);
    expect(FILES.length).toBeGreaterThan(60);
  });

  test.each(FILES)('%s takes its words from the catalogue', (path) => {
    const found = visibleStrings(path, readFileSync(path, 'utf8'));
    expect(
      found.filter(({ text }) => !SAME_IN_ALL_LANGUAGES.has(text)).map(({ line, text }) => `${line}: ${text}`),
    ).toEqual([]);
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
