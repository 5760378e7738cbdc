/** The ladder of DEVELOPERS.md: imports only run down it, files stay readable, and no kind lacks a test or a seed. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** From the bottom up. A room may import itself and the rooms before it. */
const LADDER = [
  'core/measure',
  'core/plane',
  'core/solve',
  'core/horses',
  'core/pieces',
  'core/constraints',
  'core/obstacles',
  'core/course',
  'core/ride',
  'core/survey.ts',
  'core/checks',
  'core/files',
  'sheets',
  'desk',
  'storage',
  'app',
  'cli',
];
/** Nothing imports these, not even one another. */
const LEAVES = new Set(['app', 'cli']);
const LONGEST = 300;
/** What core may take from outside. */
const CORE_PACKAGES = new Set(['immer', 'zod/mini', 'polygon-clipping']);

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

const SOURCES = filesBelow('src').filter((path) => /\.tsx?$/.test(path));

function roomOf(path: string): string {
  const inside = relative('src', path);
  const room = LADDER.find((each) => inside === each || inside.startsWith(`${each}/`));
  if (room === undefined) throw new Error(`${path} is in no room of the ladder`);
  return room;
}

function importsOf(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  return [...text.matchAll(/(?:\bfrom|\bimport\(|^import)\s*['"]([^'"]+)['"]/gm)].map((match) => match[1] ?? '');
}

describe('the ladder', () => {
  test('finds the sources', () => {
    expect(SOURCES.length).toBeGreaterThan(20);
  });

  test.each(SOURCES)('%s imports only down the ladder', (path) => {
    const room = roomOf(path);
    for (const target of importsOf(path)) {
      if (!target.startsWith('.')) {
        if (room.startsWith('core/')) expect([...CORE_PACKAGES], `${path} imports ${target}`).toContain(target);
        continue;
      }
      const file = normalize(join(dirname(path), target.replace(/\?.*$/, '')));
      if (file.startsWith('assets') || file.startsWith('seeds') || file.endsWith('package.json')) continue;
      if (/\.tsx?$/.test(file)) expect(existsSync(file), `${path} imports ${target}`).toBe(true);
      if (!/\.tsx?$/.test(file)) continue;
      const below = roomOf(file);
      if (below === room) continue;
      expect(LEAVES.has(below), `${path} imports ${target} from a leaf`).toBe(false);
      expect(LADDER.indexOf(below), `${path} imports ${target}, which is up the ladder`).toBeLessThan(
        LADDER.indexOf(room),
      );
    }
  });

  test.each(SOURCES)('%s can be read in one sitting', (path) => {
    expect(readFileSync(path, 'utf8').split('\n').length).toBeLessThanOrEqual(LONGEST);
  });

  test('no file or folder is named for having no name', () => {
    const vague = /(^|\/)(index|types|misc|utils?|helpers?|common|shared)(\.tsx?|\/)/;
    expect(SOURCES.filter((path) => vague.test(path))).toEqual([]);
  });
});
