/**
 * Every sentence of a set-out, by kind, on one page for a person to read aloud. After a change that is meant:
 * `POLEWRIGHT_UPDATE=1 npx vitest run tests/core/setout/words/setout-words.test.ts`, and read the page.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Grip, ObservationKind } from '../../../../src/core/constraints/constraint.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import type { Observable, SetOutCrew, SetOutStep } from '../../../../src/core/setout/setout.ts';
import { observationWords } from '../../../../src/core/setout/words/observation-words.ts';
import type { PartNames } from '../../../../src/core/setout/words/place-words.ts';
import { readingWords, roundingWords } from '../../../../src/core/setout/words/reading-words.ts';
import {
  gapPlaceWords,
  partTitle,
  stepSentences,
  thingCounts,
  toolWords,
} from '../../../../src/core/setout/words/setout-words.ts';
import { bareParts, crewWith, MIXED, observationOf, planOf } from '../sample-plans.ts';

const PAGE = new URL('./setout-sentences.txt', import.meta.url);

const RUN = ['run-1/pole-1', 'run-1/pole-2', 'run-1/pole-3'] as const;
const [MARKER, ARM, ARM_2, ARM_3] = ['spoke-2/marker', 'spoke-2/arm-1', 'spoke-2/arm-2', 'spoke-2/arm-3'];
const L = { outerX: 'back-l-3/outer-x', outerY: 'back-l-3/outer-y', innerX: 'back-l-3/inner-x' };
const T = { bar: 'side-pass-t-6/bar', stem: 'side-pass-t-6/stem' };
const GATE = 'gate-4/gate';
const RAISED = 'raised-run-5/pole-2';

function namesOf(obstacles: readonly [string, ...string[]], crew: Partial<SetOutCrew> = {}): PartNames {
  const part = bareParts(MIXED, obstacles);
  return { survey: MIXED, plan: planOf(part, crewWith(crew)), part };
}

type Row = readonly [
  about: string,
  laid: string,
  kind: ObservationKind,
  grips: readonly [Grip, Grip],
  more?: Partial<Observable> | undefined,
];

const on = (piece: string, at?: number): Grip => ({ piece, ...(at !== undefined && { at }) });
const SOUTH = { wall: 'south' } as const;
const WEST = { wall: 'west' } as const;
const { length } = MIXED.course.arena;

const ROWS: readonly Row[] = [
  ['at both ends A', RUN[1], 'gap', [on(RUN[0], 0), on(RUN[1], 0)], { side: -1 }],
  ['at the middles', RUN[1], 'gap', [on(RUN[0], 0.5), on(RUN[1], 0.5)], { side: -1 }],
  ['at two thirds, where a stripe begins', RUN[1], 'gap', [on(RUN[0], 2 / 3), on(RUN[1], 2 / 3)], { side: -1 }],
  ['where a stripe ends', RUN[1], 'gap', [on(RUN[0], 1 / 6), on(RUN[1], 1 / 6)], { side: -1 }],
  ['at the middle of a stripe', RUN[1], 'gap', [on(RUN[0], 1 / 12), on(RUN[1], 1 / 12)], { side: -1 }],
  ['where no stripe says it', RUN[1], 'gap', [on(RUN[0], 0.7), on(RUN[1], 0.7)], { side: -1 }],
  ['two different places', RUN[1], 'gap', [on(RUN[0], 0.25), on(RUN[1], 1)], { side: -1 }],
  ['the laid pole first', RUN[0], 'gap', [on(RUN[0], 0), on(RUN[1], 0)], { side: -1 }],
  ['end to end', RUN[1], 'between', [on(RUN[0], 0), on(RUN[1], 1)]],
  ['middle to a place', RUN[1], 'between', [on(RUN[0], 0.5), on(RUN[1], 2 / 3)]],
  ['from a marker', ARM, 'between', [on(MARKER), on(ARM, 1)]],
  ['to a marker', MARKER, 'between', [on(MARKER), on(ARM, 1)]],
  ['to a marker', MARKER, 'beside', [on(MARKER), on(RUN[2])], { side: -1 }],
  ['from a marker', RUN[2], 'beside', [on(MARKER), on(RUN[2])], { side: -1 }],
  ['from a marker', ARM, 'clear', [on(MARKER), on(ARM, 0)]],
  ['to a marker', MARKER, 'clear', [on(MARKER), on(ARM, 0)]],
  ['forward', RUN[1], 'ahead', [on(RUN[0], 0), on(RUN[1], 0.25)]],
  ['back', RUN[1], 'ahead', [on(RUN[0], 1), on(RUN[1], 0.5)]],
  ['past the end', ARM, 'ahead', [on(ARM_3, 0), on(ARM, 0)]],
  ['the laid pole first', RUN[0], 'ahead', [on(RUN[0], 0), on(RUN[1], 0.25)]],
  ['a marker, from a pole', MARKER, 'ahead', [on(ARM, 0), on(MARKER)]],
  ['ends', RUN[1], 'level', [on(RUN[0], 0), on(RUN[1], 0)]],
  ['middles', RUN[1], 'level', [on(RUN[0], 0.5), on(RUN[1], 0.5)]],
  ['places', RUN[1], 'level', [on(RUN[0], 2 / 3), on(RUN[1], 2 / 3)]],
  ['ahead', RUN[1], 'level', [on(RUN[0], 0), on(RUN[1], 0.25)]],
  ['behind', RUN[1], 'level', [on(RUN[0], 0.25), on(RUN[1], 0)]],
  ['an end of another pole', ARM, 'in-line', [on(ARM_3), on(ARM, 1)]],
  ['aimed at a marker', ARM, 'in-line', [on(ARM), on(MARKER)]],
  ['a marker brought in', MARKER, 'in-line', [on(ARM), on(MARKER)]],
  ['off the line', RUN[1], 'in-line', [on(RUN[0]), on(RUN[1], 0)]],
  ['with the board', ARM_2, 'square', [on(ARM), on(ARM_2)]],
  ['an end', T.stem, 'against', [on(T.stem, 0), on(T.bar)], { side: -1 }],
  ['a side', T.bar, 'against', [on(T.stem, 0), on(T.bar)], { side: -1 }],
  ['a little off it', L.outerX, 'against', [on(L.outerX, 0), on(L.outerY)], { side: -1 }],
  ['from the corner', RUN[0], 'along-wall', [on(RUN[0], 0), SOUTH]],
  ['from the far corner', L.outerX, 'along-wall', [on(L.outerX, 1), SOUTH], { from: length, runs: -1 }],
  ['from a mark', RUN[0], 'along-wall', [on(RUN[0], 0), SOUTH], { from: 30 * FOOT }],
  ['a marker', MARKER, 'along-wall', [on(MARKER), WEST], { from: 100 * FOOT, runs: -1 }],
  ['square to the wall', RUN[0], 'off-wall', [on(RUN[0], 0), SOUTH]],
  ['along the wall, an end', RUN[0], 'off-wall', [on(RUN[0], 0), WEST]],
  ['along the wall, its middle', RUN[0], 'off-wall', [on(RUN[0]), WEST]],
  ['a marker', MARKER, 'off-wall', [on(MARKER), SOUTH]],
  ['the gate', GATE, 'off-wall', [on(GATE, 0), WEST]],
  ['from a corner', RUN[0], 'from-rail', [on(RUN[0], 0), SOUTH]],
  ['from a mark', RUN[0], 'from-rail', [on(RUN[0], 1), SOUTH], { from: 25 * FOOT }],
];

const ALL = [...new Set(MIXED.pieces.map(({ obstacle }) => obstacle))];

/** Names in the part of the one obstacle that all the grips are of. */
function namesFor([, laid, , grips]: Row, crew: Partial<SetOutCrew> = {}): PartNames {
  const keys = [laid, ...grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []))];
  const ids = [...new Set(keys.map((key) => key.split('/')[0] ?? ''))];
  return namesOf(ids as [string, ...string[]], crew);
}

