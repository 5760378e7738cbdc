import { describe, expect, test } from 'vitest';
import { dayProblem } from '../../src/core/change/day-problem.ts';
import { dayTimes } from '../../src/core/change/day-times.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addBreak, addClass, changeClass } from '../../src/core/course/edit-day.ts';
import { dayPages } from '../../src/sheets/day.ts';
import { wordsBounds } from '../../src/sheets/lettering.ts';
import type { Page, Pages } from '../../src/sheets/sheet.ts';
import { DAY } from '../core/change/larkhollow-day.ts';

const HALF_HOUR = () => 1800;

function pagesOf(course: Course, more: { order?: readonly string[]; paper?: 'letter' | 'a4' } = {}): Pages {
  const problem = dayProblem(course, HALF_HOUR);
  if (problem === undefined) throw new Error('the course has a day');
  const { order = problem.tasks.map(({ id }) => id), paper = 'letter' } = more;
  return dayPages(course, { paper, times: dayTimes(problem, order) });
}

function words({ marks }: Page): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
}

function textOf({ pages }: Pages): string {
  return pages.flatMap(words).join(' ');
}

describe('the timetable of a day on paper', () => {
  test('has every class, break and change-over with its times', () => {
    const text = textOf(pagesOf(DAY));
    expect(text).toContain('7:00 am 7:30 am Set out Walk-jog pattern 30 min');
    expect(text).toMatch(/1 7:30 am 8:02 am Walk-Jog Trail Walk-jog Walk-jog pattern First judge 9 32 min/);
    expect(text).toMatch(/\d+:\d\d pm Lunch 45 min/);
    expect(text).toContain('Take down');
    expect(text.match(/Change over/g)).toHaveLength(5);
    expect(text).toContain('Not kept: The classes of First judge are in 3 blocks; one would be right.');
    expect(text).toContain('Times are estimates');
  });

  test('has another order where one is given, without change-overs between classes of one layout', () => {
    const order = ['walk-jog', 'youth', 'novice', 'open', 'junior', 'amateur'];
    const text = textOf(pagesOf(DAY, { order }));
    expect(text.match(/Change over/g)).toHaveLength(3);
    expect(text.indexOf('Youth Trail')).toBeLessThan(text.indexOf('Novice Trail'));
    expect(text).not.toContain('Not kept');
  });

  test('draws an hour of the day as long as any other, and each class in its time', () => {
    const [first] = pagesOf(DAY).pages;
    const at = (text: string) => {
      const mark = first.marks.find((each) => each.kind === 'words' && each.text === text);
      return mark?.kind === 'words' ? mark.at.x : Number.NaN;
    };
    const hour = at('9 am') - at('8 am');
    expect(at('12 pm') - at('11 am')).toBeCloseTo(hour, 6);
    const boxes = first.marks.flatMap((mark) =>
      mark.kind === 'line' && mark.width === 0.5 && mark.points.length === 5 ? [mark.points] : [],
    );
    expect(boxes).toHaveLength(6);
    // The walk-jog class begins at 7:30.
    expect(boxes[0]?.[0]?.x).toBeCloseTo(at('8 am') - hour / 2, 6);
  });

  test('says when the ground is dragged', () => {
    const long = changeClass(DAY, 'open', { entries: 60 });
    expect(textOf(pagesOf(long))).toMatch(/ground dragged at \d+:\d\d am and \d+:\d\d [ap]m/);
  });

  test('fits on one page for a day of six, and goes on over pages for a day of thirty', () => {
    expect(pagesOf(DAY).pages).toHaveLength(1);
    const many = Array.from({ length: 24 }, (_, i) => i).reduce(
      (course, i) => addClass(course, { layout: i % 2 === 0 ? 'open' : 'novice', title: `Class ${i + 7}`, entries: 1 }),
      DAY,
    );
    const { pages } = pagesOf(addBreak(many), { paper: 'a4' });
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages.slice(0, 2)) expect(words(page)).toContain('Takes');
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
