import { expect, test } from 'vitest';
import { comparison, measureText } from '../../../src/core/change/comparison.ts';
import { crewOf } from '../../../src/core/change/crew.ts';
import { crewChange } from '../../../src/core/change/layout-change-over.ts';
import { layoutSurvey } from '../../../src/core/change/layout-survey.ts';
import { lineClearance } from '../../../src/core/change/line-clearance.ts';
import { MEASURES } from '../../../src/core/change/measures.ts';
import { changeOver } from '../../../src/core/change/plan-change-over.ts';
import { findingsOf } from '../../../src/core/checks/checks.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { branchLayout, chooseLayout, editCurrentLayout, renameLayout } from '../../../src/core/course/layouts.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, leg, run } from '../ride/hand-laid.ts';

function valuesOf(of: Course): Readonly<Record<string, number | null>> {
  const { measures } = comparison(of, [of.current]);
  return Object.fromEntries(measures.map(({ measure, values }) => [measure.id, values[0]?.value ?? null]));
}

const GAP = 3 * FOOT;
/** One straight line: 20 m to four poles at the jog, begun at the jog, and nothing behind. */
const STRAIGHT = course([run('run-1', pose(24, 5, 0), { gap: GAP })], {
  start: pose(4, 5, 0),
  legs: [leg('run-1', { approach: 'jog' })],
});

test('measures of one straight line are what arithmetic says', () => {
  const values = valuesOf(STRAIGHT);
  const reach = 1.5 * (GAP + 4 * INCH);
  expect(values.obstacles).toBe(1);
  expect(values.poles).toBe(4);
  expect(values.line).toBeCloseTo(20 + reach, 9);
  expect(values.jog).toBeCloseTo(20 + reach, 9);
  expect([values.walk, values.lope, values.back, values['side-pass']]).toEqual([0, 0, 0, 0]);
  expect(values['tightest-turn']).toBeNull();
  expect(values.clearance).toBeNull();
  // A jogging stock horse takes steps of 0.975 m; the gap asks for 3 ft.
  expect(values.stride).toBeCloseTo((0.975 - GAP) / 0.975, 9);
  expect(values.transitions).toBe(1);
  expect(values.class).toBeCloseTo(values.go ?? 0, 9);
});

test('the least clearance is taken to what is not ridden there', () => {
  const aside = run('run-2', pose(12, 9, Math.PI / 2), { poles: 1 });
  const { layouts, ...rest } = STRAIGHT;
  const two: Course = { ...rest, layouts: [{ ...layouts[0], obstacles: [...layouts[0].obstacles, aside] }] };
  // A pole along x, 4 in thick, 4 m beside the line.
  expect(lineClearance(survey(two))).toEqual({ clear: expect.closeTo(4 - 2 * INCH, 9), key: 'run-2/pole-1', leg: 0 });
});

test('every measure of a comparison is that of the survey of its layout', () => {
  const two = editCurrentLayout(branchLayout(STRAIGHT, { title: 'Wider' }), (layout) => {
    for (const piece of layout.obstacles[0]?.pieces ?? []) piece.pose.x *= 1.1;
  });
  const [a, b] = two.layouts.map(({ id }) => id);
  const { layouts, measures } = comparison(two, [a ?? '', b ?? '']);
  expect(layouts.map(({ title }) => title)).toEqual(['First', 'Wider']);
  for (const { measure, values } of measures) {
    for (const { layout, value, text } of values) {
      const alone = survey(chooseLayout(two, layout));
      expect(value, measure.id).toBe(measure.value(alone));
      expect(text).toBe(measureText(measure, value, 'ft'));
    }
  }
});

test('the better is marked, and nothing where layouts read alike or neither is better', () => {
  const same = comparison(branchLayout(STRAIGHT), ['first', 'layout-1']);
  expect(same.measures.some(({ differs, values }) => differs || values.some(({ best }) => best))).toBe(false);
  const longer = editCurrentLayout(branchLayout(STRAIGHT), ({ ride }) => {
    ride.start.x = 2;
  });
  // The go differs by seconds; the class, an estimate told to the minute, reads alike.
  const { measures } = comparison(longer, ['first', 'layout-1']);
  const marked = measures.filter(({ values }) => values.some(({ best }) => best)).map(({ measure }) => measure.id);
  expect(marked).toEqual(['go']);
  const many = comparison({ ...longer, class: { ...longer.class, entries: 200 } }, ['first', 'layout-1']);
  const ofClass = many.measures.find(({ measure }) => measure.id === 'class');
  expect(ofClass?.values.map(({ best }) => best)).toEqual([true, false]);
  const go = measures.find(({ measure }) => measure.id === 'go');
  expect(go?.values.map(({ best }) => best)).toEqual([true, false]);
  expect(measures.find(({ measure }) => measure.id === 'line')?.differs).toBe(true);
});

test('findings are counted by weight', () => {
  const values = valuesOf(STRAIGHT);
  const found = findingsOf(survey(STRAIGHT));
  expect(found.length).toBeGreaterThan(0);
  for (const weight of ['must', 'should'] as const) {
    expect(values[weight]).toBe(found.filter((each) => each.weight === weight).length);
  }
});

test('a layout keeps its survey while another is shown, renamed or drawn', () => {
  const two = branchLayout(STRAIGHT, { title: 'Other' });
  const before = layoutSurvey(two, 'first');
  expect(layoutSurvey(chooseLayout(two, 'first'), 'first')).toBe(before);
  expect(layoutSurvey(renameLayout(two, 'layout-1', 'Else'), 'first')).toBe(before);
  expect(layoutSurvey({ ...two, unit: 'm' }, 'first')).not.toBe(before);
  expect(() => layoutSurvey(two, 'gone')).toThrow('the course has no layout gone');
});

test('every measure says what it is', () => {
  expect(new Set(MEASURES.map(({ id }) => id)).size).toBe(MEASURES.length);
  for (const { title, says } of MEASURES) {
    expect(title).not.toBe('');
    expect(says).toMatch(/\.$/);
  }
});

test('setting out is the change-over from the empty arena by the crew of the course', () => {
  const alone = changeOver([], survey(STRAIGHT).obstacles, crewOf(STRAIGHT));
  expect(valuesOf(STRAIGHT)['set-out']).toBe(alone.seconds);
  expect(alone.seconds).toBeGreaterThan(60);
  const four = { ...STRAIGHT, crew: { people: 4 as const } };
  expect(valuesOf(four)['set-out']).toBeLessThan(alone.seconds);
  expect(crewChange(STRAIGHT)(null, STRAIGHT.layouts[0])).toBe(alone.seconds);
  expect(crewChange(STRAIGHT, 4)(null, STRAIGHT.layouts[0])).toBe(valuesOf(four)['set-out']);
});
