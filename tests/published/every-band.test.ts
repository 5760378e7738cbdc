/**
 * Every band of every rule book that is shipped, as it was read from its source and not as the data files have it; and each
 * edge that a course can be laid out to, just inside and just outside, in the unit in which it is printed.
 */
import { describe, expect, test } from 'vitest';
import type { Limit, RuleBook } from '../../src/core/checks/check.ts';
import { RULEBOOKS } from '../../src/core/checks/rulebooks/rulebooks.ts';
import type { Course } from '../../src/core/course/course.ts';
import { judged, saidBy } from '../core/checks/scene.ts';
import { LIMIT_FIXTURES } from './limit-fixtures.ts';

const UNIT = { in: 0.0254, ft: 0.3048, cm: 0.01, m: 1, count: 1, s: 1, degree: Math.PI / 180 } as const;
type Unit = keyof typeof UNIT;

/** Where in a book: for all, for one level, or for ponies. */
type Part = 'all' | 'walk-jog' | 'ponies';
type Row = readonly [
  book: string,
  part: Part,
  limit: string,
  least: number | undefined,
  most: number | undefined,
  unit: Unit,
  source: string,
];

const none = undefined;
/** Yes and no are printed as a count of one or more, or of none. */
const yes = [1, none, 'count'] as const;
const no = [none, 0, 'count'] as const;

/** American Mule Association: amarulebook.org, rules 101, 215 and 216. */
const MULE: readonly Row[] = [
  ['mule-association', 'all', 'gap.walk', 20, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'gap.walk.recommended', 20, 24, 'in', 'rule 216'],
  ['mule-association', 'all', 'gap.jog', 3, 3.5, 'ft', 'rule 216'],
  ['mule-association', 'all', 'gap.lope', 6, 7, 'ft', 'rule 216'],
  ['mule-association', 'all', 'raised.walk.several', none, 10, 'in', 'rule 216'],
  ['mule-association', 'all', 'raised.walk.single', none, 16, 'in', 'rule 216'],
  ['mule-association', 'all', 'jump.height', none, 18, 'in', 'rule 216'],
  ['mule-association', 'all', 'back.width', 30, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'back.raised.width', 34, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'back.barrels.width', 36, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'side-pass.parallel', 24, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'side-pass.height', none, 24, 'in', 'rule 216'],
  ['mule-association', 'all', 'serpentine.jog', 10, none, 'ft', 'rule 216'],
  ['mule-association', 'all', 'gate.opening', 6, none, 'ft', 'rule 216'],
  // About 60 in, read as within a tenth.
  ['mule-association', 'all', 'gate.height', 54, 66, 'in', 'rule 216'],
  ['mule-association', 'all', 'bridge.width', 36, none, 'in', 'rule 216'],
  ['mule-association', 'all', 'obstacles.count', 4, 8, 'count', 'rule 215'],
  ['mule-association', 'all', 'combination.as-one', ...no, 'rule 215'],
  ['mule-association', 'all', 'mandatory.gate', ...yes, 'rule 215'],
  ['mule-association', 'all', 'mandatory.poles', ...yes, 'rule 215'],
  ['mule-association', 'all', 'mandatory.bridge', ...yes, 'rule 215'],
  ['mule-association', 'all', 'mandatory.walk', ...yes, 'rule 215'],
  ['mule-association', 'all', 'mandatory.backing', ...yes, 'rule 215'],
  ['mule-association', 'all', 'forbidden.rolling', ...no, 'rule 216'],
  ['mule-association', 'all', 'obstacle.seconds', none, 60, 's', 'rule 215'],
  ['mule-association', 'all', 'class.entries', none, 25, 'count', 'rule 101'],
];

