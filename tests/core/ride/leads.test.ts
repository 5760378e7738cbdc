import { describe, expect, test } from 'vitest';
import type { Course, Leg } from '../../../src/core/course/course.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { pathEnd } from '../../../src/core/plane/path.ts';
import { type Pose, pose } from '../../../src/core/plane/pose.ts';
import { leadNotes, leadStretches } from '../../../src/core/ride/leads.ts';
import type { Line, LineElement } from '../../../src/core/ride/line.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, fan, leg, run } from './hand-laid.ts';

interface Part {
  readonly part: LineElement['part'];
  readonly curves: readonly (readonly [length: number, curvature: number])[];
  readonly gait?: LineElement['gait'];
}

/** Elements of leg 0 with the given curves, one after the other. */
function ridden(parts: readonly Part[]): LineElement[] {
  let start: Pose = pose(5, 5, 0);
  let from = 0;
  return parts.map(({ part, curves, gait = 'lope' }): LineElement => {
    const path = curves.map(([length, curvature]) => {
      const stretch = { start, length, curvature };
      start = pathEnd([stretch]);
      return stretch;
    });
    const length = curves.reduce((sum, [each]) => sum + each, 0);
    from += length;
    return {
      leg: 0,
      part,
      move: 'ride',
      gait,
      path,
      from: from - length,
      length,
      facing: 0,
      turn: 0,
      seconds: 1,
      moving: 1,
    };
  });
}

function told(parts: readonly Part[], legs: readonly Partial<Leg>[] = [{}]) {
  const elements = ridden(parts);
  const leads = leadStretches(
    elements,
    legs.map((each) => leg('run-1', { approach: 'lope', gait: 'lope', ...each })),
    STOCK_HORSE,
  );
  return { leads, notes: leadNotes(leads, elements, { horse: STOCK_HORSE }) };
}

const SERPENTINE: readonly Part[] = [
  {
    part: 'approach',
    curves: [
      [3, 0],
      [8, 1 / 6],
      [10, 0],
      [8, -1 / 6],
      [2, 0],
    ],
  },
];

describe('the lead', () => {
  test('is the inside of the bend, on straights of the next bend, after the last bend of that one', () => {
    expect(told(SERPENTINE).leads.map(({ lead, bend }) => [lead, bend])).toEqual([
      ['left', null],
      ['left', 'left'],
      ['right', null],
      ['right', 'right'],
      ['right', null],
    ]);
  });

  test('is nobody’s on a line that never bends', () => {
    expect(told([{ part: 'approach', curves: [[20, 0]] }]).leads.map(({ lead }) => lead)).toEqual([null]);
  });

  test('does not follow a bend of a few degrees', () => {
    expect(
      told([
        {
          part: 'approach',
          curves: [
            [10, 0],
            [1, 0.1],
            [10, 0],
          ],
        },
      ]).leads.map(({ bend }) => bend),
    ).toEqual([null]);
  });

  test('is nothing at a jog', () => {
    expect(told(SERPENTINE.map((each) => ({ ...each, gait: 'jog' as const }))).leads).toEqual([]);
  });

  test('is the chosen one where one is chosen', () => {
    const { leads } = told(SERPENTINE, [{ lead: 'right' }]);
    expect(leads.every(({ lead, chosen }) => lead === 'right' && chosen)).toBe(true);
  });
});

