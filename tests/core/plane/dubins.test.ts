import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dubinsPaths, shortestDubinsPath } from '../../../src/core/plane/dubins.ts';
import { pathEnd, pathFrom, pathLength } from '../../../src/core/plane/path.ts';
import { TOUCH } from '../../../src/core/plane/point.ts';
import { type Pose, pose } from '../../../src/core/plane/pose.ts';

const poses = fc.record({
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  y: fc.double({ min: -20, max: 20, noNaN: true }),
  angle: fc.double({ min: -7, max: 7, noNaN: true }),
});
const radii = fc.double({ min: 0.5, max: 6, noNaN: true });

function away(a: Pose, b: Pose): number {
  return Math.hypot(a.x - b.x, a.y - b.y, Math.cos(a.angle) - Math.cos(b.angle), Math.sin(a.angle) - Math.sin(b.angle));
}

describe('the shortest bounded-curvature path', () => {
  test('along its own arc of its own radius is exactly that arc', () => {
    for (const curvature of [0.4, -0.4]) {
      const arc = pathFrom(pose(3, 2, 0.7), [{ length: 2.1, curvature }]);
      const found = shortestDubinsPath(pose(3, 2, 0.7), pathEnd(arc), 2.5);
      expect(found.path).toHaveLength(1);
      expect(found.length).toBeCloseTo(2.1, 9);
      expect(found.path[0]?.curvature).toBeCloseTo(curvature, 12);
    }
  });

  test('about-turn on the spot in the open takes a whole loop of three turns', () => {
    // Closed form: RLR with both outer turns equal and touching circles: 7π/3 radii.
    expect(shortestDubinsPath(pose(0, 0, 0), pose(0, 0, Math.PI), 1).length).toBeCloseTo((7 * Math.PI) / 3, 9);
  });

  test('refuses a radius that is none', () => {
    expect(() => shortestDubinsPath(pose(0, 0), pose(1, 0), 0)).toThrow(/above 0, got 0/);
  });

  test('every word ends at the pose it was asked for, and is as long as it says', () => {
    fc.assert(
      fc.property(poses, poses, radii, (from, to, radius) => {
        for (const { path, length } of dubinsPaths(from, to, radius)) {
          expect(away(pathEnd(path), to)).toBeLessThan(1e-6);
          expect(pathLength(path)).toBeCloseTo(length, 6);
        }
      }),
    );
  });

  test('its mirror image is as long', () => {
    fc.assert(
      fc.property(poses, poses, radii, (from, to, radius) => {
        const flip = ({ x, y, angle }: Pose): Pose => ({ x, y: -y, angle: -angle });
        const there = shortestDubinsPath(from, to, radius).length;
        expect(shortestDubinsPath(flip(from), flip(to), radius).length).toBeCloseTo(there, 6);
      }),
    );
  });

  test('ridden the other way round it is as long', () => {
    fc.assert(
      fc.property(poses, poses, radii, (from, to, radius) => {
        const about = (each: Pose): Pose => ({ ...each, angle: each.angle + Math.PI });
        const there = shortestDubinsPath(from, to, radius).length;
        expect(shortestDubinsPath(about(to), about(from), radius).length).toBeCloseTo(there, 6);
      }),
    );
  });

  test('its length grows with the scale', () => {
    fc.assert(
      fc.property(poses, poses, radii, (from, to, radius) => {
        const twice = ({ x, y, angle }: Pose): Pose => ({ x: 2 * x, y: 2 * y, angle });
        const once = shortestDubinsPath(from, to, radius).length;
        expect(shortestDubinsPath(twice(from), twice(to), 2 * radius).length).toBeCloseTo(2 * once, 6);
      }),
    );
  });

  test('is never shorter than the straight', () => {
    fc.assert(
      fc.property(poses, poses, radii, (from, to, radius) => {
        const straight = Math.hypot(to.x - from.x, to.y - from.y);
        expect(shortestDubinsPath(from, to, radius).length).toBeGreaterThanOrEqual(straight - TOUCH);
      }),
    );
  });
});
