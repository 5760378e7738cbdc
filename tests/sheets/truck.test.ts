import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { truckLoad } from '../../src/core/go/truck-load.ts';
import { survey } from '../../src/core/survey.ts';
import { PAPERS, type PageOptions, type Pages } from '../../src/sheets/sheet.ts';
import { truckList } from '../../src/sheets/truck.ts';
import { DAY } from '../core/change/larkhollow-day.ts';
import { STARTERS } from '../core/ride/courses.ts';
import { misplaced, textOf, wordsOn } from './entered.ts';
import { SAMPLES } from './samples.ts';

function pagesOf(course: Course, options: PageOptions = { paper: 'letter', orientation: 'fit' }): Pages {
  const drawn = truckList.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

const CASES = STARTERS.flatMap(([name, course]) =>
  PAPERS.flatMap((paper) => ['layout', 'day'].map((what) => [name, paper, what, course] as const)),
);

describe.each(CASES)('the truck list of %s on %s for the %s', (_, paper, what, course) => {
  const pages = pagesOf(course, { paper, orientation: 'fit', chosen: { for: what } });

  test('has no words on others, none off the paper, and none too small to read', () => {
    expect(misplaced(pages)).toEqual([]);
  });

  test('has a box for every thing and every tool', () => {
    const ids =
      what === 'day' && course.day !== undefined ? course.day.classes.map(({ layout }) => layout) : [course.current];
    const { things, risers, tools } = truckLoad(course, ids);
    const boxes = pages.pages.flatMap(({ marks }) =>
      marks.filter((mark) => mark.kind === 'line' && mark.points.length === 5),
    );
    expect(boxes.length).toBe(things.length + risers.length + tools.length);
    const text = textOf(pages).replaceAll('\n', ' ');
    for (const { title } of [...things, ...risers]) expect(text).toContain(title);
  });
});

test('the list of a day has a column for each layout, and loads the most that lies in one', () => {
  const pages = pagesOf(DAY, { paper: 'letter', orientation: 'fit', chosen: { for: 'day' } });
  const text = textOf(pages).replaceAll('\n', ' ');
  expect(text).toContain('Truck list for the day: Larkhollow, a day of trail');
  expect(text).toContain('what lies in one is used again in the next');
  expect(text).toContain('At most');
});

test('layouts whose titles leave no room for what is loaded have no columns of their own', () => {
  const layouts = DAY.layouts.map((layout) => ({ ...layout, title: `${layout.id}-${'Langhaariger'.repeat(8)}` }));
  const course = { ...DAY, layouts: layouts as unknown as Course['layouts'] };
  const pages = pagesOf(course, { paper: 'letter', orientation: 'fit', chosen: { for: 'day' } });
  expect(misplaced(pages)).toEqual([]);
  expect(textOf(pages).replaceAll('\n', ' ')).toContain('Poles, 12 ft');
});

test('what is missing is told in the table and below it', () => {
  const [, course = DAY] = STARTERS.find(([name]) => name.includes('faults')) ?? [];
  const text = textOf(pagesOf(course));
  expect(text).toMatch(/Missing: 1 of Poles/);
});

test('tools and spares say that they have no source', () => {
  expect(textOf(pagesOf(DAY))).toContain(
    'Spares (one for ten in use) and tools are common practice, without a source.',
  );
});

test('an empty layout has a list that says so', () => {
  const { pages } = pagesOf(SAMPLES.empty as Course);
  expect(wordsOn(pages[0]).map(({ text }) => text)).toContain('Nothing lies in this layout.');
});
