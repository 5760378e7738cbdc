import { describe, expect, test } from 'vitest';
import { CHECKS, closerFindingsOf, findingsOf } from '../../../../src/core/checks/checks.ts';
import { applySafeRemedies } from '../../../../src/core/checks/results/safe-fixes.ts';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import type { Course } from '../../../../src/core/course/course.ts';
import { takeWays } from '../../../../src/core/course/edit-ride.ts';
import { FOOT } from '../../../../src/core/measure/quantity.ts';
import { bestWaysOf, survey } from '../../../../src/core/survey.ts';
import { RANDOM_COURSES, STARTERS } from '../../ride/courses.ts';
import { scene, type Thing } from '../scene.ts';

const told = (course: Course) => closerFindingsOf(survey(course)).filter(({ check }) => check === 'better-way');

/** The course ridden by the best ways. */
function ridBest(course: Course): Course {
  return takeWays(course, bestWaysOf(survey(course)).groups.flat());
}

const LOPED = { gait: 'lope', approach: 'lope' } as const;
const JOGGED = { gait: 'jog', approach: 'jog' } as const;

/** Between two bridges that are ridden east, a curve from south to north whose outside faces east: it turns to the left. */
const between = (curve: Thing): Course =>
  scene([{ kind: 'bridge', at: [30, 30] }, curve, { kind: 'bridge', at: [30, 75, 180] }]);

const CURVES: readonly (readonly [string, Thing, string])[] = [
  ['a curved run', { kind: 'curved-run', at: [110, 50, -90], leg: JOGGED }, 'left'],
  ['a half circle', { kind: 'curved-run', values: { poles: 7 }, at: [110, 50, -90], leg: JOGGED }, 'left'],
  ['a fan', { kind: 'fan', values: { poles: 5 }, at: [110, 50, -90], leg: JOGGED }, 'left'],
  ['a spoke', { kind: 'spoke', at: [110, 50, -90], leg: LOPED }, 'left'],
];

describe('a way that is better', () => {
  test.each(CURVES)(
    'is found for %s that is ridden against its sense, and nothing is said of the other',
    (_, curve, sense) => {
      const against = sense === 'left' ? 'right' : 'left';
      const [right, wrong] = [sense, against].map((passage) => between({ ...curve, leg: { ...curve.leg, passage } }));
      if (right === undefined || wrong === undefined) throw new Error('there are two');
      expect(told(right).filter(({ leg }) => leg === 1)).toEqual([]);
      const [finding] = told(wrong);
      expect(finding?.leg).toBe(1);
      expect(finding?.weight).toBe('note');
      expect(finding?.keys).toEqual([`${curve.kind}-1`]);
      const [line, better] = [survey(wrong).line, survey(right).line];
      expect(finding?.measured).toBeCloseTo(line.clock.go - better.clock.go, 9);
      const feet = Math.round((line.length - better.length) / FOOT);
      const seconds = Math.round(line.clock.go - better.clock.go);
      expect(feet).toBeGreaterThan(5);
      expect(finding?.says).toMatch(
        new RegExp(`^The whole ride is ${feet}' and ${seconds} s less with the .* \\(obstacle 2\\) ridden ".*left`),
      );
      expect(finding?.remedies.map(({ says }) => says)).toEqual([
        `Ride it the better way: ${feet}' and ${seconds} s less`,
      ]);
      expect(finding?.remedies[0]?.apply(wrong).layouts).toEqual(right.layouts);
    },
  );

  test('is found for chevrons that lie with their points the other way', () => {
    const ridden = (passage: string) =>
      scene([
        { kind: 'bridge', at: [30, 50] },
        { kind: 'chevron', at: [90, 50], leg: { ...JOGGED, passage } },
        { kind: 'bridge', at: [160, 50] },
      ]);
    const said = told(ridden('points-return'));
    expect(said.map(({ leg, keys }) => ({ leg, keys }))).toEqual([{ leg: 1, keys: ['chevron-1'] }]);
    expect(told(ridden('points'))).toEqual([]);
  });

  test('that takes several legs is one finding, with one fix for all of them', () => {
    const course = scene([
      { kind: 'run', at: [150, 50], leg: { passage: 'return' } },
      { kind: 'bridge', at: [90, 50], leg: { passage: 'forward' } },
      { kind: 'run', at: [40, 50], leg: { passage: 'forward' } },
    ]);
    const [finding, ...others] = told(course);
    expect(others).toEqual([]);
    expect(finding?.keys.length).toBeGreaterThan(1);
    expect(finding?.id).toMatch(/^better-way:leg-\d+\+leg-\d+/);
    const [remedy] = finding?.remedies ?? [];
    expect(told(remedy?.apply(course) ?? course)).toEqual([]);
  });

  test('is never taken without being asked, and waits for a closer look', () => {
    const course = between({ kind: 'curved-run', at: [110, 50, -90], leg: { ...JOGGED, passage: 'right' } });
    expect(told(course)[0]?.remedies[0]?.safe).toBeUndefined();
    expect(applySafeRemedies(course).course.layouts[0].ride).toEqual(course.layouts[0].ride);
    expect(findingsOf(survey(course)).map(({ check }) => check)).not.toContain('better-way');
  });

  test('is only a note, as all that takes a closer look: so no other fix has to wait for it', () => {
    const closer = CHECKS.filter(({ runs }) => runs === 'closer');
    expect(closer.map(({ id }) => id)).toContain('better-way');
    expect(closer.filter(({ weight }) => weight !== 'note')).toEqual([]);
  });

  test('is waived like anything else', () => {
    const course = between({ kind: 'curved-run', at: [110, 50, -90], leg: { ...JOGGED, passage: 'right' } });
    const id = told(course)[0]?.id ?? '';
    const waived = { ...course, waived: [{ finding: id, reason: 'The judge stands on the inside.' }] };
    expect(told(waived).map((each) => each.waived)).toEqual(['The judge stands on the inside.']);
  });

  test('is told in metres where the course is in metres', () => {
    const feet = between({ kind: 'curved-run', at: [110, 50, -90], leg: { ...JOGGED, passage: 'right' } });
    expect(told({ ...feet, unit: 'm' })[0]?.says).toMatch(/^The whole ride is \d+\.\d0 m and \d+ s less with /);
  });

  test('of less than 5 ft and 2 s is not told, and what is told saves as much and has its fix', () => {
    for (const course of [...STARTERS.map(([, each]) => each), ...RANDOM_COURSES.slice(0, 40)]) {
      const { line } = survey(course);
      for (const { remedies, measured, says } of told(course)) {
        expect(says).toMatch(
          /^The whole ride is (\d+' and \d+ s less|\d+' less|\d+ s less(, though \d+' longer)?) with /,
        );
        const { line: after } = survey(remedies[0]?.apply(course) ?? course);
        expect(line.clock.go - after.clock.go).toBeCloseTo(measured ?? Number.NaN, 9);
        expect(line.length - after.length >= 5 * FOOT || line.clock.go - after.clock.go >= 2).toBe(true);
      }
      expect(told(ridBest(course))).toEqual([]);
    }
    expect(told(blankCourse())).toEqual([]);
  });
});