function rowsOf(kind: ObservationKind, crew: Partial<SetOutCrew> = {}): readonly string[] {
  return ROWS.filter((row) => row[2] === kind).map((row) => {
    const [about, laid, , grips, more] = row;
    return `${about}: ${observationWords(namesFor(row, crew), observationOf(MIXED, kind, grips, more), laid).says}`;
  });
}

function step(piece: string, more: Partial<SetOutStep> = {}): SetOutStep {
  const error = { along: 0.01, across: 0.01, turn: 0.005, end: 0.02 };
  return { number: 2, piece, held: [], observations: [], checks: [], error, ...more };
}

const SECOND = step(RUN[1], {
  held: [RUN[0]],
  observations: [
    observationOf(MIXED, 'gap', [on(RUN[0], 0), on(RUN[1], 0)], { side: -1 }),
    observationOf(MIXED, 'gap', [on(RUN[0], 1), on(RUN[1], 1)], { side: -1 }),
    observationOf(MIXED, 'level', [on(RUN[0], 0), on(RUN[1], 0)]),
  ],
  checks: [{ ...observationOf(MIXED, 'between', [on(RUN[0], 0), on(RUN[1], 1)]), tolerance: INCH / 2 }],
});
const SQUARE = step(L.outerY, {
  held: [L.outerX],
  observations: [observationOf(MIXED, 'square', [on(L.outerX), on(L.outerY)])],
  checks: [{ ...observationOf(MIXED, 'square', [on(L.outerX), on(L.outerY)]), tolerance: 0.006 }],
});
const BY_WALLS = step(RUN[0], {
  held: ['wall south', 'wall west'],
  observations: [
    observationOf(MIXED, 'along-wall', [on(RUN[0], 0), SOUTH]),
    observationOf(MIXED, 'off-wall', [on(RUN[0], 0), SOUTH]),
    observationOf(MIXED, 'off-wall', [on(RUN[0], 1), WEST]),
  ],
});
const WEAK = { angle: 0.35, says: 'Tape from end B too, where they would meet at 70°.' };

function told(title: string, names: PartNames, each: SetOutStep): readonly string[] {
  return [`## ${title}`, ...stepSentences(names, each), ''];
}