describe('notes about leads', () => {
  test('a change is needed between a left and a right bend, with the straight between as its room', () => {
    const [change, ...more] = told(SERPENTINE).notes;
    expect(more).toEqual([]);
    expect(change).toMatchObject({ kind: 'change', before: 'left', after: 'right', from: 11, to: 21, room: 10 });
    expect(change).toMatchObject({ fits: true, wants: STOCK_HORSE.leadChange.value });
  });

  test('a change without room is found', () => {
    const notes = told([
      {
        part: 'approach',
        curves: [
          [8, 1 / 6],
          [1, 0],
          [8, -1 / 6],
        ],
      },
    ]).notes;
    expect(notes).toMatchObject([{ kind: 'change', room: 1, fits: false }]);
  });

  test('the outside lead on an easy bend is a counter-lope', () => {
    const { notes } = told([{ part: 'approach', curves: [[8, 1 / 6]] }], [{ lead: 'right' }]);
    expect(notes).toMatchObject([{ kind: 'counter-lope', lead: 'right', bend: 'left', from: 0, to: 8 }]);
    expect(notes[0]).toMatchObject({ radius: expect.closeTo(6, 9) });
  });

  test('the outside lead over an obstacle, and on a bend tighter than the easy one, is wrong', () => {
    for (const part of [
      { part: 'obstacle', curves: [[8, 1 / 6]] },
      { part: 'approach', curves: [[8, 1 / 3.5]] },
    ] as const) {
      expect(told([part], [{ lead: 'right' }]).notes.map(({ kind }) => kind)).toEqual(['wrong-lead']);
    }
  });

  test('a change has its place in the middle of its room, off the poles', () => {
    const [change] = told(SERPENTINE).notes;
    expect(change).toMatchObject({ place: 16 });
    const [over] = told([
      { part: 'approach', curves: [[8, 1 / 6]] },
      { part: 'obstacle', curves: [[6, 0]] },
      {
        part: 'finish',
        curves: [
          [4, 0],
          [8, -1 / 6],
        ],
      },
    ]).notes;
    expect(over).toMatchObject({ kind: 'change', from: 8, to: 18, place: 16 });
    expect(over?.kind === 'change' && Math.hypot(over.pose.x - over.at.x, over.pose.y - over.at.y)).toBe(0);
  });

  test('a simple change wants both transitions and a stride of the jog between them', () => {
    const elements = ridden(SERPENTINE);
    const leads = leadStretches(elements, [leg('run-1', { approach: 'lope' })], STOCK_HORSE);
    const [change] = leadNotes(leads, elements, { horse: STOCK_HORSE, how: 'simple' });
    const { jog, lope } = STOCK_HORSE.gaits;
    const mean = (jog.stride.value / jog.period.value + lope.stride.value / lope.period.value) / 2;
    const seconds = STOCK_HORSE.transition.up.value + STOCK_HORSE.transition.down.value;
    expect(change).toMatchObject({ how: 'simple', wants: expect.closeTo(seconds * mean + jog.stride.value, 9) });
  });

  test('a lope that never bends has an open lead, once for all of it', () => {
    const straight: readonly Part[] = [
      { part: 'approach', curves: [[20, 0]] },
      { part: 'obstacle', curves: [[6, 0]] },
    ];
    expect(told(straight).notes).toMatchObject([{ kind: 'open', leg: 0, from: 0, to: 26 }]);
    expect(told(straight, [{ lead: 'left' }]).notes).toEqual([]);
  });

  test('the lead is picked up that is needed next, where a small bend is over before a change could be made', () => {
    const parts = (turn: number): readonly Part[] => [
      {
        part: 'approach',
        curves: [
          [turn * 6, 1 / 6],
          [1.5, 0],
        ],
      },
      { part: 'obstacle', curves: [[8, -1 / 4]] },
    ];
    const small = told(parts(0.3), [{ approach: 'jog' }]);
    expect(small.leads.map(({ lead }) => lead)).toEqual(['right', 'right', 'right']);
    expect(small.notes).toEqual([]);
    expect(told(parts(0.9), [{ approach: 'jog' }]).notes).toMatchObject([{ kind: 'change', fits: false }]);
  });

  test('what is loped on beyond an obstacle is on its lead, whatever lead the next one is ridden on', () => {
    const elements = ridden([
      { part: 'obstacle', curves: [[8, -1 / 4]] },
      { part: 'approach', curves: [[3, 0]] },
    ]).map((each, i) => ({ ...each, leg: i }));
    const legs = [leg('run-1', { approach: 'lope', gait: 'lope' }), leg('run-2', { approach: 'jog', lead: 'left' })];
    expect(leadStretches(elements, legs, STOCK_HORSE).map((each) => [each.leg, each.lead])).toEqual([
      [0, 'right'],
      [0, 'right'],
    ]);
  });

  test('a gait between two lopes takes away the need to change', () => {
    const [a, b] = [
      { part: 'approach', curves: [[8, 1 / 6]] },
      { part: 'finish', curves: [[8, -1 / 6]] },
    ] as const;
    expect(told([a, b]).notes.map(({ kind }) => kind)).toEqual(['change']);
    expect(told([a, { part: 'obstacle', curves: [[6, 0]], gait: 'jog' }, b]).notes).toEqual([]);
  });

  test('a halt between two lopes takes it away too, though the line goes on where it stood', () => {
    const [before, halt, after] = ridden([
      { part: 'approach', curves: [[8, 1 / 6]] },
      { part: 'obstacle', curves: [[0, 0]] },
      { part: 'finish', curves: [[8, -1 / 6]] },
    ]);
    if (before === undefined || halt === undefined || after === undefined) throw new Error('three elements');
    const elements = [before, { ...halt, move: 'turn', turn: 1 } as const, after];
    const leads = leadStretches(elements, [leg('run-1', { approach: 'lope' })], STOCK_HORSE);
    expect(leads.map(({ lead, lope }) => [lead, lope])).toEqual([
      ['left', 0],
      ['right', 1],
    ]);
    expect(leadNotes(leads, elements, { horse: STOCK_HORSE })).toEqual([]);
  });

  test('of a course: a fan loped on its outside lead is wrong, on the inside one it is not', () => {
    const lead = (chosen: Leg['lead']): Course =>
      course([fan('fan-1', pose(30, 15, 0), { radius: 4 })], {
        start: pose(33, 4, Math.PI / 2),
        legs: [leg('fan-1', { gait: 'lope', approach: 'jog', ...(chosen === undefined ? {} : { lead: chosen }) })],
      });
    const kinds = (line: Line) => line.leadNotes.map(({ kind }) => kind);
    expect(kinds(survey(lead('right')).line)).toEqual(['wrong-lead']);
    expect(kinds(survey(lead('left')).line)).toEqual([]);
    expect(kinds(survey(lead(undefined)).line)).toEqual([]);
  });
});

