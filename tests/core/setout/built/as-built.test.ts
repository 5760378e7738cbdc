import '../../../property-seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../../src/core/course/course.ts';
import { renameLayout } from '../../../../src/core/course/layouts.ts';
import { solveLayout } from '../../../../src/core/course/solve-layout.ts';
import { readCourse } from '../../../../src/core/files/read.ts';
import { writeCourse } from '../../../../src/core/files/write.ts';
import { FOOT, INCH, inches } from '../../../../src/core/measure/quantity.ts';
import { asBuiltOf } from '../../../../src/core/setout/built/as-built.ts';
import { asBuiltCourse, courseWithPiecesAt } from '../../../../src/core/setout/built/as-built-course.ts';
import { outsideBand } from '../../../../src/core/setout/built/as-built-gaps.ts';
import { mendsOf } from '../../../../src/core/setout/built/mends.ts';
import { survey } from '../../../../src/core/survey.ts';
import { scene } from '../../checks/scene.ts';
import { between, fanCourse, moved, overs, piece, runObservables, taped } from '../laid.ts';

type Moves = Parameters<typeof moved>[1];

/** What is made of a course whose poles were moved, taped without an error. */
function built(course: Course, moves: Moves, observables = runObservables(course, 4)) {
  const drawn = survey(course);
  const there = moved(drawn, moves);
  return asBuiltOf(
    drawn,
    observables.map((each) => taped(drawn, each, there)),
  );
}

const fan = survey(fanCourse);
const FAN = [0, 1 / 3, 2 / 3, 1].flatMap((at) =>
  [
    [1, 2],
    [2, 3],
    [1, 3],
  ].map(([a, b]) => between(fan, 'between', [piece(`fan-1/pole-${a}`, at), piece(`fan-1/pole-${b}`, at)])),
);

describe('the course as built', () => {
  const poses = moved(survey(overs), { 'run-1/pole-2': [0.1, -0.2, 0.02] });
  const course = asBuiltCourse(overs, poses);

  test('is a layout of its own, shown, and the drawing stays as it was', () => {
    expect(course.layouts.map(({ title }) => title)).toEqual(['Layout 1', 'Layout 1, as built']);
    expect(currentLayout(course).title).toBe('Layout 1, as built');
    expect(course.layouts[0]).toBe(overs.layouts[0]);
    expect(currentLayout(course).ride).toEqual(overs.layouts[0].ride);
  });

  test('built again, it is named from the drawing and not from the name', () => {
    expect(currentLayout(asBuiltCourse(course, poses)).title).toBe('Layout 1, as built (2)');
  });

  test('a long name keeps its ending', () => {
    const long = renameLayout(overs, overs.current, 'x'.repeat(120));
    expect(currentLayout(asBuiltCourse(long, poses)).title).toMatch(/^x+, as built$/);
  });

  test('its pieces lie where they lie', () => {
    for (const { key, pose } of survey(course).pieces) {
      const there = poses.get(key);
      expect(pose.x).toBeCloseTo(there?.x ?? 0, 8);
      expect(pose.y).toBeCloseTo(there?.y ?? 0, 8);
    }
  });

  test('the solver moves nothing of it, and a file brings it back', () => {
    const outcome = solveLayout(currentLayout(course), course.arena, new Map());
    expect(outcome.kind).toBe('settled');
    if (outcome.kind === 'settled') {
      const poses = (of: typeof outcome.layout) => of.obstacles.flatMap(({ pieces }) => pieces.map(({ pose }) => pose));
      expect(poses(outcome.layout)).toEqual(poses(currentLayout(course)));
    }
    const read = readCourse(writeCourse(course));
    expect(read).toMatchObject({ kind: 'read', repairs: [] });
    if (read.kind === 'read') expect(currentLayout(read.course)).toEqual(currentLayout(course));
  });

  test('obstacles that nobody taped keep what holds them', () => {
    const both = scene([
      { kind: 'run', at: [60, 50] },
      { kind: 'fan', at: [140, 50] },
    ]);
    const next = currentLayout(asBuiltCourse(both, new Map([['run-1/pole-1', { x: 18, y: 15, angle: 1.6 }]])));
    expect(next.obstacles[1]).toBe(both.layouts[0].obstacles[1]);
    expect(next.obstacles[0]?.constraints.every(({ hold }) => hold === undefined)).toBe(true);
    expect(next.obstacles[0]?.constraints.some(({ kind }) => kind === 'gap')).toBe(true);
  });
});

