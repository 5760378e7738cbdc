import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { boundsIntersect } from '../../src/core/plane/ring.ts';
import { setOutOf } from '../../src/core/setout/plan-setout.ts';
import { readingWords } from '../../src/core/setout/words/reading-words.ts';
import { survey } from '../../src/core/survey.ts';
import { type WordsMark, wordsBounds } from '../../src/sheets/lettering.ts';
import { ringCard } from '../../src/sheets/ring.ts';
import type { Page, PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { STARTERS } from '../core/ride/courses.ts';
import { courseOf } from '../core/setout/sample-plans.ts';

const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };
const A4: PageOptions = { paper: 'a4', orientation: 'landscape' };
/** 24 points, mm. */
const LARGE = 24 * (25.4 / 72);

function pagesOf(course: Course, options = LETTER): Pages {
  const drawn = ringCard.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

function wordsOn({ marks }: Page): readonly WordsMark[] {
  return marks.filter((mark): mark is WordsMark => mark.kind === 'words');
}

const CASES = STARTERS.flatMap(([name, course]) => [
  [`${name}, Letter`, course, LETTER] as const,
  [`${name}, A4 lying`, { ...course, crew: { people: 2, ...course.crew, marked: 'm' } } as Course, A4] as const,
]);

describe.each(CASES)('the ring cards of %s', (_, course, options) => {
  const of = survey(course);
  const plan = setOutOf(of);
  const pages = pagesOf(course, options);
  const words = pages.pages.flatMap(wordsOn);

  test('have one card an obstacle in the order of the go', () => {
    const titles = words.filter(
      ({ size, weight, text }) => size === 6 && weight === 'bold' && !text.endsWith('continued'),
    );
    expect(titles.length).toBe(of.obstacles.filter(({ pieces }) => pieces.length > 0).length);
    const numbers = titles.flatMap(({ text }) => /^\d+/.exec(text)?.map(Number) ?? []);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
  });

  test('have every gap of the plan in figures of 24 points and more, and where it is taped in the drawing', () => {
    const { marked } = plan.crew;
    const large = new Set(words.filter(({ size }) => size >= LARGE).map(({ text }) => text));
    const isLength = ({ size, weight, align }: WordsMark) => size <= 4.95 && weight === 'bold' && align === 'middle';
    const drawn = words.filter(isLength).map(({ text }) => text);
    for (const { plan: length } of plan.gaps) {
      expect([...large]).toContain(readingWords(length, marked));
      expect(drawn).toContain(readingWords(length, marked));
    }
    expect(drawn.length).toBeGreaterThanOrEqual(plan.gaps.length);
  });

  test('have no letters on others, none off the paper and none on a cut', () => {
    for (const page of pages.pages) {
      const own = wordsOn(page);
      const cuts = page.marks.flatMap((mark) =>
        mark.kind === 'line' && mark.dash?.[0] === 2 && mark.width === 0.2 ? [mark.points] : [],
      );
      expect(cuts.length).toBeGreaterThan(0);
      for (const [i, mark] of own.entries()) {
        const box = wordsBounds(mark);
        expect(box.minX, mark.text).toBeGreaterThan(4);
        expect(box.minY, mark.text).toBeGreaterThan(4);
        expect(box.maxX, mark.text).toBeLessThan(page.width - 4);
        expect(box.maxY, mark.text).toBeLessThan(page.height - 4);
        for (const [a, b] of cuts) {
          const isUpright = a?.x === b?.x;
          const isClear = isUpright
            ? box.maxX < (a?.x ?? 0) || box.minX > (a?.x ?? 0)
            : box.maxY < (a?.y ?? 0) || box.minY > (a?.y ?? 0);
          expect(isClear, `"${mark.text}" on a cut`).toBe(true);
        }
        for (const other of own.slice(i + 1)) {
          expect(boundsIntersect(box, wordsBounds(other), -0.05), `"${mark.text}" on "${other.text}"`).toBe(false);
        }
      }
    }
  });
});

test('a gap on the line has the band of its gait, and says that the horse goes there', () => {
  const run = courseOf([{ kind: 'run', values: { poles: 3, gap: 3 * FOOT, gait: 'jog' }, at: [60, 40, 0] }]);
  const text = pagesOf(run)
    .pages.flatMap((page) => wordsOn(page).map((mark) => mark.text))
    .join(' ')
    .replaceAll('\u00a0', ' ');
  expect(text).toContain('where the horse goes');
  expect(text).toMatch(/Must stay .*\d.* to .*\d/);
  expect(text).toContain(`3' 0"`);
});

test('an obstacle without a gap has its tapes from the walls', () => {
  const text = pagesOf(courseOf([{ kind: 'bridge', at: [60, 40, 0] }]))
    .pages.flatMap((page) => wordsOn(page).map((mark) => mark.text))
    .join(' ');
  expect(text).toMatch(/wall/);
});

test('an empty layout has one page that says so', () => {
  const { pages } = pagesOf(blankCourse());
  expect(pages.length).toBe(1);
  expect(wordsOn(pages[0]).map(({ text }) => text)).toEqual(['Nothing lies in this layout.']);
});