/** Horse Illustrated, August 2005, with articles of the same press. */
const PRESS: readonly Row[] = [
  ['trade-press', 'all', 'gap.walk', 15, 24, 'in', 'Horse Illustrated, Trail Obstacle Dimensions, August 2005'],
  ['trade-press', 'all', 'gap.jog', 3, 3.5, 'ft', 'Horse Illustrated, Trail Obstacle Dimensions, August 2005'],
  ['trade-press', 'all', 'gap.lope', 6, 7, 'ft', 'Horse & Rider, C. Cole'],
  ['trade-press', 'all', 'raised.lope', none, 10, 'in', 'Horse & Rider, C. Cole'],
  ['trade-press', 'all', 'poles.count', 4, none, 'count', 'August 2005'],
  ['trade-press', 'all', 'pole.length', 3, 12, 'ft', 'Western Horseman, C. Cantleberry, September 1992'],
  ['trade-press', 'all', 'back.width', 28, none, 'in', 'August 2005'],
  ['trade-press', 'all', 'back.raised.width', 30, none, 'in', 'August 2005'],
  ['trade-press', 'all', 'back.raised.height', none, 24, 'in', 'August 2005'],
  ['trade-press', 'all', 'box.side', 5, 6, 'ft', 'August 2005'],
  ['trade-press', 'all', 'gate.opening', 6, 8, 'ft', 'August 2005'],
  ['trade-press', 'all', 'bridge.width', 36, none, 'in', 'August 2005'],
  ['trade-press', 'all', 'bridge.length', 6, none, 'ft', 'August 2005'],
  ['trade-press', 'all', 'water-box.width', 30, none, 'in', 'August 2005'],
  ['trade-press', 'all', 'water-box.length', 4, 6, 'ft', 'August 2005'],
  ['trade-press', 'all', 'obstacle.room', 24, none, 'ft', 'Equine Chronicle, L. Hitchcock'],
  ['trade-press', 'all', 'obstacles.count', 6, 10, 'count', 'Horse Illustrated, Trail practice course'],
];

/** American Stock Horse Association: stock-horse.com/classes/trail. */
const STOCK: readonly Row[] = [
  ['stock-horse', 'all', 'obstacles.count', 6, 9, 'count', 'American Stock Horse Association'],
  ['stock-horse', 'all', 'mandatory.walk', ...yes, 'American Stock Horse Association'],
  ['stock-horse', 'all', 'shown.jog', 35, none, 'ft', 'American Stock Horse Association'],
  ['stock-horse', 'all', 'shown.lope', 50, none, 'ft', 'American Stock Horse Association'],
  ['stock-horse', 'all', 'lead.stated', ...yes, 'American Stock Horse Association'],
];

/** EWU Regelbuch Teil 2, 2011/12, §§ 7403 to 7411. */
const EWU: readonly Row[] = [
  ['ewu', 'all', 'obstacles.count', 6, none, 'count', '§§ 7403–7404'],
  ['ewu', 'all', 'combination.as-one', ...yes, '§§ 7403–7404'],
  ['ewu', 'all', 'mandatory.gate', ...yes, '§§ 7403–7404'],
  ['ewu', 'all', 'mandatory.poles', ...yes, '§§ 7403–7404'],
  ['ewu', 'all', 'mandatory.backing', ...yes, '§§ 7403–7404'],
  ['ewu', 'all', 'poles.count', 4, none, 'count', '§§ 7403–7404'],
  // About 2.5 m, read as within a tenth.
  ['ewu', 'all', 'gate.opening', 2.25, 2.75, 'm', '§§ 7403–7404'],
  ['ewu', 'all', 'forbidden.rolling', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.tyres', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.animals', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.hides', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.plastic', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.see-saw', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.moving-water', ...no, '§ 7406'],
  ['ewu', 'all', 'forbidden.fire', ...no, '§ 7406'],
  ['ewu', 'walk-jog', 'level.lope', ...no, '§§ 9220, 9231'],
];

/** Pinto Horse Association 2011, pp. 126 and 127; Hippago, In-Hand Trail. */
const LED: readonly Row[] = [
  ['led', 'all', 'serpentine.walk', 4, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'serpentine.jog', 7, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'serpentine.markers', 4, none, 'count', 'Pinto Horse Association'],
  ['led', 'all', 'box.side', 8, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'square.pole', 12, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'side-pass.height', none, 2, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'gate.height', 4, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'gate.opening', 4, none, 'ft', 'Pinto Horse Association'],
  ['led', 'all', 'obstacles.count', 6, none, 'count', 'Hippago'],
  ['led', 'all', 'mandatory.gate', ...yes, 'Hippago'],
  ['led', 'all', 'mandatory.poles', ...yes, 'Hippago'],
  ['led', 'all', 'mandatory.backing', ...yes, 'Hippago'],
  ['led', 'all', 'level.lope', ...no, 'Hippago'],
];

/** Mein Pferd, Cheval-in (24 October 2024), Your Horse, and British manuals as told in 2008. */
const GROUND: readonly Row[] = [
  ['ground-poles', 'all', 'gap.walk', 70, 91, 'cm', 'Mein Pferd'],
  ['ground-poles', 'all', 'gap.jog', 110, 152, 'cm', 'Mein Pferd'],
  ['ground-poles', 'all', 'gap.lope', 270, 366, 'cm', 'British teaching manuals'],
  ['ground-poles', 'all', 'raised.jog', none, 9, 'in', 'Your Horse'],
  ['ground-poles', 'all', 'raised.lope', none, 9, 'in', 'Your Horse'],
  ['ground-poles', 'all', 'poles.count', 3, 8, 'count', 'Your Horse'],
  ['ground-poles', 'ponies', 'gap.walk', 60, 75, 'cm', 'Cheval-in'],
  ['ground-poles', 'ponies', 'gap.jog', 120, 150, 'cm', 'Cheval-in'],
  ['ground-poles', 'ponies', 'gap.lope', 240, 280, 'cm', 'Cheval-in'],
];