function page(): string {
  const run = namesOf(['run-1']);
  const gap = { keys: [RUN[0], RUN[1]], at: [2 / 3, 2 / 3], plan: 0.9, sigma: 0.01, isRidden: true } as const;
  return [
    ...[...new Set(ROWS.map(([, , kind]) => kind))].flatMap((kind) => [`# ${kind}`, ...rowsOf(kind), '']),
    '# metric tapes',
    ...rowsOf('gap', { marked: 'm' }),
    ...rowsOf('along-wall', { marked: 'm' }),
    ...rowsOf('ahead', { marked: 'm' }),
    ...rowsOf('level', { marked: 'm' }),
    '',
    '# steps',
    ...told('a pole from another', run, SECOND),
    ...told('the same, alone', namesOf(['run-1'], { people: 1 }), SECOND),
    ...told('the first pole from the walls', run, BY_WALLS),
    ...told('the same, alone', namesOf(['run-1'], { people: 1 }), BY_WALLS),
    ...told('square by 3-4-5', namesOf(['back-l-3'], { rightAngle: 'three-four-five' }), SQUARE),
    ...told('the same, metric', namesOf(['back-l-3'], { rightAngle: 'three-four-five', marked: 'm' }), SQUARE),
    ...told('a weak fix', run, { ...SECOND, weak: WEAK }),
    ...told('raised ends', namesOf(['raised-run-5']), step(RAISED)),
    ...told('a marker', namesOf(['spoke-2']), step(MARKER, { turnedByEye: true })),
    ...told('a gate, by eye', namesOf(['gate-4']), step(GATE, { turnedByEye: true })),
    ...told('in a part of two obstacles', namesOf(['run-1', 'gate-4']), { ...SECOND, held: [RUN[0], GATE] }),
    '# parts and gaps',
    partTitle(run),
    partTitle(namesOf(['run-1', 'gate-4'])),
    gapPlaceWords(run, { ...gap, rounded: 0.9 }),
    '',
    '# what is needed',
    ...thingCounts(
      namesOf(ALL as [string, ...string[]]),
      MIXED.pieces.map(({ key }) => key),
    ),
    ...toolWords(MIXED, { ...run.plan, ...planOf(bareParts(MIXED, ['run-1'])) }),
    ...toolWords(MIXED, planOf({ ...bareParts(MIXED, ['run-1']), steps: [BY_WALLS, SQUARE] }, crewWith({ people: 1 }))),
    '',
  ].join('\n');
}

const PAGE_NOW = page();

test('every sentence is as it was when a person last read the page aloud', () => {
  if (process.env.POLEWRIGHT_UPDATE === '1') writeFileSync(PAGE, PAGE_NOW);
  expect(PAGE_NOW).toBe(readFileSync(PAGE, 'utf8'));
});

test('every kind of observation is on the page, and no sentence lacks a name, a letter or a figure', () => {
  expect(new Set(ROWS.map(([, , kind]) => kind)).size).toBe(12);
  expect(PAGE_NOW).not.toMatch(/undefined|NaN|–|end [ ,.:]|ends ?and/);
  expect(PAGE_NOW).not.toMatch(/\b(\w+) \1\b/i);
});

const NAMED = ROWS.map((row) => ({ about: `${row[2]}, ${row[0]}`, row }));

test.each(NAMED)('$about: one sentence with its reading', ({ row }) => {
  const [, laid, kind, grips, more] = row;
  const observation = observationOf(MIXED, kind, grips, more);
  const { says, figure } = observationWords(namesFor(row), observation, laid);
  expect(says).toContain(figure ?? '');
  expect(says).toMatch(/^[A-Z].*\.$/);
});

describe('a reading', () => {
  test.each([
    [3 * FOOT, `3' 0"`, '0.915 m'],
    [6 * FOOT + 3.5 * INCH, `6' 3½"`, '1.92 m'],
    [INCH / 2, '½"', '0.015 m'],
    [8 * INCH, '8"', '0.205 m'],
    [1.9, `6' 2¾"`, '1.90 m'],
    [-1.9, `−6' 2¾"`, '−1.90 m'],
  ])('of %f m is %s, or %s', (value, feet, metres) => {
    expect(readingWords(value, 'ft')).toBe(feet);
    expect(readingWords(value, 'm')).toBe(metres);
  });

  test('tells what rounding does to it, and nothing where it does nothing', () => {
    const base = observationOf(MIXED, 'between', [on(RUN[0], 0), on(RUN[1], 1)]);
    const rounded = { ...base, exact: 6 * FOOT + 4.19 * INCH, reading: 6 * FOOT + 4.25 * INCH };
    expect(roundingWords(rounded, 'ft')).toBe(`6' 4¼" stands for 6' 4.19" on the drawing.`);
    expect(roundingWords({ ...rounded, exact: rounded.reading }, 'ft')).toBeUndefined();
    expect(roundingWords({ ...rounded, exact: 1.937, reading: 1.935 }, 'm')).toBe(
      '1.935 m stands for 1.937 m on the drawing.',
    );
  });
});
