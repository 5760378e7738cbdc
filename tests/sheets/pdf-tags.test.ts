import { readFileSync } from 'node:fs';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { readCourse } from '../../src/core/files/read.ts';
import { survey } from '../../src/core/survey.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import { reportPages } from '../../src/sheets/report-pages.ts';
import type { Pages } from '../../src/sheets/sheet.ts';
import { SHEETS } from '../../src/sheets/sheets.ts';
import { FONTS } from './fonts.ts';

/** An element as pdf.js reads it: its children are elements, or content of the page by id. */
interface Element {
  readonly role: string;
  readonly alt?: string;
  readonly children: readonly (Element | { readonly type: string; readonly id: string })[];
}

interface TaggedPage {
  readonly tree: Element;
  /** The texts by the content in which they stand; those that are not read out; those that stand in nothing. */
  readonly texts: ReadonlyMap<string, string>;
  readonly decoration: string;
  readonly loose: string;
}

type TextPart =
  | { readonly str: string }
  | { readonly type: string; readonly tag?: string; readonly id?: string | undefined };

function textsOf(items: readonly TextPart[]): Omit<TaggedPage, 'tree'> {
  const open: { readonly tag: string; readonly id: string }[] = [];
  const texts = new Map<string, string>();
  let decoration = '';
  let loose = '';
  for (const item of items) {
    if ('str' in item) {
      const at = open.at(-1);
      if (at === undefined) loose += item.str;
      else if (at.tag === 'Artifact') decoration += item.str;
      else texts.set(at.id, (texts.get(at.id) ?? '') + item.str);
    } else if (item.type.startsWith('begin')) open.push({ tag: item.tag ?? '', id: item.id ?? '' });
    else open.pop();
  }
  return { texts, decoration, loose };
}

async function taggedPagesOf(bytes: Uint8Array): Promise<readonly TaggedPage[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: TaggedPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const content = await page.getTextContent({ includeMarkedContent: true });
    // Its types know neither the description of an element nor content without text.
    const tree = (await page.getStructTree()) as unknown as Element;
    pages.push({ tree, ...textsOf(content.items as readonly TextPart[]) });
  }
  await document.destroy();
  return pages;
}

/** All signs that a page shows, in the order in which they stand in the file, spaces with them. */
async function signsOf(bytes: Uint8Array): Promise<string> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const list = await (await document.getPage(1)).getOperatorList();
  const shown = list.argsArray.filter((_, i) => list.fnArray[i] === OPS.showText) as [
    readonly ({ readonly unicode: string } | number)[],
  ][];
  await document.destroy();
  const signs = shown.flatMap(([glyphs]) => glyphs.map((each) => (typeof each === 'number' ? '' : each.unicode)));
  return signs.join('').replaceAll('\u00a0', ' ');
}

function elementsOf(element: Element): readonly Element[] {
  return [element, ...element.children.flatMap((child) => ('role' in child ? elementsOf(child) : []))];
}

function contentIds(element: Element): readonly string[] {
  return element.children.flatMap((child) =>
    'role' in child ? contentIds(child) : child.type === 'content' ? [child.id] : [],
  );
}

function textOf(page: TaggedPage, element: Element): string {
  return contentIds(element)
    .map((id) => page.texts.get(id) ?? '')
    .join('');
}

/** What holds on every page that can be read out. */
function expectReadable(pages: readonly TaggedPage[]): void {
  for (const page of pages) {
    expect(page.loose.trim()).toBe('');
    const ids = contentIds(page.tree);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [id, text] of page.texts) if (text.trim() !== '') expect(ids, text).toContain(id);
    const elements = elementsOf(page.tree);
    for (const { alt } of elements.filter(({ role }) => role === 'Figure')) expect(alt).toMatch(/\S.*\.$/);
    for (const row of elements.filter(({ role }) => role === 'TR')) expect(row.children.length).toBeGreaterThan(0);
  }
  const headings = pages.flatMap(({ tree }) => elementsOf(tree).filter(({ role }) => /^H\d$/.test(role)));
  expect(headings[0]?.role).toBe('H1');
}