const ROWS: readonly Row[] = [...MULE, ...PRESS, ...STOCK, ...EWU, ...LED, ...GROUND];

function partsOf({
  limits,
  levels = {},
  ponies = {},
}: RuleBook): readonly (readonly [string, Readonly<Record<string, Limit>>])[] {
  return [['all', limits], ['ponies', ponies], ...Object.entries(levels)];
}

describe('every band of every book', () => {
  test('stands in the table', () => {
    const shipped = RULEBOOKS.flatMap((book) =>
      partsOf(book).flatMap(([part, limits]) => Object.keys(limits).map((limit) => `${book.id} ${part} ${limit}`)),
    );
    expect(ROWS.map(([book, part, limit]) => `${book} ${part} ${limit}`).sort()).toEqual(shipped.sort());
  });

  test.each(ROWS)('%s, %s: %s is %s to %s %s', (id, part, name, least, most, unit, source) => {
    const book = RULEBOOKS.find((each) => each.id === id);
    const limit = book === undefined ? undefined : Object.fromEntries(partsOf(book))[part]?.[name];
    expect([limit?.least, limit?.most, limit?.unit]).toEqual([least, most, unit]);
    expect(limit?.source).toContain(source);
    expect(limit?.url).toMatch(/^https?:/);
    expect('ABCD').toContain(limit?.grade);
  });
});

/** Finer than a crew tapes, in the unit of the band: a sixteenth of an inch, a millimetre, one. */
const BIT: Readonly<Record<Unit, number>> = { in: 1 / 16, ft: 1 / 192, cm: 0.1, m: 0.001, count: 1, s: 1, degree: 0.1 };

interface Edge {
  readonly book: string;
  readonly part: Part;
  readonly limit: string;
  readonly value: number;
  readonly unit: Unit;
  /** +1: what is larger is outside. */
  readonly outward: 1 | -1;
}

const EDGES: readonly Edge[] = ROWS.flatMap(([book, part, limit, least, most, unit]) => {
  if (LIMIT_FIXTURES[limit] === undefined) return [];
  const edge = { book, part, limit, unit };
  return [
    ...(least === undefined ? [] : [{ ...edge, value: least, outward: -1 as const }]),
    ...(most === undefined ? [] : [{ ...edge, value: most, outward: 1 as const }]),
  ];
});

function laid({ book, part, limit, unit }: Edge, value: number): Course {
  const course = LIMIT_FIXTURES[limit]?.course(value * UNIT[unit]);
  if (course === undefined) throw new Error(`nothing is laid out for ${limit}`);
  return judged({ ...course, horse: part === 'ponies' ? 'pony' : 'stock-horse' }, book);
}

describe('just inside and just outside', () => {
  test('is tried for every band that has a length, a width, a height or a count', () => {
    const untried = ROWS.filter(([, , limit]) => LIMIT_FIXTURES[limit] === undefined).map(([, , limit]) => limit);
    // Yes and no have their planted faults in tests/core/checks; so have the time on one obstacle and round barrels.
    expect(
      untried.filter(
        (limit) => !/^(mandatory|forbidden|combination|level|lead)\.|^obstacle\.seconds$|^back\.barrels/.test(limit),
      ),
    ).toEqual([]);
    expect(EDGES.length).toBeGreaterThan(60);
  });

  test.each(EDGES)('$book, $part: $limit at $value $unit', (edge) => {
    const { limit, value, unit, outward } = edge;
    const said = (at: number) => {
      const { check = '', finding } = LIMIT_FIXTURES[limit] ?? {};
      return saidBy(laid(edge, at), check).filter(({ id }) => finding === undefined || id === finding);
    };
    const inside = unit === 'count' ? value : value - outward * BIT[unit];
    expect(said(value).map(({ says }) => says)).toEqual([]);
    expect(said(inside).map(({ says }) => says)).toEqual([]);
    const outside = value + outward * BIT[unit];
    const [finding] = said(outside);
    expect(finding?.measured, finding?.says).toBeCloseTo(outside * UNIT[unit], 6);
    expect(outward === 1 ? finding?.allowed?.most : finding?.allowed?.least).toBeCloseTo(value * UNIT[unit], 9);
  });
});
