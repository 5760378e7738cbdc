import { describe, expect, test } from 'vitest';
import type { RawFinding } from '../../../../src/core/checks/check.ts';
import { rebuildNear, verifiedRemedies } from '../../../../src/core/checks/findings/verified-fixes.ts';
import type { Course } from '../../../../src/core/course/course.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { BLANK, scene } from '../scene.ts';

const titled = (title: string) => (course: Course) => ({ ...course, title });

/** A check that minds the title: it finds a fault in "bad", two in "worse", none in the rest. */
function found(title: string, proposals: RawFinding['proposals'] = []): readonly RawFinding[] {
  const one = (id: string): RawFinding => ({
    id,
    check: 'title',
    weight: 'must',
    says: `The title is ${title}.`,
    because: 'A test.',
    at: { x: 0, y: 0 },
    keys: [],
    source: 'test',
    proposals,
  });
  if (title === 'bad') return [one('bad')];
  if (title === 'other') return [one('other')];
  return title === 'worse' ? [one('bad'), one('worse')] : [];
}

function remedies(proposals: RawFinding['proposals']): readonly string[] {
  const course = { ...BLANK, title: 'bad' };
  const [fault] = found('bad', proposals);
  if (fault === undefined) throw new Error('the test has no fault');
  return verifiedRemedies(survey(course), fault, (each) => found(each.course.title)).map(({ says }) => says);
}

describe('a fix', () => {
  test('is offered when the finding goes and nothing new comes', () => {
    expect(remedies([{ says: 'good', edit: titled('good') }])).toEqual(['good']);
  });

  test('is not offered when the finding stays, another must comes, or nothing changes', () => {
    expect(
      remedies([
        { says: 'stays', edit: titled('bad') },
        { says: 'worse', edit: titled('worse') },
        { says: 'swaps one must for another', edit: titled('other') },
        { says: 'nothing', edit: (course) => course },
        { says: 'refused', edit: () => ({ kind: 'infeasible', why: 'no', facts: {} }) },
      ]),
    ).toEqual([]);
  });

  test('stands for all of its idea, and three ideas are enough', () => {
    const proposal = (says: string, idea?: string) => ({
      says,
      edit: titled(says),
      ...(idea === undefined ? {} : { idea }),
    });
    expect(remedies([proposal('a1', 'a'), proposal('a2', 'a'), proposal('b'), proposal('c'), proposal('d')])).toEqual([
      'a1',
      'b',
      'c',
    ]);
  });

  test('leaves a course alone on which it no longer builds', () => {
    const fault = found('bad', [
      {
        says: 'builds once',
        edit: (course) =>
          course.title === 'bad' ? { ...course, title: 'good' } : { kind: 'infeasible', why: 'no', facts: {} },
      },
    ])[0];
    if (fault === undefined) throw new Error('the test has no fault');
    const [remedy] = verifiedRemedies(survey({ ...BLANK, title: 'bad' }), fault, (each) => found(each.course.title));
    const later = { ...BLANK, title: 'later' };
    expect(remedy?.apply(later)).toBe(later);
  });
});

describe('a fix for several faults', () => {
  const fault = (id: string, weight: RawFinding['weight'], key: string, proposals: RawFinding['proposals']) => ({
    ...{ id, check: 'test', weight, says: `${id}.`, because: 'A test.', at: { x: 0, y: 0 }, source: 'test' },
    ...{ keys: [key, `${key}/pole-1`], proposals },
  });
  const cure = { says: 'cures both', edit: titled('cured') };
  const must = fault('must', 'must', 'spoke-1', []);
  const note = fault('note', 'note', 'spoke-1', [cure]);
  const offered = (all: readonly RawFinding[], left: readonly RawFinding[] = []) =>
    verifiedRemedies(survey({ ...BLANK, title: 'ill' }), must, (each) =>
      each.course.title === 'cured' ? left : all,
    ).map(({ says }) => says);

  test('is offered at each of them, also where only another finding of the obstacle proposes it', () => {
    expect(offered([must, note])).toEqual(['cures both']);
  });

  test('is not offered where it does not cure, or comes from another obstacle', () => {
    const other = { ...note, proposals: [{ ...cure }] };
    expect(offered([must, other], [must])).toEqual([]);
    expect(offered([must, fault('note', 'note', 'fan-1', [{ ...cure }])])).toEqual([]);
  });

  test('is tried once', () => {
    let tries = 0;
    const counted = {
      says: 'counted',
      edit: (course: Course) => {
        tries += 1;
        return { ...course, title: 'cured' };
      },
    };
    const all = [must, fault('note', 'note', 'spoke-1', [counted])];
    const before = survey({ ...BLANK, title: 'ill' });
    const found = (each: { readonly course: Course }) => (each.course.title === 'cured' ? [] : all);
    for (const each of all) verifiedRemedies(before, each, found);
    expect(tries).toBe(1);
  });
});

describe('building near what was asked', () => {
  const fan = scene([{ kind: 'fan', at: [80, 50], values: { length: 8 * FOOT } }]);

  test('takes the nearest values that the kind names', () => {
    // 8 ft poles at 6 ft and 1 ft turn on 6.8 ft: for the lope the fan has to open at its inner ends.
    const built = rebuildNear(fan, 'fan-1', { gait: 'lope' });
    const values = 'kind' in built ? {} : built.layouts[0].obstacles[0]?.values;
    expect(values).toMatchObject({ gait: 'lope', length: 8 * FOOT });
    expect(Number(values?.innerGap) / INCH).toBeCloseTo(32, 6);
  });

  test('keeps a value inside the bounds of its kind', () => {
    const run = scene([{ kind: 'run', at: [80, 50] }]);
    const built = rebuildNear(run, 'run-1', { gap: 10 * INCH });
    expect('kind' in built ? built.why : built.layouts[0].obstacles[0]?.values.gap).toBeCloseTo(12 * INCH, 12);
  });
});