function starter(name: string) {
  const reading = readCourse(readFileSync(`seeds/starters/${name}.course.json`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

const course = starter('larkhollow-amateur');

describe.each(SHEETS.map((sheet) => [sheet.id, sheet] as const))('read out, the sheet %s', (_, sheet) => {
  const drawn = sheet.draw(survey(course), { paper: 'letter', orientation: 'fit' });
  if (drawn.kind === 'too-big') throw new Error(drawn.why);

  test('has every text once, an order, headings from the first level, and a sentence for each picture', async () => {
    const pages = await taggedPagesOf(await pdf(drawn, FONTS));
    expect(pages).toHaveLength(drawn.pages.length);
    expectReadable(pages);
    expect(pages.some(({ texts }) => texts.size > 0)).toBe(true);
  });
});

describe('a pattern that is read out', () => {
  test('has its name as the heading, the drawing as one picture, and the steps as a list in their order', async () => {
    const drawn = SHEETS[0]?.draw(survey(course), { paper: 'letter', orientation: 'fit' });
    if (drawn?.kind !== 'pages') throw new Error('the pattern must draw');
    const [page] = await taggedPagesOf(await pdf(drawn, FONTS));
    if (page === undefined) throw new Error('the pattern has a page');
    const elements = elementsOf(page.tree);
    const said = (tag: string) => elements.filter(({ role }) => role === tag).map((each) => textOf(page, each).trim());
    expect(said('H1')).toEqual(['Amateur Trail']);
    expect(said('H2')[0]).toBe('The pattern');
    expect(said('Figure')).toHaveLength(1);
    expect(elements.find(({ role }) => role === 'Figure')?.alt).toBe(drawn.pages[0].about);
    const steps = said('LI').filter((text) => /^\d/.test(text));
    expect(steps.map((text) => Number.parseInt(text, 10))).toEqual(steps.map((_, i) => i + 1));
    expect(steps).toHaveLength(survey(course).layout.ride.legs.length);
    expect(page.decoration).toContain('when printed at 100 %');
  });
});

/** How many painting operators a page has, and how many stand in no marked content, so that nobody knows what they are. */
async function paintedOn(bytes: Uint8Array, number: number) {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const { fnArray } = await (await document.getPage(number)).getOperatorList();
  await document.destroy();
  const painting: readonly number[] = [OPS.constructPath, OPS.showText, OPS.fill, OPS.stroke, OPS.eoFillStroke];
  let [depth, all, unmarked] = [0, 0, 0];
  for (const op of fnArray) {
    if (op === OPS.beginMarkedContent || op === OPS.beginMarkedContentProps) depth += 1;
    if (op === OPS.endMarkedContent) depth -= 1;
    if (!painting.includes(op)) continue;
    all += 1;
    if (depth === 0) unmarked += 1;
  }
  return { all, unmarked };
}

test('nothing is painted that is neither an element nor marked as not to be read out', async () => {
  const pages = SHEETS.map((sheet) => sheet.draw(survey(course), { paper: 'a4', orientation: 'fit' }));
  for (const drawn of pages) {
    if (drawn.kind === 'too-big') throw new Error(drawn.why);
    const bytes = await pdf(drawn, FONTS);
    for (const [i] of drawn.pages.entries()) {
      const { all, unmarked } = await paintedOn(bytes, i + 1);
      expect(all).toBeGreaterThan(10);
      expect(unmarked).toBe(0);
    }
  }
});

test('the file says that it is tagged, its language, and that its title is shown and its pages are tabbed by structure', async () => {
  const drawn = SHEETS[0]?.draw(survey(course), { paper: 'letter', orientation: 'fit' });
  if (drawn?.kind !== 'pages') throw new Error('the pattern must draw');
  const text = Buffer.from(await pdf(drawn, FONTS)).toString('latin1');
  for (const said of ['/Marked true', '/Lang (en)', '/DisplayDocTitle true', '/Tabs /S']) expect(text).toContain(said);
});

test.each(['judge', 'scribe'])('a card of the %s is a table with a row for each line of an entry', async (id) => {
  const drawn = SHEETS.find((sheet) => sheet.id === id)?.draw(survey(course), { paper: 'letter', orientation: 'fit' });
  if (drawn?.kind !== 'pages') throw new Error('the card must draw');
  const [page] = await taggedPagesOf(await pdf(drawn, FONTS));
  if (page === undefined) throw new Error('the card has a page');
  const elements = elementsOf(page.tree);
  const rows = elements.filter(({ role }) => role === 'TR').map(({ children }) => children.length);
  expect(rows.length).toBeGreaterThan(4);
  expect(new Set(rows).size).toBe(1);
  const heads = elements.filter(({ role }) => role === 'TH').map((each) => textOf(page, each).trim());
  const { legs } = survey(course).layout.ride;
  expect(heads[0]).toBe('Entry');
  for (const [i] of legs.entries()) expect(heads.some((text) => text.startsWith(String(i + 1)))).toBe(true);
  expect(elements.filter(({ role }) => role === 'Figure')).toEqual([]);
});

test('words of two lines do not run into each other for who is read to', async () => {
  const long = {
    ...course,
    notes: 'Park on the meadow behind the barn and come in by the small gate. '.repeat(6).trim(),
  };
  const drawn = SHEETS[0]?.draw(survey(long), { paper: 'letter', orientation: 'fit' });
  if (drawn?.kind !== 'pages') throw new Error('the pattern must draw');
  const words = drawn.pages.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'words'));
  expect(words.filter(({ text }) => /meadow|barn/.test(text)).length).toBeGreaterThan(1);
  expect(await signsOf(await pdf(drawn, FONTS))).toContain(long.notes);
});

test('a table has a row for each row, as many cells in each, heads once, and the order of its columns', async () => {
  const columns = [
    { title: 'No', width: 1, align: 'end' as const },
    { title: 'Horse', width: 3, align: 'start' as const },
    { title: 'Note', width: 3, align: 'start' as const },
  ];
  const cells = (i: number) => [{ text: `${i}` }, { text: `Horse ${i}` }, { text: '' }];
  const rows = Array.from({ length: 90 }, (_, i) => (i === 40 ? [{ text: 'After the break' }] : cells(i)));
  const words = { name: 'Entries', facts: [], items: [], remark: 'Remark' };
  const report: Pages = reportPages({
    ...{ course, paper: 'a4', orientation: 'portrait', columns, rows, fontSizes: [4] },
    ...words,
  });
  const pages = await taggedPagesOf(await pdf(report, FONTS));
  expect(pages.length).toBeGreaterThan(1);
  expectReadable(pages);
  const told = pages.flatMap((page) =>
    elementsOf(page.tree)
      // The tree of a page also names what stands on others.
      .filter((each) => each.role === 'TR' && textOf(page, each).trim() !== '')
      .map((row) => row.children.map((cell) => ('role' in cell ? `${cell.role} ${textOf(page, cell).trim()}` : ''))),
  );
  expect(told).toHaveLength(rows.length + 1);
  expect(told[0]).toEqual(['TH No', 'TH Horse', 'TH Note']);
  expect(told[1]).toEqual(['TD 0', 'TD Horse 0', 'TD ']);
  expect(told[41]).toEqual(['TD After the break']);
  for (const row of told.filter((_, i) => i !== 41)) expect(row).toHaveLength(3);
  expect(Buffer.from(await pdf(report, FONTS)).toString('latin1')).toContain('/ColSpan 3');
});

test('a page of rules alone has no picture, and a page with a drawing has one though words stand between its parts', async () => {
  const line = (y: number) =>
    ({
      kind: 'line',
      ink: 'words',
      points: [
        { x: 10, y },
        { x: 90, y },
      ],
    }) as const;
  const page = { width: 100, height: 100, about: 'A drawing of a pole.' };
  const disc = { kind: 'disc', at: { x: 50, y: 50 }, radius: 5, ink: 'marker', fill: 'full' } as const;
  const text = { kind: 'words', at: { x: 10, y: 60 }, text: 'Said', size: 4, ink: 'words', align: 'start' } as const;
  const said = { ...text, role: { tag: 'P' } } as const;
  const pages: Pages = {
    kind: 'pages',
    title: 'Two pages',
    pages: [
      { ...page, marks: [line(10), said, line(70)] },
      { ...page, marks: [disc, said, line(70)] },
    ],
    card: { date: '', author: '' },
    substitutions: [],
  };
  const read = await taggedPagesOf(await pdf(pages, FONTS));
  const figures = read.map(({ tree }) => elementsOf(tree).filter(({ role }) => role === 'Figure'));
  expect(figures.map(({ length }) => length)).toEqual([0, 1]);
  expect(figures[1]?.[0]?.alt).toBe('A drawing of a pole.');
  expect(read.map((each) => [...each.texts.values()].join('').trim())).toEqual(['Said', 'Said']);
});