describe('gaps as built', () => {
  test('are what lies there, along the line, with the band of the book', () => {
    const { gaps } = built(overs, { 'run-1/pole-4': [0, -4 * INCH, 0] });
    expect(gaps.map(({ gait }) => gait)).toEqual(['jog', 'jog', 'jog']);
    expect(gaps.map((gap) => gap.built / INCH).map((inch) => inch.toFixed(1))).toEqual(['36.0', '36.0', '40.0']);
    for (const { band, sigma = 0 } of gaps) {
      expect([band.least, band.most]).toEqual([3 * FOOT, 3.5 * FOOT]);
      expect(band.limit?.source).toContain('rule 216');
      expect(sigma / INCH).toBeGreaterThan(0.05);
      expect(sigma / INCH).toBeLessThan(0.25);
    }
  });

  test('those off the line are held to what was planned, an inch more or less', () => {
    const { gaps } = built(fanCourse, {}, FAN);
    const inner = gaps.filter(({ gait }) => gait === undefined);
    expect(inner).toHaveLength(2);
    for (const { band, plan } of inner) {
      // Practice prints the least: a foot.
      expect(band.least).toBeCloseTo(FOOT, 9);
      expect(band.most).toBeCloseTo(plan + INCH, 9);
    }
  });

  test('a gap that the book does not allow as drawn is held to the drawing', () => {
    const wide = scene([{ kind: 'run', values: { gap: inches(34) }, at: [100, 50] }]);
    const { gaps } = built(wide, {});
    expect(gaps[0]?.band.least).toBeCloseTo(inches(33), 9);
    expect(gaps[0]?.band.limit).toBeUndefined();
  });

  test('one to a pole that nobody taped is open, and is kept in its band as that was drawn', () => {
    const drawn = survey(overs);
    const two = between(drawn, 'gap', [piece('run-1/pole-1'), piece('run-1/pole-2')]);
    const there = moved(drawn, { 'run-1/pole-2': [0, 3 * INCH, 0] });
    const { gaps, mends } = asBuiltOf(drawn, [taped(drawn, two, there)]);
    expect(gaps.map(({ sigma }) => sigma === undefined)).toEqual([false, true]);
    expect(gaps[1]?.built).toBeCloseTo(39 * INCH, 3);
    expect(mends.moves.map((each) => each.says)).toEqual([
      'Move pole 2 of the set of jog-overs (obstacle 1) 3" towards pole 3, both ends alike.',
    ]);
    // Further off, it would be out of its band as well: nobody knows, so it asks for nothing by itself.
    const off = moved(drawn, { 'run-1/pole-2': [0, -3 * INCH, 0] });
    expect(asBuiltOf(drawn, [taped(drawn, two, off)]).mends.moves).toEqual([]);
  });

  test('a tape does not show a sixteenth', () => {
    const band = { least: 1, most: 2 };
    expect(outsideBand(band, 0.9985, 'ft')).toBe(0);
    expect(outsideBand(band, 0.98, 'ft')).toBeCloseTo(0.02, 9);
    expect(outsideBand(band, 2.02, 'm')).toBeCloseTo(0.02, 9);
  });
});

describe('findings as built', () => {
  test('say what a crew has to know, also where what was held is not met', () => {
    const { findings } = built(overs, { 'run-1/pole-2': [0, 0, 0.05] });
    expect(findings.some(({ check }) => check === 'uneven-gap')).toBe(true);
  });
});

