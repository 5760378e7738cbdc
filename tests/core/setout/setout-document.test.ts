import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readCourse } from '../../../src/core/files/read.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { setOutDocument, setOutJsonSchema, setOutSchema } from '../../../src/core/setout/setout-document.ts';
import { USUAL_TAPE } from '../../../src/core/setout/tape-errors.ts';
import { survey } from '../../../src/core/survey.ts';
import { dice, Site } from '../../bench/setout/crew.ts';

const NAMES = [
  'larkhollow-open',
  'larkhollow-kinds-1',
  'larkhollow-kinds-2',
  'larkhollow-kinds-3',
  'larkhollow-indoor',
];

function planOf(name: string) {
  const read = readCourse(readFileSync(`seeds/starters/${name}.course.json`, 'utf8'));
  if (read.kind === 'refused') throw new Error(read.why);
  const of = survey(read.course);
  return JSON.parse(JSON.stringify(setOutDocument(of, setOutOf(of), USUAL_TAPE.byEye.value)));
}

describe('the plan as a file', () => {
  test('follows its schema, which lies in assets/schema', () => {
    expect(setOutSchema.safeParse(planOf('larkhollow-open')).success).toBe(true);
    expect(readFileSync('assets/schema/setout.schema.json', 'utf8')).toBe(setOutJsonSchema());
  });

  test.each(NAMES)('%s: a crew without errors that knows the file alone builds the gaps that it foretells', (name) => {
    const plan = planOf(name);
    const site = new Site(plan);
    site.build(undefined);
    for (const gap of plan.gaps) expect(Math.abs(site.gap(gap) - gap.rounded), gap.pieces.join(' ')).toBeLessThan(1e-4);
  });

  test('a crew with errors is off by as much as it foretells', () => {
    const plan = planOf('larkhollow-open');
    const site = new Site(plan);
    site.build(undefined);
    const [roll, builds] = [dice(3), 200];
    const sums = plan.gaps.map(() => 0);
    for (let i = 0; i < builds; i += 1) {
      site.build(roll);
      for (const [k, gap] of plan.gaps.entries()) sums[k] = (sums[k] ?? 0) + (site.gap(gap) - gap.rounded) ** 2;
    }
    for (const [k, gap] of plan.gaps.entries()) {
      // Of 200 draws the standard error of a standard error is 5 %: four of these.
      expect(Math.abs(Math.sqrt((sums[k] ?? 0) / builds) / gap.sigma - 1), gap.pieces.join(' ')).toBeLessThan(0.2);
    }
  });
});
