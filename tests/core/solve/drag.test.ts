/** The heading of a dragged body: kept where it can be, turned the short way, given up only where nothing else moves. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalizeAngle, type Pose } from '../../../src/core/plane/pose.ts';
import type { Problem } from '../../../src/core/solve/problem.ts';
import { solve } from '../../../src/core/solve/solve.ts';
import { GAP, pole, THICKNESS, tie } from './poles.ts';

function dragged(problem: Problem, id: string, to: Pose): Pose {
  const outcome = solve(problem, new Map([[id, to]]));
  const pose = outcome.outcome === 'met' ? outcome.poses.get(id) : undefined;
  if (pose === undefined) throw new Error(JSON.stringify(outcome));
  return pose;
}

const fixedPole = (pose: Pose) => pole('still', pose, { weight: Number.POSITIVE_INFINITY });
const FREE: Pose = { x: 0, y: GAP + THICKNESS, angle: 0 };

/** A pole with a gap at its middle to one that never moves: it may slide and turn. */
const GAPPED: Problem = {
  bodies: [fixedPole({ x: 0, y: 0, angle: 0 }), pole('free', FREE)],
  constraints: [tie('gap', ['still', 'free'], { hold: GAP })],
};

/** The same, held parallel as well: it may only slide. */
const PARALLEL: Problem = {
  ...GAPPED,
  constraints: [...GAPPED.constraints, tie('parallel', ['still', 'free'])],
};

describe('the heading of a dragged body', () => {
  test('is kept when its place alone is asked for, though turning would bring it nearer', () => {
    const offset = fc.double({ min: -0.4, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(offset, offset, (dx, dy) => {
        const pose = dragged(GAPPED, 'free', { ...FREE, x: FREE.x + dx, y: FREE.y + dy });
        expect(Math.abs(normalizeAngle(pose.angle - FREE.angle))).toBeLessThan(1e-9);
      }),
    );
  });

  test('does not depend on whole turns in the angle that is asked for', () => {
    const to = { x: 0.3, y: FREE.y + 0.5, angle: 0.1 };
    const plain = dragged(GAPPED, 'free', to);
    for (const turns of [-2, 1]) {
      const same = dragged(GAPPED, 'free', { ...to, angle: to.angle + 2 * Math.PI * turns });
      expect(same.x).toBeCloseTo(plain.x, 6);
      expect(same.y).toBeCloseTo(plain.y, 6);
      expect(normalizeAngle(same.angle - plain.angle)).toBeCloseTo(0, 6);
    }
  });

  test('turns the short way across half a turn', () => {
    const start: Pose = { ...FREE, angle: Math.PI - 0.05 };
    const problem: Problem = {
      bodies: [fixedPole({ x: 0, y: 0, angle: 0 }), pole('free', start)],
      constraints: [tie('gap', ['still', 'free'], { hold: GAP })],
    };
    const pose = dragged(problem, 'free', { ...start, y: start.y + 0.4, angle: -Math.PI + 0.05 });
    expect(Math.abs(normalizeAngle(pose.angle - Math.PI))).toBeLessThan(0.06);
  });

  test('goes to the angle that is asked for, however many whole turns away, where the place is out of reach', () => {
    for (const turns of [-1, 0, 2]) {
      const pose = dragged(GAPPED, 'free', { x: 0.2, y: FREE.y + 3, angle: 0.3 + 2 * Math.PI * turns });
      expect(Math.abs(normalizeAngle(pose.angle - 0.3))).toBeLessThan(1e-6);
    }
  });

  test('is held by what holds it, and the body goes no further than it may', () => {
    const pose = dragged(PARALLEL, 'free', { x: 1, y: FREE.y + 3, angle: 0.7 });
    expect(Math.abs(normalizeAngle(pose.angle))).toBeLessThan(1e-9);
  });

  test('is given up where the body could not move otherwise: an end that is held to a point', () => {
    const hinge: Problem = {
      bodies: [fixedPole({ x: 0, y: 0, angle: 0 }), pole('arm', { x: 0, y: 0, angle: Math.PI / 2 })],
      constraints: [tie('ends-touching', ['still', 'arm'], { at: 0 })],
    };
    const half = 3.6576 / 2;
    const start: Pose = { x: -half, y: half, angle: Math.PI / 2 };
    const problem: Problem = { ...hinge, bodies: [hinge.bodies[0] ?? fixedPole(start), pole('arm', start)] };
    const target = { x: -half + half * Math.SQRT1_2, y: half * Math.SQRT1_2, angle: Math.PI / 2 };
    const pose = dragged(problem, 'arm', target);
    expect(pose.angle).toBeLessThan(Math.PI / 2 - 0.3);
    const missed = Math.hypot(pose.x - target.x, pose.y - target.y);
    expect(missed).toBeLessThan(0.4 * Math.hypot(start.x - target.x, start.y - target.y));
  });
});
