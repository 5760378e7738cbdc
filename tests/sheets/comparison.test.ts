import { describe, expect, test } from 'vitest';
import { MEASURES } from '../../src/core/change/measures.ts';
import type { Course } from '../../src/core/course/course.ts';
import { shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { branchLayout, renameLayout } from '../../src/core/course/layouts.ts';
import { comparisonPages } from '../../src/sheets/comparison.ts';
import { wordsBounds } from '../../src/sheets/lettering.ts';
import type { Pages } from '../../src/sheets/sheet.ts';
import { SEEDS } from './samples.ts';

function seed(name: string): Course {
  const course = SEEDS[name];
  if (course === undefined) throw new Error(`there is no seed ${name}`);
  return course;
}

function textOf({ pages }: Pages): string {
  return pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []))).join(' ');
}

const HOME = seed('home-six-poles');
const [A, B] = HOME.layouts.map(({ id }) => id);
const BOTH = [A ?? '', B ?? ''];

describe('layouts compared on paper', () => {
  test('have a row for each chosen measure, with the better one marked by a sign', () => {
    const go = MEASURES.filter(({ id }) => id === 'go' || id === 'poles');
    const text = textOf(comparisonPages(HOME, { layouts: BOTH, measures: go, paper: 'letter' }));
    expect(text).toContain('One go ✓ 45 s 1 min 08 s');
    expect(text).toContain('Poles 6 6');
    expect(text).not.toContain('Transitions');
    expect(text).not.toContain('Difficulty');
  });

  test('tell what differs on the ground and in the go, and how the difficulty is made up', () => {
    const course = changeLeg(branchLayout(seed('larkhollow-novice'), { title: 'Later' }), 'leg-2', { lead: 'left' });
    const moved = shiftByKeys(course, [course.layouts[1]?.ride.legs[0]?.obstacle ?? ''], 3, 4);
    const text = textOf(comparisonPages(moved, { layouts: ['layout-1', moved.current], paper: 'a4' }));
    expect(text).toMatch(/From Layout 1 to Later: on the ground – [^–]*moved 16' 4¾" to the north-east, from/);
    expect(text).toContain('on the left lead, was on the lead of the bend');
    expect(text).toMatch(/How the difficulty is made up[^:]*all points are estimates/);
    expect(text).toContain('Things to begin: Layout 1');
  });

  test('say so where nothing differs', () => {
    const text = textOf(comparisonPages(branchLayout(HOME), { layouts: [HOME.current, 'layout-1'], paper: 'letter' }));
    expect(text).toContain('The two lie the same on the ground.');
    expect(text).toContain('The two are ridden alike.');
  });

  test.each(['letter', 'a4'] as const)('keep every word inside the margins on %s, also with long names', (paper) => {
    const long = renameLayout(
      HOME,
      BOTH[0] ?? '',
      'A layout with a name so long that it has to be broken into several lines of its column',
    );
    const { pages } = comparisonPages(branchLayout(long, { title: 'Third' }), {
      layouts: [...BOTH, 'layout-1'],
      paper,
    });
    for (const { marks, width, height } of pages) {
      for (const mark of marks) {
        if (mark.kind !== 'words') continue;
        const box = wordsBounds(mark);
        expect(box.minX, mark.text).toBeGreaterThan(11);
        expect(box.maxX, mark.text).toBeLessThanOrEqual(width - 11);
        expect(box.maxY, mark.text).toBeLessThanOrEqual(height - 5.5);
      }
    }
  });
});
