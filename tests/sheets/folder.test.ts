import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { type BoundChapter, folderPages } from '../../src/sheets/folder.ts';
import { classFolder, dayFolder, type PlannedChapter } from '../../src/sheets/folder-plan.ts';
import { gateSheet } from '../../src/sheets/gate.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import { ringCard } from '../../src/sheets/ring.ts';
import { setUp } from '../../src/sheets/setout.ts';
import type { Chapter, Pages, Sheet } from '../../src/sheets/sheet.ts';
import { truckList } from '../../src/sheets/truck.ts';
import { FONTS } from './fonts.ts';

function starter(name: string): Course {
  const reading = readCourse(readFileSync(`seeds/starters/${name}.course.json`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

const options = { paper: 'letter', orientation: 'fit' } as const;
const asked = (first: Sheet, ...rest: Sheet[]) =>
  [{ sheet: first, options }, ...rest.map((sheet) => ({ sheet, options }))] as const;

function drawn({ title, content }: PlannedChapter): BoundChapter {
  if (typeof content === 'function') {
    const pages = content();
    if (pages.kind === 'too-big') throw new Error(pages.why);
    return { title, content: pages };
  }
  const [first, ...rest] = content;
  return { title, content: [drawn(first), ...rest.map(drawn)] };
}

function bound({ cover, chapters: [first, ...rest] }: ReturnType<typeof classFolder>): Pages {
  return folderPages(cover, [drawn(first), ...rest.map(drawn)]);
}

/** A sheet of so many pages with nothing on them but its name. */
function plainChapter(title: string, count: number): BoundChapter {
  const page = { width: 210, height: 297, marks: [], about: `${title}.` };
  const rest = Array.from({ length: count - 1 }, () => page);
  const words = { title, card: { date: '', author: '' }, substitutions: [] };
  return { title, content: { kind: 'pages', pages: [page, ...rest], ...words } };
}

const cover = {
  head: { show: 'Larkhollow Summer Show', date: '2027-06-13', name: 'Folder of the day', facts: [] },
  paper: 'a4',
  title: 'Folder',
} as const;

function wordsOn(page: Pages['pages'][number] | undefined): readonly string[] {
  return page?.marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])) ?? [];
}

/** The lines of the contents: words, then the page that they name, then the page to which they lead. */
function linesOf({ pages }: Pages) {
  const lines = new Map<object, { text: string; goes: number }>();
  for (const mark of pages.flatMap(({ marks }) => marks)) {
    if (mark.kind !== 'words' || mark.role?.tag !== 'TOCI') continue;
    const before = lines.get(mark.role)?.text;
    lines.set(mark.role, { text: before === undefined ? mark.text : `${before} ${mark.text}`, goes: mark.role.page });
  }
  return [...lines.values()];
}

describe('a folder', () => {
  const chapters = [
    plainChapter('Timetable', 2),
    { title: 'Novice', content: [plainChapter('Pattern', 1), plainChapter('Set-up', 3)] },
    { title: 'Open', content: [plainChapter('Pattern', 1)] },
  ] as const;
  const pages = folderPages(cover, chapters);

  test('has contents that name the page on which each chapter begins, and lead there', () => {
    const lines = linesOf(pages);
    expect(lines.map(({ text }) => text)).toEqual([
      'Timetable 2',
      'Novice 4',
      'Pattern 4',
      'Set-up 5',
      'Open 8',
      'Pattern 8',
    ]);
    for (const { text, goes } of lines) expect(text.endsWith(` ${goes + 1}`)).toBe(true);
  });

  test('numbers every page', () => {
    expect(pages.pages).toHaveLength(8);
    for (const [i, page] of pages.pages.entries()) expect(wordsOn(page).at(-1)).toBe(`${i + 1} of 8 in this folder`);
  });

  test('has chapters nested as its chapters are', () => {
    expect(pages.chapters).toEqual([
      { title: 'Contents', page: 0 },
      { title: 'Timetable', page: 1 },
      {
        title: 'Novice',
        page: 3,
        chapters: [
          { title: 'Pattern', page: 3 },
          { title: 'Set-up', page: 4 },
        ],
      },
      { title: 'Open', page: 7, chapters: [{ title: 'Pattern', page: 7 }] },
    ]);
  });

  test('goes on to further pages of contents, which move all numbers, and breaks a long title', () => {
    const many = Array.from({ length: 90 }, (_, i) => plainChapter(`Sheet ${i + 1} ${'of a long day '.repeat(10)}`, 1));
    const [first = plainChapter('', 1), ...rest] = many;
    const long = folderPages(cover, [first, ...rest]);
    const before = long.pages.length - 90;
    expect(before).toBeGreaterThan(2);
    expect(linesOf(long).map(({ goes }) => goes)).toEqual(many.map((_, i) => i + before));
    for (const { marks, height, width } of long.pages.slice(0, before)) {
      for (const mark of marks) {
        if (mark.kind !== 'words' || mark.role?.tag !== 'TOCI') continue;
        expect(mark.at.y).toBeLessThan(height - 12 - 3);
        expect(mark.at.x).toBeLessThanOrEqual(width - 12);
      }
    }
  });
});

