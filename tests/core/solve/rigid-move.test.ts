import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { connectedComponents } from '../../../src/core/solve/components.ts';
import type { Problem } from '../../../src/core/solve/problem.ts';
import { isRigid, moveRigid } from '../../../src/core/solve/rigid-move.ts';
import { solve } from '../../../src/core/solve/solve.ts';
import { dragTargets, workspace } from '../../../src/core/solve/workspace.ts';
import { chain, fan, run, tie, wishing, worst } from './poles.ts';

function isRigidAt(problem: Problem, id: string): boolean {
  const group = connectedComponents(problem).find(({ free }) => free.some((body) => body.id === id));
  if (group === undefined) throw new Error(`no ${id}`);
  const bench = workspace(group);
  return isRigid(bench);
}

describe('a group', () => {
  test('that is rigid and held by nothing is known as such', () => {
    expect(isRigidAt(run(6), 'p2')).toBe(true);
    expect(isRigidAt(fan(3), 'p0')).toBe(true);
  });

  test('that hangs on what is still, is loose inside, or does not hold is not', () => {
    expect(isRigidAt(chain(6), 'p5')).toBe(false);
    const loose = { ...run(3), constraints: run(3).constraints.slice(1) };
    expect(isRigidAt(loose, 'p1')).toBe(false);
    const off = { ...run(3), constraints: [...run(3).constraints, tie('apart', ['p0', 'p2'], { hold: 9 })] };
    expect(isRigidAt(off, 'p1')).toBe(false);
  });

  test('that is loose but held by nothing can be carried too, and keeps its shape', () => {
    const loose = { ...run(3), constraints: run(3).constraints.slice(1) };
    const [group] = connectedComponents(loose);
    if (group === undefined) throw new Error('no group');
    const bench = workspace(group);
    expect(moveRigid(bench, dragTargets(bench, new Map([['p1', { x: 30, y: -4, angle: 2.5 }]])))).toBe(true);
    const away = (q: Float64Array) => Math.hypot((q[3] ?? 0) - (q[0] ?? 0), (q[4] ?? 0) - (q[1] ?? 0));
    expect(away(bench.q)).toBeCloseTo(away(bench.start), 9);
  });

  test('comes to its wish exactly and keeps its shape, however far and however turned', () => {
    const far = fc.double({ min: -40, max: 40, noNaN: true });
    const scene = run(60);
    fc.assert(
      fc.property(far, far, fc.double({ min: -3, max: 3, noNaN: true }), fc.nat(59), (x, y, angle, which) => {
        const wish = { x, y, angle };
        const outcome = solve(...wishing(scene, `p${which}`, wish));
        if (outcome.outcome !== 'met') throw new Error(outcome.outcome);
        const there = outcome.poses.get(`p${which}`) ?? { x: 99, y: 99, angle: 99 };
        expect(Math.hypot(there.x - wish.x, there.y - wish.y, there.angle - wish.angle)).toBeLessThan(1e-12);
        expect(worst(scene, outcome.poses)).toBeLessThan(1e-10);
      }),
    );
  });
});
