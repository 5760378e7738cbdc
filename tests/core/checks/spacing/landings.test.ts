import { describe, expect, test } from 'vitest';
import { INCH } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { BLANK, saidBy, scene } from '../scene.ts';

describe('landings', () => {
  test('a fix on a curve sets the tape so that the line comes out even', () => {
    // Six feet and an inch and a half along the arc: two steps of a stock horse, and a little long for two of a pony.
    const fan = scene([{ kind: 'fan', at: [80, 50] }], { ...BLANK, horse: 'pony' });
    const [first] = saidBy(fan, 'landings');
    const nearest = survey(fan).line.gaps[0]?.landings.nearest ?? [];
    expect(first?.measured).toBeGreaterThan(nearest[0] ?? 0);
    const after = (first?.remedies ?? []).map((remedy) => survey(remedy.apply(fan)).line.gaps[0]);
    expect(after.length).toBeGreaterThan(0);
    for (const gap of after) {
      expect(gap?.landings.fits).toBe(true);
      // The smallest change that does it: within half an inch of an even length along the line.
      const off = Math.min(...nearest.map((even) => Math.abs(even - (gap?.ridden ?? 0))));
      expect(off).toBeLessThan(0.5 * INCH);
    }
  });

  test('are not told where the gap is off by less than anybody can tape', () => {
    // 3 ft 6 in is the longest step of this horse at a jog.
    const off = (more: number) => scene([{ kind: 'run', at: [60, 50], values: { gap: 42 * INCH + more } }]);
    expect(saidBy(off(0.00005), 'landings')).toEqual([]);
    expect(survey(off(0.00005)).line.gaps[0]?.landings.fits).toBe(false);
  });

  test('are not told where the gap itself is out of its band', () => {
    const wide = scene([{ kind: 'run', at: [60, 50], values: { gap: 5 * 12 * INCH } }]);
    expect(survey(wide).line.gaps[0]?.landings.fits).toBe(false);
    expect(saidBy(wide, 'gap-band').flatMap(({ members = [] }) => members)).toHaveLength(3);
    expect(saidBy(wide, 'landings')).toEqual([]);
  });
});
