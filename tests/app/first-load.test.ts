/**
 * What the arena waits for: all that main.tsx imports, and what that imports, without parts that are fetched later. One
 * import of a name is enough to bring a room back into it.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, test } from 'vitest';

/** `import …`, and not `import type …` or a dynamic one. */
const IMPORT = /^(?:import|export)\s+(?!type\b)(?:([^;'"]*?)\s+from\s+)?['"]([^'"]+)['"]/gm;

function importsOf(path: string): readonly string[] {
  return [...readFileSync(path, 'utf8').matchAll(IMPORT)].flatMap(([, names = '', target = '']) => {
    const isTypesOnly = /^\{(\s*type [^,}]+,?)+\s*\}$/.test(names);
    return isTypesOnly ? [] : [target.startsWith('.') ? normalize(join(dirname(path), target)) : target];
  });
}

/** Files and packages in the first load, each with the file that is the first to import it. */
function firstLoad(): ReadonlyMap<string, string> {
  const found = new Map([['src/app/main.tsx', '']]);
  for (const path of found.keys()) {
    if (!/\.tsx?$/.test(path) || !existsSync(path)) continue;
    for (const target of importsOf(path)) if (!found.has(target)) found.set(target, path);
  }
  return found;
}

const LOADED = firstLoad();

/** How a file came into the first load. */
function chain(path: string): string {
  const by = LOADED.get(path);
  return by === undefined || by === '' ? path : `${path}, imported by ${chain(by)}`;
}

test('has the arena, the desk and the survey', () => {
  for (const path of [
    'src/app/arena/arena-view.tsx',
    'src/desk/early-desk.ts',
    'src/core/survey.ts',
    'react-dom/client',
  ]) {
    expect(LOADED.has(path), path).toBe(true);
  }
});

test.each([
  ['what checks', /^src\/core\/checks\/(checks\.ts|geometry|line|sizes|placing|class|results\/(?!waived))/],
  ['rule books', /^assets\/rulebooks|^src\/core\/checks\/(rulebooks\/(?!band)|findings\/(?!thing-words))/],
  ['hoof prints', /^src\/core\/(survey-prints|ride\/(prints|stepped-prints|stride-plan|print-notes))\.ts/],
  [
    'what only other stages paint',
    /^src\/app\/arena\/(layers\/\w+-painters|painters\/(paint-(prints|horse|ghost|carries)|sweep-mark))(?<!later-painters)\.ts/,
  ],
  ['what reads files', /^src\/core\/(files\/(?!write)|course\/schema)|^zod/],
  ['what clips polygons', /^src\/core\/plane\/clip\.ts|^polygon-clipping/],
  ['sheets', /^src\/sheets|^pdfkit/],
  ['panels of a stage', /^src\/app\/(set|day|post)\//],
  ['the strip', /^src\/app\/strip\/strip\.tsx/],
  ['what opens and saves files', /^src\/app\/file\/(files|file-menu)|^browser-fs-access/],
  ['more of Konva than its core', /^react-konva$|^konva(\/lib\/(index-umd|_FullInternals|shapes|filters).*)?$/],
  [
    'what snaps and measures',
    /^src\/desk\/(snapping\/snap(-sources)?\.ts|measuring\/(?!tape\.)|constraints\/constraint-(suggestions|candidates))/,
  ],
  ['overlays that a hand brings up', /^src\/app\/arena\/overlays\/(loupe|nudge-pad|chosen-menu|along-bar)/],
  ['looks of panels and pages', /^src\/app\/styles\/(check|strip|ride|post|change|first|later|forced-later)/],
  [
    'what opens and makes links',
    /^src\/(core\/files\/(course-link|link)|app\/link\/(follow|linked-notice|link-dialog))|^fflate/,
  ],
  ['letters', /typeface\.css/],
  [
    'words of the help and of later rooms',
    /^src\/words\/(help|day|post|file|set|ride|change|check|findings|first-visit|strip|link)\.ts/,
  ],
])('has not %s', (_, pattern) => {
  const early = [...LOADED.keys()].filter((path) => pattern.test(path));
  expect(early.map(chain)).toEqual([]);
});
