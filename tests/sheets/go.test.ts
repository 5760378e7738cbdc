import { describe, expect, test } from 'vitest';
import { addEntries, clearEntries } from '../../src/core/course/edit-entries.ts';
import { goTimesOf, goTimeWords } from '../../src/core/go/go-times.ts';
import { survey } from '../../src/core/survey.ts';
import { dayFolder } from '../../src/sheets/folder-plan.ts';
import { orderOfGo } from '../../src/sheets/go.ts';
import { PAPERS, type PageOptions, type Pages } from '../../src/sheets/sheet.ts';
import { DAY } from '../core/change/larkhollow-day.ts';
import { entered, misplaced, textOf, wordsOn } from './entered.ts';
import { SAMPLES } from './samples.ts';

const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };

function pagesOf(course: ReturnType<typeof entered>, options = LETTER): Pages {
  const drawn = orderOfGo.draw(survey(course), options);
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

const CASES = [3, 24, 120].flatMap((count) =>
  PAPERS.flatMap((paper) => (['fit', 'landscape'] as const).map((orientation) => [count, paper, orientation] as const)),
);

describe.each(CASES)('the order of go of %i entries on %s, %s', (count, paper, orientation) => {
  const course = entered(count);
  const of = survey(course);
  const pages = pagesOf(course, { paper, orientation });

  test('has every number once, in the order of go, and the time of each', () => {
    const large = pages.pages.flatMap(wordsOn).filter(({ text, weight }) => weight === 'bold' && /^\d{3}$/.test(text));
    const riding = (course.class.list ?? []).filter(({ scratched }) => scratched !== true);
    expect(large.map(({ text }) => text)).toEqual(riding.map(({ number }) => number));
    const text = textOf(pages);
    const times = goTimesOf(of);
    for (const row of times.rows) expect(text).toContain(goTimeWords(times, row.from));
  });

  test('has no words on others, none off the paper, and none too small to read', () => {
    expect(misplaced(pages)).toEqual([]);
  });

  test('repeats its head on every page, and numbers them', () => {
    const { length } = pages.pages;
    for (const [i, page] of pages.pages.entries()) {
      const texts = wordsOn(page).map(({ text }) => text);
      expect(texts).toContain('Rider and horse');
      if (length > 1) expect(texts).toContain(`Page ${i + 1} of ${length}`);
      expect(page.about).toBe(`Order of go: Open Trail, page ${i + 1} of ${length}.`);
    }
  });
});

test('a short list is set in large letters on one page, a long one in two columns on several', () => {
  const [few, many, most] = [3, 24, 120].map((count) => pagesOf(entered(count)));
  expect([few, many].map((each) => each?.pages.length)).toEqual([1, 1]);
  expect(most?.pages.length).toBe(3);
  const largest = (pages: Pages | undefined) =>
    Math.max(...(pages?.pages.flatMap(wordsOn) ?? []).filter(({ text }) => text === '101').map(({ size }) => size));
  expect(largest(few)).toBeGreaterThan(8);
  expect(largest(many)).toBeGreaterThan(5);
  expect(largest(most)).toBeLessThan(5);
  const columns = new Set(
    (most?.pages.flatMap(wordsOn) ?? []).filter(({ text }) => text === 'No.').map(({ at }) => at.x),
  );
  expect(columns.size).toBe(2);
});

test('drags stand where they fall, with the go after them', () => {
  const { pages } = pagesOf(entered(120));
  const drags = pages.flatMap(wordsOn).filter(({ text }) => text === 'Ground dragged, about 10 min');
  expect(drags.length).toBe(4);
  for (const page of pages) {
    const own = wordsOn(page);
    for (const drag of own.filter(({ text }) => text.startsWith('Ground'))) {
      const isBelow = ({ at, text }: (typeof own)[number]) => /^\d{3}$/.test(text) && at.y > drag.at.y;
      expect(own.some((mark) => isBelow(mark) && Math.abs(mark.at.x - drag.at.x) < 30)).toBe(true);
    }
  }
});

test('who is scratched is named below, and has no turn', () => {
  const text = textOf(pagesOf(entered(24)));
  expect(text).toContain('Scratched: 105.');
  expect(text).not.toContain('Piet Aldous (5)');
});

test('the times can be left out', () => {
  const text = textOf(pagesOf(entered(24), { ...LETTER, chosen: { times: 'none' } }));
  expect(text).toContain('Wren Halden (1)');
  expect(text).not.toContain('9:34 am');
});

test('without a start the times count from the first go, and that is said', () => {
  const course = entered(3);
  const { starts: _, ...rest } = course.class;
  const text = textOf(pagesOf({ ...course, class: rest }));
  expect(text).toContain('+ 0 s');
  expect(text).toContain('Times count from the first go.');
});

test('where only the number of entries is known there is a row to write in for each', () => {
  const pages = pagesOf(clearEntries(entered(3)));
  expect(textOf(pages)).toContain('20 entries');
  const rules = pages.pages[0].marks.filter((mark) => mark.kind === 'line' && mark.width === 0.25);
  expect(rules.length).toBe(20);
});

test('a long name is broken into lines, and nothing of it is lost', () => {
  const rider = 'Wilhelmina '.repeat(10).trim();
  const pages = pagesOf(entered(24, (i) => (i === 2 ? { rider, horse: 'x'.repeat(110) } : {})));
  expect(misplaced(pages)).toEqual([]);
  const text = textOf(pages).replaceAll('\n', ' ');
  expect(text).toContain(rider);
  expect(text.replaceAll(' ', '')).toContain('x'.repeat(110));
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

test('in the folder of a day each class has its own list, from the time of the timetable', () => {
  const [first, second] = DAY.day?.classes ?? [];
  if (first === undefined || second === undefined) throw new Error('the day has no two classes');
  const one = (rider: string) => [{ number: '7', rider, horse: 'Moss' }];
  const course = addEntries(addEntries(DAY, one('Wren Halden'), first.id), one('Oda Fenn'), second.id);
  const folder = dayFolder(course, [{ sheet: orderOfGo, options: LETTER }]);
  const sheets = (folder?.chapters ?? []).flatMap(({ title, content }) => {
    const parts = typeof content === 'function' ? [] : content;
    return parts.flatMap((part) => {
      const drawn = part.title === 'Order of go' && typeof part.content === 'function' ? part.content() : undefined;
      return drawn?.kind === 'pages' ? [{ title, text: textOf(drawn) }] : [];
    });
  });
  const of = (title: string) => sheets.find((each) => each.title.includes(title));
  expect(of(first.title)?.text).toContain('Wren Halden');
  expect(of(second.title)?.text).toContain('Oda Fenn');
  expect(of(second.title)?.text).not.toContain('Wren Halden');
  for (const { title, text } of sheets) expect(text).toContain(title.split(', ').at(-1));
});
