import { describe, expect, test } from 'vitest';
import { GAUGE_WIDTH, gaugeLayout } from '../../../src/app/check/gauge.ts';

const print = (value: number) => `${value} m`;

function gauge(measured: number, band: Parameters<typeof gaugeLayout>[1]) {
  const made = gaugeLayout(measured, band, { print, text: print(measured) });
  if (made === undefined) throw new Error('there is no gauge');
  return made;
}

describe('a band gauge', () => {
  test('has its needle below, in or above the band as the value is', () => {
    const band = { least: 2, most: 3 };
    for (const [value, order] of [
      [1, -1],
      [2.5, 0],
      [4, 1],
    ] as const) {
      const { needle, bands } = gauge(value, band);
      const [only] = bands;
      if (only === undefined) throw new Error('no band');
      const side = needle < only.from ? -1 : needle > only.to ? 1 : 0;
      expect(side).toBe(order);
    }
  });

  test('shows the two multiples about the value, to one scale', () => {
    const { bands, needle, about } = gauge(4, { least: 2, most: 3, multiples: true });
    expect(bands.map(({ label }) => label)).toEqual(['2 m to 3 m', '4 m to 6 m']);
    const [one, two] = bands;
    if (one === undefined || two === undefined) throw new Error('two bands were asked for');
    expect((two.to - two.from) / (one.to - one.from)).toBeCloseTo(2, 9);
    expect(needle).toBeCloseTo(two.from, 9);
    expect(about).toBe('Measured 4 m; allowed 2 m to 3 m, or 4 m to 6 m, or another whole multiple.');
  });

  test('runs to the edge where a band has no end', () => {
    const [open] = gauge(1, { least: 2 }).bands;
    expect(open).toMatchObject({ label: 'at least 2 m', isOpenAbove: true, isOpenBelow: false, to: GAUGE_WIDTH - 4 });
    const [low] = gauge(5, { most: 2 }).bands;
    expect(low).toMatchObject({ label: 'at most 2 m', isOpenAbove: false, isOpenBelow: true, from: 4 });
  });

  test('keeps everything on the strip, and labels that would touch in two rows', () => {
    for (const [value, band] of [
      [0, { least: 2.31, most: 2.32 }],
      [100, { least: 2, most: 3, multiples: true }],
      [2.5, { least: 1.99, most: 2.01, multiples: true }],
      [-1, { least: 0 }],
    ] as const) {
      const { bands, needle, measuredAt } = gauge(value, band);
      for (const x of [needle, measuredAt, ...bands.flatMap(({ from, to, at }) => [from, to, at])]) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(GAUGE_WIDTH);
      }
    }
    const { bands } = gauge(90, { least: 20, most: 20.5, multiples: true });
    expect(bands.map(({ label, row }) => [label, row])).toEqual([
      ['80 m to 82 m', 0],
      ['100 m to 102.5 m', 0],
    ]);
    const wide = gaugeLayout(
      5,
      { least: 2, most: 2.2, multiples: true },
      { print: (x) => `${x} long words`, text: '5' },
    );
    expect(wide?.bands.map(({ row }) => row)).toEqual([0, 1]);
  });

  test('is not drawn where nothing at all is allowed', () => {
    expect(gaugeLayout(2, { most: 0 }, { print, text: '2' })).toBeUndefined();
    expect(gaugeLayout(2, {}, { print, text: '2' })).toBeUndefined();
  });
});
