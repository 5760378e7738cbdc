/**
 * The longest rigid rectangle that goes round the right-angled corner of a lane, against the closed form and the values
 * that are printed for it. The sweep is given poles on the ground, as it is in a course; it knows no lane.
 */
import { describe, expect, test } from 'vitest';
import { hoofRectangle } from '../../src/core/checks/geometry/sweep.ts';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
import { longestRound, narrowestLane, ROWS, SCALE } from './corner.ts';

/** L = min over t of (a cos t + b sin t − w)/(sin t cos t); worked out here by looking everywhere. */
function closedForm(a: number, b: number, w: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < 20_000; i += 1) {
    const t = (Math.PI / 2) * (i / 20_000);
    least = Math.min(least, (a * Math.cos(t) + b * Math.sin(t) - w) / (Math.sin(t) * Math.cos(t)));
  }
  return least;
}

describe('the longest rectangle round a right corner', () => {
  test.each(ROWS)('legs of $a and $b, width $w: $longest ($source)', ({ a, b, w, longest }) => {
    expect(closedForm(a, b, w)).toBeCloseTo(longest, 5);
    const found = longestRound([a * SCALE, b * SCALE], w * SCALE, 1.5 * longest * SCALE);
    expect(Math.abs(found / (longest * SCALE) - 1)).toBeLessThan(0.001);
  });
});

describe('the narrowest L', () => {
  // 5 ft: the mule's wheelbase, American Mule Association rule 216. The widths follow from 2√2·a = L + 2w.
  test.each([
    [1.524, 0.33, 30.4],
    [1.25, 0.35, 27.14],
  ] as const)('a hoof base of %f by %f m goes round an L of %f in', (length, width, inches) => {
    const least = narrowestLane({ length, width });
    expect(least / 0.0254).toBeCloseTo(inches, 1);
    expect((length + 2 * width) / (2 * Math.SQRT2) / 0.0254).toBeCloseTo(inches, 1);
  });

  test('our stock horse, measured over its hooves, needs more than the 30 in of a rule book in a sharp corner', () => {
    const least = narrowestLane(hoofRectangle(STOCK_HORSE));
    expect(least / 0.0254).toBeCloseTo(30.72, 1);
  });
});
