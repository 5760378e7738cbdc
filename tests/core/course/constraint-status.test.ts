import { describe, expect, test } from 'vitest';
import { applyResolution } from '../../../src/core/course/conflict.ts';
import { constraintStatus } from '../../../src/core/course/constraint-status.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { ARENA, box, fan, held, layout, run, withFixed } from './scene.ts';

const P1 = 'run-1/pole-1';
const WEST = 'box-1/west';

function ways(of: Layout): readonly (readonly [string, number, number])[] {
  return constraintStatus(of, ARENA).freedoms.map(({ obstacle, ways, inside }) => [obstacle, ways, inside]);
}

describe('what is left to move', () => {
  test('is three ways for a rigid obstacle that nothing holds, none with a fixed pole', () => {
    expect(ways(layout([run(), withFixed(fan(), 'pole-2')]))).toEqual([
      ['run-1', 3, 0],
      ['fan-1', 0, 0],
    ]);
  });

  test('is a way less for each measure to a wall', () => {
    const off = held('off', 'off-wall', [[P1, 0], 'south'], { hold: 10 });
    const along = held('along', 'angle-to-wall', [P1, 'south'], { hold: Math.PI / 2 });
    expect(ways(layout([run()], [off]))).toEqual([['run-1', 2, 0]]);
    expect(ways(layout([run()], [off, along]))).toEqual([['run-1', 1, 0]]);
  });

  test('counts what pieces can shift among themselves once a gap is let go', () => {
    const loose = { ...run(), constraints: run().constraints.filter(({ id }) => id !== 'gap-2') };
    expect(ways(layout([loose]))).toEqual([['run-1', 4, 1]]);
    expect(ways(layout([withFixed(loose, 'pole-1')]))).toEqual([['run-1', 1, 1]]);
  });

  test('is said in a sentence', () => {
    const loose = { ...run(), constraints: run().constraints.filter(({ id }) => id !== 'gap-2') };
    const says = (of: Layout) => constraintStatus(of, ARENA).freedoms.map((each) => each.says);
    expect(says(layout([loose, withFixed(box(), 'west')]))).toEqual([
      'Run 1 can move in 4 ways; its pieces can shift among themselves in 1 way.',
      'Box 1 cannot move; it keeps its shape.',
    ]);
  });
});

describe('what is spare', () => {
  const twice = layout(
    [run(), box()],
    [held('p', 'parallel', [P1, WEST]), held('again', 'parallel', ['run-1/pole-3', WEST])],
  );

  test('is named, with the offer to drop it', () => {
    const { redundant: spare } = constraintStatus(twice, ARENA);
    expect(spare.map(({ key, says }) => [key, says])).toEqual([
      ['again', 'Pole 3 of run 1 and west of box 1 are parallel.'],
    ]);
    const [first] = spare;
    if (first === undefined) throw new Error('nothing is spare');
    const after = applyResolution(twice, first.resolution);
    expect(after.constraints.map(({ id }) => id)).toEqual(['p']);
    expect(constraintStatus(after, ARENA).redundant).toEqual([]);
  });

  test('is not what only waits: a wall that is far away', () => {
    const clear = held('clear', 'clear-of-wall', [P1, 'south'], { hold: 1 });
    expect(constraintStatus(layout([run()], [clear]), ARENA).redundant).toEqual([]);
  });
});

test('what clashes is there with its words', () => {
  const of = layout([run()], [held('across', 'square', [P1, 'run-1/pole-2'])]);
  const { conflicts: clashes } = constraintStatus(of, ARENA);
  expect(clashes.map(({ members: culprits }) => culprits.map(({ key }) => key))).toEqual([
    ['run-1/parallel-1', 'across'],
  ]);
});
