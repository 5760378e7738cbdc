import { describe, expect, test } from 'vitest';
import { changeEntry, moveEntry } from '../../src/core/course/edit-entries.ts';
import { survey } from '../../src/core/survey.ts';
import { gateSheet } from '../../src/sheets/gate.ts';
import { PAPERS, type Page, type PageOptions, type Pages } from '../../src/sheets/sheet.ts';
import { DAY } from '../core/change/larkhollow-day.ts';
import { entered, misplaced, textOf, wordsOn } from './entered.ts';
import { SAMPLES } from './samples.ts';

const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };

function pagesOf(course: ReturnType<typeof entered>, options = LETTER): Pages {
  const drawn = gateSheet.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

/** Boxes to tick: closed squares of 5 mm. */
function boxesOn({ marks }: Page): number {
  return marks.filter((mark) => mark.kind === 'line' && mark.points.length === 5).length;
}

const CASES = [3, 24, 120].flatMap((count) => PAPERS.map((paper) => [count, paper] as const));

describe.each(CASES)('the gate sheet of %i entries on %s', (count, paper) => {
  const course = entered(count);
  const pages = pagesOf(course, { paper, orientation: 'fit' });
  const riding = (course.class.list ?? []).filter(({ scratched }) => scratched !== true);

  test('has everybody of the list in order, and four boxes for each who rides', () => {
    const numbers = pages.pages
      .flatMap(wordsOn)
      .filter(({ text, weight }) => weight === 'bold' && /^\d{3}$/.test(text));
    expect(numbers.map(({ text }) => text)).toEqual((course.class.list ?? []).map(({ number }) => number));
    const drags = Math.floor((riding.length - 1) / 25);
    expect(pages.pages.reduce((sum, page) => sum + boxesOn(page), 0)).toBe(4 * riding.length + drags);
  });

  test('has no words on others, none off the paper, and none too small to read', () => {
    expect(misplaced(pages)).toEqual([]);
  });

  test('says at the foot of a page who begins the next', () => {
    for (const [i, page] of pages.pages.entries()) {
      const foot = wordsOn(page).find(({ text }) => text.startsWith('For the gate. Times are estimates.'))?.text ?? '';
      const next = pages.pages[i + 1];
      if (next === undefined) expect(foot).not.toContain('Next page');
      else {
        const [, called = ''] = /Next page: (\d+|Ground)/.exec(foot) ?? [];
        const bold = wordsOn(next).filter(({ weight, at, text }) => weight === 'bold' && at.y > 35 && text !== '');
        expect(bold[0]?.text.startsWith(called) && called !== '').toBe(true);
      }
    }
  });
});

test('who is scratched is struck out where they stand, with no boxes and no time', () => {
  const moved = moveEntry(entered(6), 'entry-5', 1);
  const [page] = pagesOf(moved).pages;
  const words = wordsOn(page);
  const scratched = words.find(({ text }) => text === '105');
  const others = words.filter(({ text }) => /^10\d$/.test(text)).toSorted((a, b) => a.at.y - b.at.y);
  expect(others.map(({ text }) => text)).toEqual(['101', '105', '102', '103', '104', '106']);
  const strikes = page.marks.flatMap((mark) =>
    mark.kind === 'line' && mark.width === 0.4 && mark.points.length === 2 ? [mark.points] : [],
  );
  const through = (y: number) => strikes.some(([a]) => a !== undefined && Math.abs(a.y - y) < 3);
  expect(through((scratched?.at.y ?? 0) - 1.6)).toBe(true);
  expect(through((others[2]?.at.y ?? 0) - 1.6)).toBe(false);
  expect(words.filter(({ text }) => text === 'Scratched').length).toBe(1);
});

test('who is late has the minutes in the notes', () => {
  expect(textOf(pagesOf(changeEntry(entered(6), 'entry-2', { late: 420 })))).toContain('7 min late');
});

test('the next class of the day is told at the end', () => {
  const [first, second] = DAY.day?.classes ?? [];
  const course = {
    ...DAY,
    current: first?.layout ?? '',
    class: { ...DAY.class, title: first?.title ?? '', entries: 4 },
  };
  expect(textOf(pagesOf(course))).toContain(`Next class: ${second?.title}`);
  expect(textOf(pagesOf(entered(6)))).not.toContain('Next class');
});

test('a class without entries has one page that says so', () => {
  const { pages } = pagesOf(SAMPLES.empty as ReturnType<typeof entered>);
  expect(pages.length).toBe(1);
  expect(
    wordsOn(pages[0])
      .map(({ text }) => text)
      .join(' '),
  ).toContain('Nobody is entered yet.');
});
