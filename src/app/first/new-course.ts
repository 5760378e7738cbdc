/** first/ is what somebody meets who begins: the form for a new course, the starters, hints, and an example that moves. */
import { UNDECIDED } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Wall } from '../../core/constraints/constraint.ts';
import { blankCourse } from '../../core/course/blank.ts';
import type { Arena, Course, Level, Stock } from '../../core/course/course.ts';
import {
  HOME_FURNITURE,
  HOME_POLES,
  type PoleCount,
  poleLines,
  SHOW_FURNITURE,
  SHOW_POLES,
} from '../../core/course/usual-trucks.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import { feet, type LengthUnit, type Metres } from '../../core/measure/quantity.ts';
import type { Refusal } from '../../desk/input.ts';
import { newCourseWords } from '../../words/first-visit.ts';
import { readStockCount } from '../set/truck-lines.ts';

/** Where the truck list of a new course comes from. */
export type TruckLoad = 'show' | 'home' | 'open' | 'none';

/** The form as a person has filled it in. An empty `at`: the middle of the wall. An empty `book`: not answered. */
export interface NewCourseForm {
  readonly title: string;
  readonly unit: LengthUnit;
  readonly length: string;
  readonly width: string;
  readonly wall: Wall;
  readonly at: string;
  readonly load: TruckLoad;
  /** How many poles of each of `POLE_LENGTHS`. */
  readonly poles: readonly string[];
  readonly level: Level;
  readonly book: string;
}

/** What was not understood, by field; `poles` by their place in the list. */
export interface NewCourseRefusals {
  readonly length?: Refusal;
  readonly width?: Refusal;
  readonly at?: Refusal;
  readonly book?: Refusal;
  readonly poles: Readonly<Record<number, string>>;
}

export const POLE_LENGTHS: readonly Metres[] = SHOW_POLES.map(({ length }) => length);

/** Sizes to press, small to large: those in metres are of riding schools, those in feet an estimate of show arenas. */
export const USUAL_SIZES: Readonly<Record<LengthUnit, readonly (readonly [Metres, Metres])[]>> = {
  ft: [
    [feet(140), feet(70)],
    [feet(200), feet(100)],
    [feet(250), feet(130)],
    [feet(300), feet(150)],
  ],
  m: [
    [40, 20],
    [60, 20],
    [60, 30],
    [80, 40],
  ],
};

/** As the file format has it. */
const LEAST_SIDE: Metres = 3;
const MOST_SIDE: Metres = 500;
const WAY_IN: Readonly<Record<LengthUnit, Metres>> = { ft: feet(12), m: 3 };

/** What is loaded beside poles. */
export function furnitureOf(load: TruckLoad): readonly Stock[] {
  return load === 'show' ? SHOW_FURNITURE : load === 'home' ? HOME_FURNITURE : [];
}

/** The usual counts of a load, in the order of `POLE_LENGTHS`. */
export function usualPoles(load: TruckLoad): readonly string[] {
  const poles: readonly PoleCount[] = load === 'home' ? HOME_POLES : SHOW_POLES;
  return POLE_LENGTHS.map((length) => String(poles.find((each) => each.length === length)?.count ?? 0));
}

/** The form before anybody has touched it. The rule book is asked, so it is empty. */
export function emptyForm(unit: LengthUnit): NewCourseForm {
  const [length, width] = USUAL_SIZES[unit][1] ?? [60, 20];
  return {
    title: '',
    unit,
    length: printLength(length, unit),
    width: printLength(width, unit),
    wall: 'west',
    at: '',
    load: 'show',
    poles: usualPoles('show'),
    level: 'open',
    book: '',
  };
}

/** The form in another unit: a usual size becomes the usual size of that unit, what was typed is written anew. */
export function formIn(form: NewCourseForm, unit: LengthUnit): NewCourseForm {
  if (unit === form.unit) return form;
  const place = USUAL_SIZES[form.unit].findIndex((size) => isSize(form, size));
  const usual = USUAL_SIZES[unit][place];
  const again = (text: string) => {
    const read = readLength(text, form.unit);
    return read.kind === 'read' ? printLength(read.value, unit) : text;
  };
  const sides = usual === undefined ? { length: again(form.length), width: again(form.width) } : sidesOf(usual, unit);
  return { ...form, ...sides, unit, at: form.at.trim() === '' ? '' : again(form.at) };
}