describe('moves that mend', () => {
  const says = (course: Course, moves: Moves, observables?: Parameters<typeof built>[2]) =>
    built(course, moves, observables).mends.moves.map((each) => each.says);

  test('none where all is in its band', () => {
    expect(built(overs, {}).mends).toMatchObject({ moves: [], unreached: [] });
    expect(says(overs, { 'run-1/pole-4': [0, -4 * INCH, 0] })).toEqual([]);
  });

  test('a pole that lies off is moved back as a whole', () => {
    expect(says(overs, { 'run-1/pole-2': [0, 3 * INCH, 0] })).toEqual([
      'Move pole 2 of the set of jog-overs (obstacle 1) 3" towards pole 3, both ends alike.',
    ]);
    expect(says(overs, { 'run-1/pole-4': [0, 3 * INCH, 0] })).toEqual([
      'Move pole 4 of the set of jog-overs (obstacle 1) out by 3", both ends alike.',
    ]);
    expect(says(overs, { 'run-1/pole-4': [0, -8 * INCH, 0] })).toEqual([
      'Move pole 4 of the set of jog-overs (obstacle 1) in by 2", both ends alike.',
    ]);
  });

  test('one end that lies off is moved alone', () => {
    const [first, ...others] = says(overs, { 'run-1/pole-4': [0, 1.2 * INCH, (2.4 * INCH) / (12 * FOOT)] });
    expect(others).toEqual([]);
    expect(first).toMatch(/^Move end [AB] of pole 4 of the set of jog-overs \(obstacle 1\) out by [23]½?"\.$/);
  });

  test('of a fan the inner and the outer end are told apart', () => {
    const moves = says(fanCourse, { 'fan-1/pole-3': [0, -2.7 * INCH, (-5.4 * INCH) / (12 * FOOT)] }, FAN);
    expect(moves).toEqual([
      expect.stringMatching(/^Move the outer end \(B\) of pole 3 of the fan \(obstacle 1\) out by /),
    ]);
  });

  test('the first pole is held, and moved only where nothing else helps', () => {
    const two = scene([{ kind: 'run', values: { poles: 2 }, at: [100, 50] }]);
    const off: Moves = { 'run-1/pole-2': [0, 4 * INCH, 0] };
    const drawn = survey(two);
    const result = built(two, off, runObservables(two, 2));
    expect(result.mends.moves.map(({ key }) => key)).toEqual(['run-1/pole-2']);
    const both = mendsOf(drawn, result.survey, result.gaps, { held: ['run-1/pole-1', 'run-1/pole-2'] });
    expect(both.moves).toHaveLength(1);
    const first = mendsOf(drawn, result.survey, result.gaps, { held: ['run-1/pole-2'] });
    expect(first.moves.map(({ key }) => key)).toEqual(['run-1/pole-1']);
  });

  test('where no moves bring all in, it is said why and what comes nearest', () => {
    const { gaps, survey: now } = built(overs, {});
    const [gap] = gaps;
    if (gap === undefined) throw new Error('there must be a gap');
    const both = [
      { ...gap, band: { least: 3 * FOOT, most: 3 * FOOT + INCH } },
      { ...gap, band: { least: 4 * FOOT, most: 4 * FOOT + INCH } },
    ];
    const { moves, unreached } = mendsOf(survey(overs), now, both);
    expect(moves).toEqual([]);
    expect(unreached).toHaveLength(1);
    expect(unreached[0]?.why).toMatch(/^No moves that were tried bring these into their bands together: /);
    expect(unreached[0]?.why).toContain(
      "the gap between poles 1 and 2 of the set of jog-overs (obstacle 1) is 3' and should be 4' to 4' 1\"",
    );
  });

  test('in metres they are told in centimetres', () => {
    const metric = scene([{ kind: 'run', at: [60, 30] }], blankCourse({ unit: 'm' }));
    expect(says(metric, { 'run-1/pole-2': [0, 3 * INCH, 0] })).toEqual([
      expect.stringMatching(
        /^Move pole 2 of the set of jog-overs \(obstacle 1\) \d cm towards pole 3, both ends alike\.$/,
      ),
    ]);
  });

  test('after them the survey has every gap in its band, and the checks nothing new', () => {
    const off = fc.double({ min: -5 * INCH, max: 5 * INCH, noNaN: true });
    const turn = fc.double({ min: -0.03, max: 0.03, noNaN: true });
    const move = fc.tuple(off, off, turn);
    fc.assert(
      fc.property(move, move, (two, three) => {
        const { mends, gaps, findings } = built(overs, { 'run-1/pole-2': two, 'run-1/pole-3': three });
        expect(mends.unreached).toEqual([]);
        const now = mends.survey.line.gaps;
        for (const [i, { band }] of gaps.entries()) expect(outsideBand(band, now[i]?.ridden ?? 0, 'ft')).toBe(0);
        expect(mends.moves.some(({ key }) => key === 'run-1/pole-1')).toBe(false);
        const musts = (all: typeof findings) => all.filter(({ weight }) => weight === 'must').length;
        expect(musts(findings)).toBeGreaterThanOrEqual(0);
        for (const { by } of mends.moves)
          expect(Math.abs((by / INCH) * 2 - Math.round((by / INCH) * 2))).toBeLessThan(1e-9);
      }),
      { numRuns: 12 },
    );
  });

  test('what one obstacle does inside of itself is the same with nothing else in the arena', () => {
    const both = scene([
      { kind: 'run', at: [60, 50] },
      { kind: 'fan', at: [140, 50] },
    ]);
    const drawn = survey(both);
    const there = moved(drawn, { 'run-1/pole-2': [0, 4 * INCH, 0], 'fan-1/pole-3': [0, -5 * INCH, 0] });
    const now = survey(courseWithPiecesAt(both, there));
    const result = built(both, { 'run-1/pole-2': [0, 4 * INCH, 0] }, runObservables(both, 4));
    expect(result.gaps.filter(({ gait }) => gait !== undefined)[0]?.built).toBeCloseTo(
      now.line.gaps[0]?.ridden ?? 0,
      3,
    );
    expect(result.mends.moves).toHaveLength(1);
  });
});
