import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carried } from '../../../src/core/solve/carried.ts';
import { groups } from '../../../src/core/solve/groups.ts';
import type { Problem } from '../../../src/core/solve/problem.ts';
import { solved } from '../../../src/core/solve/solved.ts';
import { wishedOf, workbench } from '../../../src/core/solve/workbench.ts';
import { chain, fan, run, tie, wishing, worst } from './poles.ts';

function isCarried(problem: Problem, id: string): boolean {
  const group = groups(problem).find(({ free }) => free.some((body) => body.id === id));
  if (group === undefined) throw new Error(`no ${id}`);
  const bench = workbench(group);
  return carried(bench, wishedOf(bench, new Map([[id, { x: 3, y: 4, angle: 1 }]])));
}

describe('a group', () => {
  test('that is rigid and held by nothing is carried', () => {
    expect(isCarried(run(6), 'p2')).toBe(true);
    expect(isCarried(fan(3), 'p0')).toBe(true);
  });

  test('that hangs on what is still, is loose inside, or does not hold is not', () => {
    expect(isCarried(chain(6), 'p5')).toBe(false);
    const loose = { ...run(3), ties: run(3).ties.slice(1) };
    expect(isCarried(loose, 'p1')).toBe(false);
    const off = { ...run(3), ties: [...run(3).ties, tie('apart', ['p0', 'p2'], { hold: 9 })] };
    expect(isCarried(off, 'p1')).toBe(false);
  });

  test('comes to its wish exactly and keeps its shape, however far and however turned', () => {
    const far = fc.double({ min: -40, max: 40, noNaN: true });
    const scene = run(60);
    fc.assert(
      fc.property(far, far, fc.double({ min: -3, max: 3, noNaN: true }), fc.nat(59), (x, y, angle, which) => {
        // Adding 0 turns −0 into 0.
        const wish = { x: x + 0, y: y + 0, angle: angle + 0 };
        const outcome = solved(...wishing(scene, `p${which}`, wish));
        if (outcome.outcome !== 'met') throw new Error(outcome.outcome);
        expect(outcome.poses.get(`p${which}`)).toEqual(wish);
        expect(worst(scene, outcome.poses)).toBeLessThan(1e-10);
      }),
    );
  });
});
