import { describe, expect, test } from 'vitest';
import { constraintKind } from '../../../src/core/constraints/constraints.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { dimensions } from '../../../src/core/course/dimensions.ts';
import { solveLayout } from '../../../src/core/course/solve-layout.ts';
import { type ConstraintSuggestion, constraintSuggestions } from '../../../src/core/course/suggested.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { build } from './sample.ts';
import { ARENA, fan, held, layout, run, withFixed } from './scene.ts';

const P1 = 'run-1/pole-1';

function offers(of: Layout, keys: readonly string[]): readonly ConstraintSuggestion[] {
  return constraintSuggestions({ layout: of, arena: ARENA, unit: 'ft' }, keys);
}
function ids(of: Layout, keys: readonly string[]): readonly string[] {
  return offers(of, keys).map(({ constraint }) => constraint.kind);
}
function thing(id: string, piece: string, x: number, y: number): Obstacle {
  return build(id, 'scenery', { x, y, angle: 0 }, { piece });
}
function pole(id: string, x: number, y: number, angle = 0): Obstacle {
  return build(id, 'run', { x, y, angle: angle - Math.PI / 2 }, { poles: 1 });
}

describe('what is suggested', () => {
  const two = layout([pole('a', 20, 12), pole('b', 20, 14)]);

  test('between two poles side by side is what they are: a gap, parallel, level', () => {
    const kinds = ids(two, ['a/pole-1', 'b/pole-1']);
    expect(kinds).toEqual([
      'gap',
      'gap-ends',
      'parallel',
      'angle-between',
      'ends-level',
      'centres-level',
      'stripe-to-stripe',
    ]);
  });

  test('has its present value and a sentence: adding one that is met moves nothing', () => {
    const all = offers(two, ['a/pole-1', 'b/pole-1']);
    expect(all[0]?.says).toBe('The gap between pole 1 of a and pole 1 of b is 6\' 2¾", inside to inside.');
    expect(all.every(({ isMet }) => isMet)).toBe(true);
    for (const { constraint } of all) {
      const after = { ...two, constraints: [constraint] };
      const answer = solveLayout(after, ARENA, new Map());
      expect(answer.kind === 'settled' && answer.layout, constraint.kind).toBe(after);
    }
  });

  test('keeps the side on which things lie, whichever is chosen first', () => {
    const sides = [
      ['a/pole-1', 'b/pole-1'],
      ['b/pole-1', 'a/pole-1'],
    ].map((keys) => offers(two, keys)[0]?.constraint.side);
    expect(sides).toEqual([1, -1]);
  });

  test('for one piece is its wall, its angle to it, and that it be fixed', () => {
    expect(ids(two, ['a/pole-1'])).toEqual(['angle-to-wall', 'off-wall', 'clear-of-wall', 'fixed']);
    expect(offers(two, ['a/pole-1'])[1]?.constraint.grips).toEqual([{ piece: 'a/pole-1' }, { wall: 'south' }]);
  });

  test('between small things, and a small thing and a pole, in either order of choosing', () => {
    const of = layout([thing('m', 'marker', 20, 10), thing('n', 'barrel', 24, 10), pole('p', 26, 13, 0.4)]);
    const piece = (i: number) => `${of.obstacles[i]?.id}/${of.obstacles[i]?.pieces[0]?.id}`;
    expect(ids(of, [piece(0), piece(1)])).toContain('apart');
    expect(ids(of, [piece(0), piece(2)])).toEqual(ids(of, [piece(2), piece(0)]));
    expect(ids(of, [piece(0), piece(2)])).toEqual(expect.arrayContaining(['beside', 'marker-clear', 'on-arc']));
  });

  test('among three poles in a row is that their gaps be equal', () => {
    const of = layout([pole('a', 20, 12), pole('b', 20, 14), pole('c', 20, 16)]);
    expect(ids(of, ['a/pole-1', 'b/pole-1', 'c/pole-1'])).toContain('equal-gaps');
  });

  test('between whole obstacles is between their middle pieces', () => {
    const [first] = offers(layout([run(), fan()]), ['run-1', 'fan-1']);
    expect(first?.constraint.grips.map((grip) => 'piece' in grip && grip.piece)).toEqual([
      'run-1/pole-3',
      'fan-1/pole-2',
    ]);
  });

  test('leaves out what the same pieces hold already, and what is between fixed pieces', () => {
    expect(ids(layout([run()]), [P1, 'run-1/pole-2'])).not.toContain('gap');
    expect(ids(layout([withFixed(run(), 'pole-1')]), [P1])).toEqual([]);
    expect(ids(two, [])).toEqual([]);
  });
});

describe('a tape', () => {
  const of = layout(
    [run()],
    [held('off', 'off-wall', [[P1, 0], 'south'], { hold: 10 }), held('see', 'apart', [P1, 'run-1/pole-4'])],
  );

  test('lies where a constraint with a number measures, with the number printed', () => {
    const all = dimensions(of, ARENA, 'ft');
    expect(all.map(({ key }) => key)).toEqual(['run-1/gap-1', 'run-1/gap-2', 'run-1/gap-3', 'off', 'see']);
    const [gap] = all;
    expect(gap?.printed).toBe("3'");
    expect(Math.hypot((gap?.to.x ?? 0) - (gap?.from.x ?? 0), (gap?.to.y ?? 0) - (gap?.from.y ?? 0))).toBeCloseTo(
      0.9144,
      9,
    );
  });

  test('of one that only measures says so, with what it measures', () => {
    const see = dimensions(of, ARENA, 'm').at(-1);
    expect(see?.isDriving).toBe(false);
    expect(see?.value).toBeCloseTo(3 * 1.016 - 0.1016, 9);
    expect(see?.says).toBe('Pole 1 of run 1 and pole 4 of run 1 are 2.95 m apart.');
  });

  test('begins at the wall and ends at the piece', () => {
    const off = dimensions(of, ARENA, 'ft')[3];
    expect(off?.from.y).toBeCloseTo(0, 9);
    expect(constraintKind('off-wall')?.dimension).toBeDefined();
    expect(dimensions(of, ARENA, 'ft')).toBe(dimensions(of, ARENA, 'ft'));
  });
});
