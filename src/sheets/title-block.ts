/** The head and foot of a page: show, class, level and date; arena, rule book and scale. */
import { rulebookById } from '../core/checks/rulebooks/rulebooks.ts';
import type { Arena, Course, Level } from '../core/course/course.ts';
import { FOOT, type LengthUnit } from '../core/measure/quantity.ts';
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, paragraph, type Role } from '../core/plane/role.ts';
import { type FontWeight, SMALLEST_FONT_SIZE, textWidth, truncatedText, wrappedLines } from './lettering.ts';

export const LEVELS: Readonly<Record<Level, string>> = {
  open: 'Open',
  amateur: 'Amateur',
  youth: 'Youth',
  novice: 'Novice',
  'walk-jog': 'Walk-jog',
  led: 'Led in hand',
};

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** "13 June 2026" from an ISO date; other text as it is. */
export function dateInWords(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? iso : `${Number(day)} ${name} ${year}`;
}

/** "100 × 200 ft", "20 × 60 m": width first, as arenas are named. */
function sizeInWords({ length, width }: Arena, unit: LengthUnit): string {
  const one = unit === 'ft' ? FOOT : 1;
  const round = (value: number): number => Math.round((value / one) * 100) / 100;
  return `${round(width)} × ${round(length)} ${unit}`;
}

export function rulebookInWords(course: Course): string {
  const book = rulebookById(course.rulebook.id);
  if (book === undefined) return course.rulebook.id;
  const house = Object.keys(course.rulebook.house).length > 0 ? ', with house rules' : '';
  return `${book.title} (${book.edition})${house}`;
}

/** What a page calls the course: the class, or the course's own title where the class has none. */
export function displayTitle(course: Course): string {
  return course.class.title === '' ? course.title : course.class.title;
}

export interface MarkBlock {
  readonly height: number;
  readonly marks: readonly Mark<'paper'>[];
}

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

export interface WordsStyle {
  readonly size: number;
  readonly weight?: FontWeight;
  readonly align?: 'start' | 'end';
  /** Absent: a paragraph of its own. */
  readonly role?: Role;
}

/** A line of words on paper, its baseline at y. */
export function wordsMark(text: string, x: number, y: number, style: WordsStyle): Mark<'paper'> {
  const { size, weight = 'regular', align = 'start', role = paragraph() } = style;
  return { kind: 'words', at: { x, y }, text, size, weight, align, ink: 'words', role };
}

function ruleMark({ x, width }: Area, y: number, stroke: number): Mark<'paper'> {
  const points = [
    { x, y },
    { x: x + width, y },
  ];
  return { kind: 'line', ink: 'words', points, width: stroke, role: ARTIFACT };
}

const FACT = 3.3;
const FACT_ROW = 5;
const SHOW = 4;
const NAME = 7;

/**
 * How long a text of the head may be before it is cut, mm: two lines of the narrowest paper beside a date for the show,
 * three lines for the name, two for a fact. The same on every paper, so that what is cut is known before the page is.
 */
const ROOM = { show: 2 * 130, name: 3 * 170, fact: 2 * 150 } as const;

function shortShow(text: string): string {
  return truncatedText(text, ROOM.show, { size: SHOW });
}

function shortName(text: string): string {
  return truncatedText(text, ROOM.name, { size: NAME, weight: 'bold' });
}

function shortFact(text: string): string {
  return truncatedText(text, ROOM.fact, { size: FACT, weight: 'bold' });
}

/** What the head of a page cuts, whole, for a note on the page. */
export function wholeNames({ show, name, facts }: SheetHead): readonly string[] {
  const cut = [
    ...(shortShow(show) === show ? [] : [['show', show]]),
    ...(shortName(name) === name ? [] : [['name', name]]),
    ...facts.filter(([, value]) => shortFact(value) !== value),
  ];
  return cut.map(([what = '', text]) => `The whole ${what.toLowerCase()}: ${text}`);
}

/** Facts as "Label value" one after the other, in rows. A fact that is wider than a row is broken into lines. */
function factMarks(facts: readonly (readonly [string, string])[], area: Area): MarkBlock {
  const marks: Mark<'paper'>[] = [];
  let x = 0;
  let row = 0;
  for (const [label, value] of facts) {
    const labelWidth = textWidth(`${label} `, FACT) + 0.6;
    const lines = wrappedLines(shortFact(value), area.width - labelWidth, { size: FACT, weight: 'bold' });
    const width = labelWidth + Math.max(...lines.map((line) => textWidth(line, FACT, 'bold')));
    if (x > 0 && x + width > area.width) {
      x = 0;
      row += 1;
    }
    const baseline = (line: number): number => area.y + (row + line + 1) * FACT_ROW - 1.4;
    const role = paragraph();
    marks.push(wordsMark(label, area.x + x, baseline(0), { size: FACT, role }));
    lines.forEach((line, index) => {
      marks.push(wordsMark(line, area.x + x + labelWidth, baseline(index), { size: FACT, weight: 'bold', role }));
    });
    row += lines.length - 1;
    x += width + 8;
  }
  return { height: (row + 1) * FACT_ROW, marks };
}

