import { describe, expect, test } from 'vitest';
import { legendBar, scaleBar } from '../../src/sheets/legend.ts';

describe('the strip under a drawing', () => {
  test.each([
    [200, 'm', 10, 50],
    [100, 'm', 5, 50],
    [250, 'm', 10, 40],
    [200, 'ft', 30, 45.72],
    [300, 'ft', 50, 50.8],
  ] as const)('at 1:%i in %s the bar is %i long and %f mm wide', (scale, unit, length, width) => {
    const bar = scaleBar(scale, unit);
    expect(bar.length).toBe(length);
    expect(bar.width).toBeCloseTo(width, 9);
  });

  test('keeps inside its width and grows downwards', () => {
    const legend = {
      unit: 'ft' as const,
      strokes: (['walk', 'jog', 'lope', 'back', 'side-pass', 'turn'] as const).map((ink) => ({ ink, name: ink })),
      pieces: [],
    };
    const heights = [190, 100, 64].map((width) => {
      const { height, marks } = legendBar(legend, 300, width);
      for (const mark of marks(10, 20)) {
        if (mark.kind !== 'line' && mark.kind !== 'area') continue;
        for (const { x } of mark.kind === 'line' ? mark.points : mark.ring) {
          expect(x).toBeGreaterThanOrEqual(10 - 1e-9);
          expect(x).toBeLessThanOrEqual(10 + width);
        }
      }
      return height;
    });
    expect(heights[0]).toBeLessThan(heights[1] ?? 0);
    expect(heights[1]).toBeLessThan(heights[2] ?? 0);
  });
});