describe('how much of a gait is shown', () => {
  const line = survey(
    course([run('run-1', pose(20, 5, 0)), run('run-2', pose(40, 5, 0))], {
      start: pose(3, 5, 0),
      legs: [leg('run-1'), leg('run-2', { approach: 'lope', gait: 'lope' })],
      end: pose(56, 5, 0),
    }),
  ).line;
  const of = (gait: string) => line.shown.find((each) => each.gait === gait);

  test('is measured over its longest stretch without a break, and between obstacles', () => {
    const jogged = line.elements.filter(({ gait }) => gait === 'jog');
    const lengths = jogged.map(({ length }) => length);
    expect(jogged.map(({ part }) => part)).toEqual(['approach', 'obstacle', 'approach']);
    expect(of('jog')?.total).toBeCloseTo(line.transitions[1]?.at ?? 0, 9);
    expect(of('jog')?.longest).toEqual({ from: 0, to: expect.closeTo(of('jog')?.total ?? 0, 9) });
    expect(of('jog')?.between).toEqual({ from: 0, to: expect.closeTo(lengths[0] ?? 0, 9) });
    expect(of('lope')?.longest.to).toBeCloseTo(line.length, 9);
  });

  test('is nothing for a gait that is not ridden', () => {
    expect(of('walk')).toEqual({ gait: 'walk', total: 0, longest: { from: 0, to: 0 }, between: { from: 0, to: 0 } });
  });
});