/** What stands over a sheet. */
export interface SheetHead {
  readonly show: string;
  /** ISO date, or empty. */
  readonly date: string;
  readonly name: string;
  /** Labels and values. */
  readonly facts: readonly (readonly [string, string])[];
}

/** The arena by its name and size. */
export function arenaInWords({ arena, unit }: Course): string {
  const size = sizeInWords(arena, unit);
  return arena.title === '' ? size : `${arena.title}, ${size}`;
}

/** The head of a sheet about the class of a course. */
export function classHead(course: Course): SheetHead {
  const { show, level, date } = course.class;
  const name = displayTitle(course);
  const facts: [string, string][] = [['Level', LEVELS[level]]];
  if (course.title !== '' && course.title !== name) facts.push(['Course', course.title]);
  facts.push(['Arena', arenaInWords(course)]);
  facts.push(['Rule book', rulebookById(course.rulebook.id)?.title ?? course.rulebook.id]);
  return { show, date, name, facts };
}

/** Show and date, the name, then the facts, over a rule. What is far too long is cut (`wholeNames`). */
export function headBlock({ show, date, name, facts }: SheetHead, area: Area): MarkBlock {
  const { x, y, width } = area;
  const right = x + width;
  const marks: Mark<'paper'>[] = [];
  const when = dateInWords(date);
  const whenWidth = when === '' ? 0 : textWidth(when, SHOW, 'bold') + 6;
  let bottom = y;
  const showLines = show === '' && when === '' ? [] : wrappedLines(shortShow(show), width - whenWidth, { size: SHOW });
  const showRole = paragraph();
  for (const [i, line] of showLines.entries()) {
    bottom += 5.4;
    marks.push(wordsMark(line, x, bottom - 1.6, { size: SHOW, role: showRole }));
    if (i > 0 || when === '') continue;
    marks.push(wordsMark(when, right, bottom - 1.6, { size: SHOW, weight: 'bold', align: 'end' }));
  }
  const role: Role = { tag: 'H1' };
  for (const line of wrappedLines(shortName(name), width, { size: NAME, weight: 'bold' })) {
    bottom += 8.8;
    marks.push(wordsMark(line, x, bottom - 2.2, { size: NAME, weight: 'bold', role }));
  }
  const block = factMarks(facts, { x, y: bottom, width });
  marks.push(...block.marks, ruleMark(area, bottom + block.height + 1, 0.5));
  return { height: bottom + block.height + 1.5 - y, marks };
}

/** The head of a sheet with a drawing: the same, with its scale. */
export function titleBlock(head: SheetHead, scale: number, area: Area): MarkBlock {
  return headBlock({ ...head, facts: [...head.facts, ['Scale', `1:${scale}`]] }, area);
}

/** The head of a page that carries on; who is read to has heard it. */
export function continuedTitle({ name, date }: Pick<SheetHead, 'name' | 'date'>, area: Area): MarkBlock {
  const when = dateInWords(date);
  const whenWidth = when === '' ? 0 : textWidth(when, 4, 'bold') + 6;
  const text = truncatedText(`${name}, continued`, area.width - whenWidth, { size: 4.6, weight: 'bold' });
  const marks = [
    wordsMark(text, area.x, area.y + 4.6, { size: 4.6, weight: 'bold', role: ARTIFACT }),
    ruleMark(area, area.y + 7, 0.5),
  ];
  if (when !== '') {
    const style = { size: 4, weight: 'bold', align: 'end', role: ARTIFACT } as const;
    marks.push(wordsMark(when, area.x + area.width, area.y + 4.6, style));
  }
  return { height: 7.5, marks };
}

/** What stands at the foot of a page, left and right. It is not read out. */
export function footMarks(left: string, right: string, { x, y, width }: Area): readonly Mark<'paper'>[] {
  const style = { size: SMALLEST_FONT_SIZE, role: ARTIFACT } as const;
  const marks = [wordsMark(left, x, y, style), wordsMark(right, x + width, y, { ...style, align: 'end' })];
  return marks.filter((mark) => mark.kind !== 'words' || mark.text !== '');
}

/** The foot: how to print it to scale, and which page this is. */
export function footer(scale: number, page: { number: number; count: number }, area: Area): readonly Mark<'paper'>[] {
  const count = page.count === 1 ? '' : `Page ${page.number} of ${page.count}`;
  return footMarks(`To scale 1:${scale} when printed at 100 %.`, count, area);
}
