import { describe, expect, test } from 'vitest';
import { bandOf, limitsOf } from '../../../../src/core/checks/rulebooks/rulebooks.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { setOutOf } from '../../../../src/core/setout/plan-setout.ts';
import { gapGroups } from '../../../../src/core/setout/words/gap-groups.ts';
import { partNames } from '../../../../src/core/setout/words/setout-words.ts';
import { tapedBand } from '../../../../src/core/setout/words/taped-band.ts';
import { survey } from '../../../../src/core/survey.ts';
import { STARTERS } from '../../ride/courses.ts';
import { courseOf } from '../sample-plans.ts';

const RUN = survey(courseOf([{ kind: 'run', values: { poles: 3, gap: 3 * FOOT, gait: 'jog' }, at: [60, 40, 0] }]));
const LANE = survey(courseOf([{ kind: 'back-lane', at: [90, 50, 0] }]));

describe('the band of a gap by the tape', () => {
  test('is the band of the gait where the line is straight', () => {
    const { gaps } = setOutOf(RUN);
    const limit = limitsOf(RUN.course)['gap.jog'];
    const ridden = gaps.filter(({ isRidden }) => isRidden);
    expect(ridden.length).toBe(2);
    for (const gap of ridden) {
      const { least = 0, most = 0 } = limit === undefined ? {} : bandOf(limit);
      const band = tapedBand(RUN, gap);
      expect(band.from).toBe('limit');
      expect(band.least).toBeCloseTo(least, 9);
      expect(band.most).toBeCloseTo(most, 9);
    }
  });

  test('is moved by what a straight tape is shorter than the line on a curve', () => {
    const curved = STARTERS.flatMap(([, course]) => {
      const of = survey(course);
      return setOutOf(of).gaps.flatMap((gap) => {
        const ridden = of.line.gaps.find(({ keys }) => gap.isRidden && keys.every((key) => gap.keys.includes(key)));
        const isCurved = ridden !== undefined && ridden.ridden - ridden.taped > 2 * INCH;
        return isCurved && tapedBand(of, gap).from === 'limit' ? [{ of, gap, ridden }] : [];
      });
    });
    expect(curved.length).toBeGreaterThan(3);
    for (const { of, gap, ridden } of curved) {
      const limits = limitsOf(of.course);
      const limit = limits[`gap.${ridden.gait}.recommended`] ?? limits[`gap.${ridden.gait}`];
      const { least = 0 } = limit === undefined ? {} : bandOf(limit);
      // Along the line the band begins at the book's least, or at a whole multiple of it.
      const bands = (tapedBand(of, gap).least + ridden.ridden - ridden.taped) / least;
      expect(Math.round(bands)).toBeGreaterThan(0);
      expect(bands).toBeCloseTo(Math.round(bands), 6);
    }
  });

  test('is an inch about the plan where nothing is asked', () => {
    const [gap] = setOutOf(LANE).gaps;
    if (gap === undefined) throw new Error('a lane has gaps');
    const { least, most, from } = tapedBand(LANE, gap);
    expect([gap.plan - least, most - gap.plan].map((each) => each / INCH)).toEqual(
      [1, 1].map((each) => expect.closeTo(each, 9)),
    );
    expect(from).toBe('plan');
  });

  test.each(STARTERS)('holds the planned gaps of %s, unless the plan itself misses its band', (_, course) => {
    const of = survey(course);
    for (const gap of setOutOf(of).gaps) {
      const { least, most } = tapedBand(of, gap);
      expect(gap.plan).toBeGreaterThan(least - 1e-3);
      expect(gap.plan).toBeLessThan(most + 1e-3);
    }
  });
});

test.each(STARTERS)('each gap of %s stands in one group', (_, course) => {
  const of = survey(course);
  const plan = setOutOf(of);
  for (const part of plan.parts) {
    const keys = new Set(part.steps.map(({ piece }) => piece));
    const own = plan.gaps.filter((gap) => gap.keys.every((key) => keys.has(key)));
    const groups = gapGroups(partNames(of, plan, part), of, own);
    expect(groups.flatMap(({ gaps }) => gaps).length).toBe(own.length);
    for (const { where } of groups) expect(where).not.toMatch(/undefined|^ | $/);
    const ridden = groups.map(({ isRidden }) => isRidden);
    expect(ridden).toEqual(ridden.toSorted((a, b) => Number(b) - Number(a)));
  }
});
