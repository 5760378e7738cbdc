/**
 * The ladder of DEVELOPERS.md: imports only run down it and in no cycle, one file exports a type, and files stay
 * readable.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** From the bottom up. A module may import itself and the modules before it. */
const LADDER = [
  'core/memo',
  'core/text',
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
  'core/survey-prints.ts',
  'core/checks',
  'core/setout',
  'core/change',
  'core/go',
  'core/files',
  'core/score',
  'words',
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
const CORE_PACKAGES = new Set(['immer', 'zod/mini', 'polygon-clipping', 'fflate']);

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
  return [...text.matchAll(/(?:\bfrom\s+|\bimport\(\s*|^import\s+)['"]([^'"]+)['"]/gm)].map((match) => match[1] ?? '');
}

/** The sources that a source imports, types included. */
function importedSources(path: string): readonly string[] {
  return importsOf(path)
    .filter((target) => target.startsWith('.'))
    .map((target) => normalize(join(dirname(path), target.replace(/\?.*$/, ''))))
    .filter((file) => /\.tsx?$/.test(file));
}

/** The first cycle that depth-first search meets, as the files on it; empty when the graph has none. */
function firstCycle(edges: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const done = new Set<string>();
  const visit = (node: string, path: readonly string[]): readonly string[] => {
    if (path.includes(node)) return [...path.slice(path.indexOf(node)), node];
    if (done.has(node)) return [];
    for (const next of edges.get(node) ?? []) {
      const cycle = visit(next, [...path, node]);
      if (cycle.length > 0) return cycle;
    }
    done.add(node);
    return [];
  };
  for (const node of edges.keys()) {
    const cycle = visit(node, []);
    if (cycle.length > 0) return cycle;
  }
  return [];
}

/** The files that export a type, by the type's name. */
function exportersOfTypes(): ReadonlyMap<string, readonly string[]> {
  const exporters = new Map<string, string[]>();
  for (const path of SOURCES) {
    for (const [, name = ''] of readFileSync(path, 'utf8').matchAll(/^export (?:interface|type|class) (\w+)/gm)) {
      exporters.set(name, [...(exporters.get(name) ?? []), path]);
    }
  }
  return exporters;
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

  test('no file imports itself by way of others, not even for a type', () => {
    expect(firstCycle(new Map(SOURCES.map((path) => [path, importedSources(path)])))).toEqual([]);
  });

  test('a cycle is found where there is one', () => {
    const edges = new Map([
      ['a', ['b', 'c']],
      ['b', ['c']],
      ['c', ['d']],
      ['d', ['b']],
    ]);
    expect(firstCycle(edges)).toEqual(['b', 'c', 'd', 'b']);
  });

  test('no type is exported by two files', () => {
    const exporters = exportersOfTypes();
    expect(exporters.size).toBeGreaterThan(100);
    expect([...exporters].filter(([, files]) => files.length > 1)).toEqual([]);
  });

  test('no file or folder is named for having no name', () => {
    const vague = /(^|\/)(index|types|misc|utils?|helpers?|common|shared)(\.tsx?|\/)/;
    expect(SOURCES.filter((path) => vague.test(path))).toEqual([]);
  });
});
