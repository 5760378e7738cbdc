/** Names that are far too long: they wrap, then they are cut, and what the head cuts stands whole in a note. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { survey } from '../../src/core/survey.ts';
import { fewLines, textWidth, wordsBounds } from '../../src/sheets/lettering.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { reportPages } from '../../src/sheets/report-pages.ts';
import { ringCard } from '../../src/sheets/ring.ts';
import { setUp } from '../../src/sheets/setout.ts';
import type { Pages, Sheet } from '../../src/sheets/sheet.ts';
import { wholeNames } from '../../src/sheets/title-block.ts';

function starter(): Course {
  const reading = readCourse(readFileSync('seeds/starters/home-six-poles.course.json', 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

const course = starter();
/** Two thousand letters, in words and in one piece. */
const WORDS = Array.from({ length: 250 }, (_, i) => `trail${100 + i}`).join(' ');
const PIECE = Array.from({ length: 250 }, (_, i) => `Trail${100 + i}`).join('');

function drawnAs(sheet: Sheet, of: Course): Pages {
  const pages = sheet.draw(survey(of), { paper: 'letter', orientation: 'portrait' });
  if (pages.kind === 'too-big') throw new Error(pages.why);
  return pages;
}

/** Whether every letter stands on its paper. */
function expectOnPaper({ pages }: Pages): void {
  for (const { marks, width, height } of pages) {
    for (const mark of marks) {
      if (mark.kind !== 'words') continue;
      const { minX, maxX, minY, maxY } = wordsBounds(mark);
      expect([minX > 0, maxX < width, minY > 0, maxY < height], mark.text).toEqual([true, true, true, true]);
    }
  }
}

function lettersOf({ pages }: Pages): string {
  const texts = pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])));
  return texts.join('').replaceAll(/\s/g, '');
}

describe.each([
  ['many words', WORDS],
  ['one word', PIECE],
])('a name of %s, two thousand letters long', (_, name) => {
  test.each([
    ['class', { ...course, class: { ...course.class, title: name } }],
    ['show', { ...course, class: { ...course.class, show: name } }],
    ['course', { ...course, title: name }],
  ] as const)('as that of the %s is cut in the head and stands whole in a note', (_what, of) => {
    const pages = drawnAs(pattern, of);
    expectOnPaper(pages);
    expect(lettersOf(pages)).toContain(name.replaceAll(' ', ''));
    expect(pages.pages[0].marks.some((mark) => mark.kind === 'words' && mark.text.endsWith('…'))).toBe(true);
    expectOnPaper(drawnAs(ringCard, of));
    expectOnPaper(drawnAs(setUp, of));
  });

  test('of an obstacle takes two lines of its card and of its part', () => {
    const [layout, ...others] = course.layouts;
    const obstacles = layout.obstacles.map((obstacle) => ({ ...obstacle, title: name }));
    const of: Course = { ...course, layouts: [{ ...layout, obstacles }, ...others] };
    expectOnPaper(drawnAs(ringCard, of));
    expectOnPaper(drawnAs(setUp, of));
  });

  test('of a report is cut, with a note below its table', () => {
    const report = reportPages({
      ...{ course, paper: 'a4', orientation: 'portrait', name, facts: [], items: [], remark: 'Remark' },
      ...{ columns: [{ title: 'No', width: 1, align: 'start' }], rows: [[{ text: '1' }]], fontSizes: [4] },
    });
    expectOnPaper(report);
    expect(lettersOf(report)).toContain(name.replaceAll(' ', ''));
  });
});

test('a name that fits is not noted', () => {
  expect(
    wholeNames({ show: 'Larkhollow Summer Show', date: '', name: 'Open Trail', facts: [['Level', 'Open']] }),
  ).toEqual([]);
});

test('few lines are as many as asked for, the last cut', () => {
  const style = { size: 4, most: 2 };
  expect(fewLines('one two', 60, style)).toEqual(['one two']);
  const lines = fewLines(WORDS, 60, style);
  expect(lines).toHaveLength(2);
  expect(lines[1]).toMatch(/ trail\d+ .*…$/);
  for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(60);
});
