/** Ten conflicts with the words that a designer reads, and the ways out of them. */
import { describe, expect, test } from 'vitest';
import { applyResolution } from '../../../src/core/course/conflict.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { solveLayout } from '../../../src/core/course/solve-layout.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { ARENA, box, fan, held, layout, run, withFixed } from './scene.ts';

const [P1, P2, P3, P4] = ['run-1/pole-1', 'run-1/pole-2', 'run-1/pole-3', 'run-1/pole-4'];
const [F1, F3] = ['fan-1/pole-1', 'fan-1/pole-3'];
const WEST = 'box-1/west';

interface Conflict {
  readonly what: string;
  readonly of: Layout;
  /** What is said between the opening and the advice. */
  readonly says: string;
  readonly keys: readonly string[];
  readonly frees?: readonly string[];
}

const CONFLICTS: readonly Conflict[] = [
  {
    what: 'two gaps between the same poles',
    of: layout([run()], [held('wide', 'gap', [P1, P2], { hold: 5 * FOOT, side: -1 })]),
    says:
      "These cannot all hold: The gap between pole 1 of run 1 and pole 2 of run 1 is 3', inside to inside. " +
      "The gap between pole 1 of run 1 and pole 2 of run 1 is 5', inside to inside.",
    keys: ['run-1/gap-1', 'wide'],
  },
  {
    what: 'parallel and square',
    of: layout([run()], [held('across', 'square', [P1, P2])]),
    says:
      'These cannot all hold: Pole 1 of run 1 and pole 2 of run 1 are parallel. ' +
      'Pole 1 of run 1 and pole 2 of run 1 are square to each other.',
    keys: ['run-1/parallel-1', 'across'],
  },
  {
    what: 'an angle across a row of parallel poles',
    of: layout([run()], [held('lean', 'angle-between', [P1, P4], { hold: Math.PI / 6 })]),
    says:
      'These cannot all hold: Pole 1 of run 1 and pole 2 of run 1 are parallel. ' +
      'Pole 2 of run 1 and pole 3 of run 1 are parallel. Pole 3 of run 1 and pole 4 of run 1 are parallel. ' +
      'The angle between pole 1 of run 1 and pole 4 of run 1 is 30°.',
    keys: ['run-1/parallel-1', 'run-1/parallel-2', 'run-1/parallel-3', 'lean'],
  },
  {
    what: 'two walls that ask for one pole',
    of: layout(
      [run()],
      [
        held('s', 'off-wall', [[P1, 0], 'south'], { hold: 10 * FOOT }),
        held('n', 'off-wall', [[P1, 1], 'north'], { hold: 10 * FOOT }),
      ],
    ),
    says:
      "These cannot all hold: Pole 1 of run 1 is 10' clear of the south wall. " +
      "Pole 1 of run 1 is 10' clear of the north wall.",
    keys: ['s', 'n'],
  },
  {
    what: 'two poles of a fan along one wall',
    of: layout(
      [fan()],
      [held('a', 'angle-to-wall', [F1, 'south'], { hold: 0 }), held('b', 'angle-to-wall', [F3, 'south'], { hold: 0 })],
    ),
    says:
      'These cannot all hold while fan 1 keeps its shape: Pole 1 of fan 1 lies at 0° to the south wall. ' +
      'Pole 3 of fan 1 lies at 0° to the south wall.',
    keys: ['a', 'b'],
  },
  {
    what: 'an obstacle with a fixed pole off a wall',
    of: layout([withFixed(run(), 'pole-2')], [held('off', 'off-wall', [[P1, 0], 'south'], { hold: 2 * FOOT })]),
    says: "This cannot hold: Pole 1 of run 1 is 2' clear of the south wall. Pole 2 of run 1 is pinned.",
    keys: ['off'],
    frees: [P2],
  },
  {
    what: 'two fixed obstacles a given way apart',
    of: layout(
      [withFixed(run(), 'pole-1'), withFixed(box(), 'west')],
      [held('far', 'apart', [P1, WEST], { hold: 20 * FOOT })],
    ),
    says:
      "This cannot hold: Pole 1 of run 1 and west of box 1 are 20' apart. " +
      'Pole 1 of run 1 and west of box 1 are pinned.',
    keys: ['far'],
    frees: [P1, WEST],
  },
  {
    what: 'a ring of parallel and square through three obstacles',
    of: layout(
      [run(), fan(), box()],
      [held('p', 'parallel', [P1, F1]), held('q', 'parallel', [F1, WEST]), held('r', 'square', [P1, WEST])],
    ),
    says:
      'These cannot all hold: Pole 1 of run 1 and pole 1 of fan 1 are parallel. ' +
      'Pole 1 of fan 1 and west of box 1 are parallel. Pole 1 of run 1 and west of box 1 are square to each other.',
    keys: ['p', 'q', 'r'],
  },
  {
    what: 'ends that touch and are apart',
    of: layout(
      [run(), box()],
      [
        held('t', 'ends-touching', [
          [P1, 0],
          [WEST, 0],
        ]),
        held(
          'd',
          'apart',
          [
            [P1, 0],
            [WEST, 0],
          ],
          { hold: FOOT },
        ),
      ],
    ),
    says:
      'These cannot all hold: The ends of pole 1 of run 1 and west of box 1 touch. ' +
      "Pole 1 of run 1 and west of box 1 are 1' apart.",
    keys: ['t', 'd'],
  },
  {
    what: 'more clear of two walls than there is room',
    of: layout(
      [run()],
      [
        held('c1', 'clear-of-wall', [P3, 'south'], { hold: 60 * FOOT }),
        held('c2', 'clear-of-wall', [P3, 'north'], { hold: 50 * FOOT }),
      ],
    ),
    says:
      "These cannot all hold: Pole 3 of run 1 is at least 60' clear of the south wall. " +
      "Pole 3 of run 1 is at least 50' clear of the north wall.",
    keys: ['c1', 'c2'],
  },
];

