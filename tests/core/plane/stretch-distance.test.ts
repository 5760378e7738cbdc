import fc from 'fast-check';
import { expect, test } from 'vitest';
import { poseOn } from '../../../src/core/plane/path.ts';
import { rectangle, transformRing } from '../../../src/core/plane/ring.ts';
import { ringPointDistance } from '../../../src/core/plane/segment.ts';
import { nearsRing, reachOf } from '../../../src/core/plane/stretch-distance.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pose = (far: number) => fc.record({ x: real(-far, far), y: real(-far, far), angle: real(-4, 4) });
const SAMPLES = 400;

test('a straight or an arc comes near a ring where closely spaced points of it do, and only there', () => {
  fc.assert(
    fc.property(
      fc.record({ start: pose(3), length: real(0, 8), curvature: fc.oneof(fc.constant(0), real(-1, 1)) }),
      fc.record({ at: pose(2), length: real(0.1, 3), width: real(0.05, 0.5) }),
      real(0, 0.8),
      (stretch, { at, length, width }, near) => {
        const ring = transformRing(rectangle(length, width), at);
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= SAMPLES; i += 1) {
          least = Math.min(least, ringPointDistance(ring, poseOn(stretch, (stretch.length * i) / SAMPLES)));
        }
        const meets = nearsRing(reachOf(stretch), ring, near);
        // Between two samples the path comes nearer by at most half their distance.
        if (least <= near) expect(meets).toBe(true);
        if (least > near + stretch.length / SAMPLES) expect(meets).toBe(false);
      },
    ),
    { numRuns: 2000 },
  );
});

test('the box of a part of an arc holds all of it, and not more', () => {
  fc.assert(
    fc.property(pose(3), real(0.1, 8), real(-1, 1), (start, length, curvature) => {
      const { bounds } = reachOf({ start, length, curvature });
      const points = Array.from({ length: SAMPLES + 1 }, (_, i) =>
        poseOn({ start, length, curvature }, (length * i) / SAMPLES),
      );
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      expect(Math.min(...xs)).toBeCloseTo(bounds.minX, 2);
      expect(Math.max(...xs)).toBeCloseTo(bounds.maxX, 2);
      expect(Math.min(...ys)).toBeCloseTo(bounds.minY, 2);
      expect(Math.max(...ys)).toBeCloseTo(bounds.maxY, 2);
    }),
  );
});