async function outlineOf(bytes: Uint8Array) {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  type Item = { readonly title: string; readonly dest: unknown; readonly items: readonly Item[] };
  const pageOf = async (dest: unknown): Promise<number> =>
    Array.isArray(dest) ? document.getPageIndex(dest[0] as never) : Number.NaN;
  const chapters = async (items: readonly Item[]): Promise<Chapter[]> =>
    Promise.all(
      items.map(async ({ title, dest, items: below }) => ({
        ...{ title, page: await pageOf(dest) },
        ...(below.length === 0 ? {} : { chapters: await chapters(below) }),
      })),
    );
  const outline = await chapters((await document.getOutline()) as readonly Item[]);
  const links: number[] = [];
  const first = await document.getPage(1);
  for (const { dest } of await first.getAnnotations()) {
    const target = typeof dest === 'string' ? await document.getDestination(dest) : dest;
    links.push(await pageOf(target));
  }
  const count = document.numPages;
  await document.destroy();
  return { outline, links, count };
}

describe('the folder of a class', () => {
  const course = starter('larkhollow-amateur');
  const plan = classFolder(course, asked(pattern, setUp, ringCard));

  test('has the sheets that were asked for in their order, and is read back with its bookmarks and links', async () => {
    const pages = bound(plan);
    const { outline, links, count } = await outlineOf(await pdf(pages, FONTS));
    expect(count).toBe(pages.pages.length);
    expect(outline).toEqual(pages.chapters);
    expect(outline.map(({ title }) => title)).toEqual(['Contents', 'Pattern', 'Set-up', 'Ring card']);
    expect(links).toEqual(outline.slice(1).map(({ page }) => page));
  });

  test('is the same twice, byte for byte', async () => {
    const once = await pdf(bound(plan), FONTS);
    const again = await pdf(bound(classFolder(structuredClone(course), asked(pattern, setUp, ringCard))), FONTS);
    expect(Buffer.compare(once, again)).toBe(0);
  });
});

describe('the folder of a day', () => {
  const course = starter('larkhollow-day');

  test('has its timetable, then each class in running order, with the change-overs between layouts', () => {
    const plan = dayFolder(course, asked(pattern, ringCard));
    if (plan === undefined) throw new Error('the starter has a day');
    const [timetable, ...classes] = plan.chapters;
    expect(timetable.title).toBe('Timetable of the day');
    const day = course.day?.classes ?? [];
    expect(classes.map(({ title }) => title)).toEqual(
      day.map(({ title }, i) => expect.stringMatching(new RegExp(`^${i + 1}\\. ${title}, \\d`))),
    );
    let changes = 0;
    for (const [i, { content }] of classes.entries()) {
      const titles = typeof content === 'function' ? [] : content.map(({ title }) => title);
      const layout = day[i]?.layout;
      const isNew = day.findIndex((each) => each.layout === layout) === i;
      const isChanged = i > 0 && day[i - 1]?.layout !== layout;
      const change = isChanged ? [expect.stringMatching(/^Change-over: .+ to .+/)] : [];
      expect(titles).toEqual([...change, 'Pattern', ...(isNew ? ['Ring card'] : [])]);
      changes += change.length;
    }
    expect(changes).toBeGreaterThan(0);
  });

  test('prints each pattern under the name of its own class', () => {
    const plan = dayFolder(course, asked(pattern));
    const titles = plan?.chapters.slice(1).map(({ content }) => {
      const last = typeof content === 'function' ? undefined : content.at(-1);
      const pages = typeof last?.content === 'function' ? last.content() : undefined;
      return pages?.kind === 'pages' ? pages.title : '';
    });
    expect(titles).toEqual(course.day?.classes.map(({ title }) => `Pattern: ${title}`));
  });

  test('has the truck list once, for the whole day, though it is usually for a layout', () => {
    const plan = dayFolder(course, asked(pattern, truckList));
    const titles = (list: readonly PlannedChapter[]): readonly string[] =>
      list.flatMap(({ title, content }) => (typeof content === 'function' ? [title] : titles(content)));
    const all = titles(plan?.chapters ?? []);
    expect(all.slice(0, 2)).toEqual(['Timetable of the day', 'Truck list']);
    expect(all.filter((title) => title === 'Truck list')).toHaveLength(1);
    const truck = plan?.chapters[1]?.content;
    const pages = typeof truck === 'function' ? truck() : undefined;
    expect(pages?.kind === 'pages' ? wordsOn(pages.pages[0]) : []).toContain(`Truck list for the day: ${course.title}`);
  });

  test('tells when each class begins where a sheet has the time of day', () => {
    const plan = dayFolder(course, asked(gateSheet));
    const said = plan?.chapters.slice(1).map(({ content }) => {
      const last = typeof content === 'function' ? undefined : content.at(-1);
      const pages = typeof last?.content === 'function' ? last.content() : undefined;
      return pages?.kind === 'pages' ? pages.pages.flatMap(wordsOn) : [];
    });
    expect(said).toHaveLength(course.day?.classes.length ?? 0);
    for (const [i, words] of (said ?? []).entries()) {
      const begins = plan?.chapters[i + 1]?.title.split(', ').at(-1);
      expect(
        words.some((text) => text.includes(begins ?? 'no time')),
        begins,
      ).toBe(true);
    }
  });

  test('is not there without a day', () => {
    const { day: _, ...without } = course;
    expect(dayFolder(without, asked(pattern))).toBeUndefined();
  });
});