function clashes(of: Layout) {
  const answer = solveLayout(of, ARENA, new Map());
  if (answer.kind !== 'conflict') throw new Error(answer.kind);
  return answer;
}

describe.each(CONFLICTS.map((conflict) => [conflict.what, conflict] as const))('%s', (_, conflict) => {
  const { of, says, keys, frees = [] } = conflict;

  test('is told in words', () => {
    const advice = keys.length === 1 ? 'Change or drop it' : 'Change or drop one of them';
    expect(clashes(of).says).toBe(`${says} ${advice}; nothing was moved.`);
  });

  test('names the smallest set, and offers to drop any one of it or to let go of what is fixed', () => {
    const [clash, ...more] = clashes(of).conflicts;
    expect(more).toEqual([]);
    expect(clash.members.map(({ key }) => key)).toEqual(keys);
    expect(clash.resolutions.map(({ does, key }) => [does, key])).toEqual([
      ...keys.map((key) => ['drop', key]),
      ...frees.map((key) => ['unpin', key]),
    ]);
  });

  test('is over when any one offer is taken', () => {
    for (const offer of clashes(of).conflicts[0].resolutions) {
      const after = applyResolution(of, offer);
      expect(after).not.toBe(of);
      expect(solveLayout(after, ARENA, new Map()).kind).toBe('settled');
      expect(applyResolution(after, offer)).toBe(after);
    }
  });

  test('moves nothing while it stands, whatever is dragged', () => {
    const [first] = of.obstacles;
    if (first === undefined) throw new Error('nothing is there');
    const wish = { ...first.pose, x: first.pose.x + 1 };
    for (const key of [first.id, `${first.id}/${first.pieces[0]?.id}`]) {
      const answer = solveLayout(of, ARENA, new Map([[key, wish]]));
      if (answer.kind === 'settled') expect(answer.layout).toBe(of);
    }
  });
});

test('two conflicts that have nothing to do with each other are told one by one', () => {
  const both = layout(
    [run(), box()],
    [
      held('wide', 'gap', [P1, P2], { hold: 5 * FOOT, side: -1 }),
      held('s', 'angle-to-wall', [WEST, 'south'], { hold: 0 }),
      held('e', 'angle-to-wall', [WEST, 'east'], { hold: 0 }),
    ],
  );
  expect(clashes(both).conflicts.map(({ members: culprits }) => culprits.map(({ key }) => key))).toEqual([
    ['run-1/gap-1', 'wide'],
    ['s', 'e'],
  ]);
});

test('lengths are told in the unit of the course, obstacles by their own names', () => {
  const of = layout([{ ...run(), name: 'Jog-overs' }], [held('wide', 'gap', [P1, P2], { hold: 1.5, side: -1 })]);
  const answer = solveLayout(of, ARENA, new Map(), { unit: 'm' });
  expect(answer.kind === 'conflict' && answer.says).toContain('pole 2 of Jog-overs is 1.50 m');
});
