import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import type { LengthUnit } from '../../src/core/measure/quantity.ts';
import { boundsIntersect } from '../../src/core/plane/ring.ts';
import { setOutOf } from '../../src/core/setout/plan-setout.ts';
import { isNothing, readingWords } from '../../src/core/setout/words/reading-words.ts';
import { partNames, stepWords } from '../../src/core/setout/words/setout-words.ts';
import { survey } from '../../src/core/survey.ts';
import { backingRadius, type WordsMark, wordsBounds } from '../../src/sheets/lettering.ts';
import { setUp } from '../../src/sheets/setout.ts';
import type { Page, PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { STARTERS } from '../core/ride/courses.ts';
import { drawingOf, onPaper } from './on-paper.ts';

const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };

/** The same course with a tape that is marked in the given unit. */
function tapedIn(course: Course, marked: LengthUnit): Course {
  return { ...course, crew: { people: 2, ...course.crew, marked } };
}

function pagesOf(course: Course, options = LETTER): Pages {
  const drawn = setUp.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

function wordsOn({ marks }: Page): readonly WordsMark[] {
  return marks.filter((mark): mark is WordsMark => mark.kind === 'words');
}

/** Letters as a reader has them: lines joined, no-break spaces as spaces. */
function textOf(pages: readonly Page[]): string {
  return pages
    .flatMap((page) => wordsOn(page).map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

/** Pages after the arena and its words: the parts. */
function partPagesOf({ pages }: Pages): readonly Page[] {
  return pages.filter((page) => textOf([page]).includes('Each drawing is to its own scale.'));
}

const CASES = STARTERS.flatMap(([name, course]) => [
  [`${name}, Letter`, course, LETTER] as const,
  [`${name}, A4, metric tapes`, tapedIn(course, 'm'), { paper: 'a4', orientation: 'portrait' } as const] as const,
]);

describe.each(CASES)('the set-up sheet of %s', (_, course, options) => {
  const of = survey(course);
  const plan = setOutOf(of);
  const pages = pagesOf(course, options);
  const parts = partPagesOf(pages);
  const text = textOf(parts);

  test('tells every step once, with its number, and every check with a box', () => {
    for (const part of plan.parts) {
      const names = partNames(of, plan, part);
      for (const step of part.steps) {
        // Poles of different parts may have the same words.
        const { lay } = stepWords(names, step);
        const alike = plan.parts.flatMap((each) =>
          each.steps.filter((other) => stepWords(partNames(of, plan, each), other).lay === lay),
        );
        expect(text.split(lay).length - 1, lay).toBe(alike.length);
      }
    }
    const steps = plan.parts.flatMap((part) => part.steps);
    const hangs = parts.flatMap((page) => wordsOn(page).filter((mark) => /^\d+\.$/.test(mark.text)));
    expect(hangs.length).toBe(steps.length);
    const boxes = parts.flatMap((page) => wordsOn(page).filter((mark) => mark.text === '\u25a1'));
    expect(boxes.length).toBeGreaterThanOrEqual(steps.flatMap(({ checks }) => checks).length);
    expect(text.match(/Check /g)?.length ?? 0).toBe(steps.flatMap(({ checks }) => checks).length);
  });

  test('numbers every piece once in the drawings, and letters every end in each drawing that shows it', () => {
    const discs = parts.flatMap((page) => wordsOn(page).filter(({ backing }) => backing === 'disc'));
    const wanted = plan.parts.flatMap((part) => part.steps.map(({ number }) => String(number)));
    expect(discs.map((disc) => disc.text).toSorted()).toEqual(wanted.toSorted());
  });

  test('has the readings of the plan at its tapes, and no others', () => {
    const { marked } = plan.crew;
    const wanted = new Set<string>();
    for (const { observations } of plan.parts.flatMap((part) => part.steps)) {
      for (const each of observations) if (!isNothing(each)) wanted.add(readingWords(Math.abs(each.reading), marked));
    }
    const figure = marked === 'ft' ? /^(?:\d+' )?(?:\d+[¼½¾]?|[¼½¾])"/ : /^\d+\.\d{2,3} m/;
    const drawn = parts.flatMap((page) =>
      wordsOn(page).flatMap(({ text: own, weight, align }) =>
        weight === 'bold' && align === 'middle' ? (figure.exec(own)?.[0] ?? []) : [],
      ),
    );
    expect(new Set(drawn)).toEqual(wanted);
  });

  test('has no letters on others, and none off the paper', () => {
    for (const page of pages.pages) {
      const words = wordsOn(page);
      const boxes = words.map((mark) => wordsBounds(mark));
      for (const [i, box] of boxes.entries()) {
        const mark = words[i] as WordsMark;
        expect(box.minX, mark.text).toBeGreaterThanOrEqual(4);
        expect(box.maxX, mark.text).toBeLessThanOrEqual(page.width - 4);
        expect(box.minY, mark.text).toBeGreaterThanOrEqual(4);
        expect(box.maxY, mark.text).toBeLessThanOrEqual(page.height - 4);
        for (const [j, other] of boxes.entries()) {
          if (j <= i) continue;
          expect(boundsIntersect(box, other, -0.05), `"${mark.text}" on "${words[j]?.text}"`).toBe(false);
        }
      }
    }
  });

  test('covers no letter with a disc', () => {
    for (const page of pages.pages) {
      const words = wordsOn(page);
      for (const disc of words.filter(({ backing }) => backing === 'disc')) {
        const box = wordsBounds(disc);
        const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
        for (const other of words.filter((each) => each !== disc)) {
          const { minX, maxX, minY, maxY } = wordsBounds(other);
          const far = Math.hypot(
            Math.max(minX - centre.x, 0, centre.x - maxX),
            Math.max(minY - centre.y, 0, centre.y - maxY),
          );
          expect(far, `${disc.text} on "${other.text}"`).toBeGreaterThan(backingRadius(disc) * 0.9);
        }
      }
    }
  });

  test('strikes out no letters with the line from a label to what it is about', () => {
    for (const page of parts) {
      const words = wordsOn(page);
      const leaders = page.marks.flatMap((mark) =>
        mark.kind === 'line' && mark.ink === 'words' && mark.width === 0.18 ? [mark.points] : [],
      );
      for (const [a, b] of leaders) {
        if (a === undefined || b === undefined) continue;
        for (const { text: own, ...rest } of words) {
          const box = wordsBounds({ text: own, ...rest });
          const isStruck = Array.from({ length: 41 }, (_each, i) => i / 40).some((t) => {
            const [x, y] = [a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t];
            return x > box.minX + 0.6 && x < box.maxX - 0.6 && y > box.minY + 0.6 && y < box.maxY - 0.6;
          });
          expect(isStruck, own).toBe(false);
        }
      }
    }
  });

  test('is legible at arm’s length: steps at 10 points and more, lengths at 10 and more', () => {
    for (const page of parts) {
      for (const { text: own, size } of wordsOn(page)) {
        const isSmall = /^1:\d+$|^Each drawing|^Page \d|^N$/.test(own);
        if (!isSmall) expect(size, own).toBeGreaterThanOrEqual(10 * (25.4 / 72));
      }
    }
  });
});

describe('the first page of a set-up sheet', () => {
  const [, course] = STARTERS[0] ?? ['', blankCourse()];
  const of = survey(course);
  const plan = setOutOf(of);
  const pages = pagesOf(course);

  test('shows the first piece of every part to scale, in bold, and numbers the parts in walking order', () => {
    const { scale } = drawingOf(pages);
    expect(scale).toBeGreaterThan(0);
    const bold = pages.pages[0].marks.filter((mark) => mark.kind === 'line' && mark.width === 0.9);
    expect(bold.length).toBeGreaterThanOrEqual(plan.parts.length);
    for (const { steps } of plan.parts) {
      const piece = of.pieces.find(({ key }) => key === steps[0].piece);
      const corner = onPaper(pages, piece?.footprint[0] ?? { x: 0, y: 0 });
      const isDrawn = bold.some(
        (mark) => mark.kind === 'line' && mark.points.some(({ x, y }) => Math.hypot(x - corner.x, y - corner.y) < 1e-6),
      );
      expect(isDrawn, steps[0].piece).toBe(true);
    }
    const discs = wordsOn(pages.pages[0]).filter(({ backing }) => backing === 'disc');
    expect(discs.map(({ text }) => Number(text)).toSorted((a, b) => a - b)).toEqual(plan.parts.map((_, i) => i + 1));
  });

  test('names the walls, the tools and the cautions', () => {
    const text = textOf(pages.pages);
    for (const wall of ['South wall', 'East wall', 'North wall', 'West wall']) expect(text).toContain(wall);
    expect(text).toContain('What is needed');
    expect(text).toContain('marked in feet and inches');
    expect(text).toContain('chocks, two for each round pole');
    expect(text).toContain('Inside to inside means from near face to near face');
  });

  test('keeps its scale as a promise: one that does not fit is refused with the nearest', () => {
    const drawn = setUp.draw(of, { ...LETTER, scale: 20 });
    expect(drawn.kind).toBe('too-big');
    if (drawn.kind !== 'too-big') return;
    expect(pagesOf(course, { ...LETTER, scale: drawn.nearest }).drawing?.scale).toBe(drawn.nearest);
  });

  test('counts all of its pages', () => {
    const { length } = pages.pages;
    pages.pages.forEach((page, i) => {
      expect(textOf([page])).toContain(`Page ${i + 1} of ${length}`);
    });
  });

  test('says so where nothing lies', () => {
    expect(textOf(pagesOf(blankCourse()).pages)).toContain('Nothing lies in this layout.');
  });

  test('tells someone alone how the zero end is held', () => {
    const alone = { ...course, crew: { people: 1 as const } };
    const text = textOf(pagesOf(alone).pages);
    expect(text).toContain('the zero end on a nail or under a weight');
    expect(text).toContain('Alone: ');
  });
});
