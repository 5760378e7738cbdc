/** What the judge's card and the scribe's sheet have to keep, whatever the class. */
import { expect } from 'vitest';
import type { Course, Entry } from '../../src/core/course/course.ts';
import { memoizeByText } from '../../src/core/memo/by-identity.ts';
import { boundsIntersect } from '../../src/core/plane/ring.ts';
import { survey } from '../../src/core/survey.ts';
import { SMALLEST_FONT_SIZE, type WordsMark, wordsBounds } from '../../src/sheets/lettering.ts';
import type { Page, PageOptions, Pages, Sheet } from '../../src/sheets/sheet.ts';
import { STARTERS } from '../core/ride/courses.ts';

export const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };
const MARGIN = 12;

export const PAPERS_HELD: readonly (readonly [string, PageOptions])[] = [
  ['Letter', LETTER],
  ['A4', { paper: 'a4', orientation: 'landscape' }],
  ['Legal', { paper: 'legal', orientation: 'fit', chosen: { list: 'every' } }],
  ['Letter upright', { paper: 'letter', orientation: 'portrait', chosen: { names: 'number' } }],
];

export function starter(name: string): Course {
  const found = STARTERS.find(([file]) => file.startsWith(`${name}.`));
  if (found === undefined) throw new Error(`there is no starter ${name}`);
  return found[1];
}

/** The course with so many legs: those that it has, again and again. */
export function withLegs(course: Course, count: number): Course {
  return knownCourse(course, String(count));
}

/** One course for a count, so that its line is worked out once. */
const knownCourse = memoizeByText((course: Course, wanted: string): Course => {
  const count = Number(wanted);
  const [layout, ...others] = course.layouts;
  const { legs } = layout.ride;
  const ridden = Array.from({ length: count }, (_, i) => {
    const leg = legs[i % legs.length];
    if (leg === undefined) throw new Error('the course has no leg');
    return { ...leg, id: `leg-${i + 1}` };
  });
  return { ...course, layouts: [{ ...layout, ride: { ...layout.ride, legs: ridden } }, ...others] };
});

export function withEntries(course: Course, list: readonly Entry[]): Course {
  return { ...course, class: { ...course.class, entries: list.length, list } };
}

export function entriesOf(count: number): readonly Entry[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `entry-${i}`,
    number: String(401 + i),
    rider: 'Juniper Hale',
    horse: 'Copper Kettle',
  }));
}

export function pagesOf(sheet: Sheet, course: Course, options = LETTER): Pages {
  const drawn = sheet.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

export function wordsOn({ marks }: Page): readonly WordsMark[] {
  return marks.filter((mark): mark is WordsMark => mark.kind === 'words');
}

export function textsOf({ pages }: Pages): readonly string[] {
  return pages.flatMap((page) => wordsOn(page).map(({ text }) => text));
}

/** Thick rules across the whole card: one under each row, and one under the head of the columns. */
function rowEnds({ width, marks }: Page): readonly number[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'line' || mark.width !== 0.5) return [];
    const [a, b] = mark.points;
    const isAcross = a?.y === b?.y && a?.x === MARGIN && Math.abs((b?.x ?? 0) - (width - MARGIN)) < 1e-6;
    return isAcross && a !== undefined ? [a.y] : [];
  });
}

/** How many rows each page has, and how high one is. */
export function rowsOf({ pages }: Pages): readonly { readonly count: number; readonly height: number }[] {
  return pages.map((page) => {
    // The head of the sheet ends with such a rule too.
    const [, head = 0, ...ends] = rowEnds(page).toSorted((a, b) => a - b);
    return { count: ends.length, height: (ends[0] ?? head) - head };
  });
}

/** No letters are too small, lie on others, or leave the paper's margin. */
export function expectLegible({ pages }: Pages): void {
  for (const page of pages) {
    const own = wordsOn(page);
    for (const [i, mark] of own.entries()) {
      const box = wordsBounds(mark);
      expect(mark.size, mark.text).toBeGreaterThanOrEqual(SMALLEST_FONT_SIZE);
      expect(box.minX, mark.text).toBeGreaterThan(MARGIN - 1);
      expect(box.maxX, mark.text).toBeLessThan(page.width - MARGIN + 1);
      expect(box.maxY, mark.text).toBeLessThan(page.height - MARGIN + 2);
      for (const other of own.slice(i + 1)) {
        expect(boundsIntersect(box, wordsBounds(other), -0.05), `"${mark.text}" on "${other.text}"`).toBe(false);
      }
      for (const line of page.marks) {
        if (line.kind !== 'line' || line.points[0]?.x !== line.points[1]?.x) continue;
        const [x = 0, from = 0, to = 0] = [line.points[0]?.x, line.points[0]?.y, line.points[1]?.y];
        const isAcross = x > box.minX + 0.05 && x < box.maxX - 0.05 && to > box.minY && from < box.maxY;
        expect(isAcross, `a line through "${mark.text}"`).toBe(false);
      }
    }
  }
}