/** A size as the two fields show it. */
export function sidesOf([length, width]: readonly [Metres, Metres], unit: LengthUnit) {
  return { length: printLength(length, unit), width: printLength(width, unit) };
}

/** Whether the fields show this size. */
export function isSize(form: NewCourseForm, size: readonly [Metres, Metres]): boolean {
  const sides = sidesOf(size, form.unit);
  return form.length === sides.length && form.width === sides.width;
}

type Side = { readonly value: Metres } | { readonly why: string };

function readSide(text: string, unit: LengthUnit): Side {
  const read = readLength(text, unit);
  if (read.kind === 'refused') return { why: read.why };
  if (read.value >= LEAST_SIDE && read.value <= MOST_SIDE) return { value: read.value };
  const [least, most, typed] = [LEAST_SIDE, MOST_SIDE, read.value].map((each) => printLength(each, unit));
  return { why: newCourseWords.refusals.side(least ?? '', most ?? '', typed ?? '') };
}

/** The middle of the way in along a wall of that length: inside it with its whole width. */
function readWayIn(form: NewCourseForm, wall: Metres): Side {
  const { unit, at } = form;
  const half = WAY_IN[unit] / 2;
  if (wall < 2 * half) return { why: newCourseWords.refusals.wallTooShort(printLength(2 * half, unit)) };
  if (at.trim() === '') return { value: wall / 2 };
  const read = readLength(at, unit);
  if (read.kind === 'refused') return { why: read.why };
  if (read.value >= half && read.value <= wall - half) return { value: read.value };
  const [least, most, typed] = [half, wall - half, read.value].map((each) => printLength(each, unit));
  return { why: newCourseWords.refusals.at(least ?? '', most ?? '', typed ?? '') };
}

/** The poles that were counted; or what is wrong, by their place. */
function readPoles(form: NewCourseForm): { readonly lines: readonly Stock[]; readonly whys: Record<number, string> } {
  const whys: Record<number, string> = {};
  if (form.load !== 'show' && form.load !== 'home') return { lines: [], whys };
  const counts = POLE_LENGTHS.map((length, place): PoleCount => {
    const count = readStockCount(form.poles[place] ?? '');
    if (typeof count === 'number') return { length, count };
    whys[place] = count;
    return { length, count: 0 };
  });
  return { lines: poleLines(counts), whys };
}

/** The course that the form asks for, beside the one that is open; or what is wrong with it, by field. */
export function newCourse(
  form: NewCourseForm,
  open: Course,
): { readonly course: Course } | { readonly refusals: NewCourseRefusals } {
  const [length, width] = [readSide(form.length, form.unit), readSide(form.width, form.unit)];
  const isAlong = form.wall === 'south' || form.wall === 'north';
  const side = isAlong ? length : width;
  const at: Side = 'why' in side ? { value: 0 } : readWayIn(form, side.value);
  const { lines, whys } = readPoles(form);
  if ('why' in length || 'why' in width || 'why' in at || form.book === '' || Object.keys(whys).length > 0) {
    return {
      refusals: {
        ...('why' in length ? { length: length.why } : {}),
        ...('why' in width ? { width: width.why } : {}),
        ...('why' in at ? { at: at.why } : {}),
        ...(form.book === '' ? { book: newCourseWords.refusals.book } : {}),
        poles: whys,
      },
    };
  }
  const arena: Arena = {
    title: newCourseWords.arenaName,
    length: length.value,
    width: width.value,
    entrance: { wall: form.wall, at: at.value, width: WAY_IN[form.unit] },
  };
  return {
    course: blankCourse({
      title: form.title.trim(),
      unit: form.unit,
      arena,
      truck: form.load === 'open' ? open.truck : [...lines, ...furnitureOf(form.load)],
      rulebook: { id: form.book, house: {} },
      class: { level: form.level },
    }),
  };
}

/** The answer "decide later" to the question for a rule book. */
export const LATER = UNDECIDED.id;
