import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Constraint } from '../../../src/core/constraints/constraint.ts';
import { constraintKind } from '../../../src/core/constraints/constraints.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { type LayoutOutcome, solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { normalizeAngle, type Pose } from '../../../src/core/plane/pose.ts';
import { rankReport } from '../../../src/core/solve/degrees-of-freedom.ts';
import { equationCount } from './scene.ts';

const ARENA = {
  title: 'Larkhollow Fairground',
  length: 60,
  width: 30,
  entrance: { wall: 'west', at: 15, width: 4 },
} as const;
const PLACE: Pose = { x: 20, y: 12, angle: 0.4 };

function obstacle(kind: string, side: 1 | -1 = 1, pose = PLACE): Obstacle {
  const built = buildObstacle(`${kind}-1`, kind, {}, pose, side);
  if ('why' in built) throw new Error(built.why);
  return built;
}
function layout(obstacles: readonly Obstacle[], constraints: readonly Constraint[] = []): Layout {
  return {
    id: 'a',
    title: 'A',
    obstacles,
    constraints,
    ride: { start: { x: 2, y: 15, angle: 0 }, legs: [] },
  };
}
function withFixed(whole: Obstacle, piece: string): Obstacle {
  return { ...whole, pieces: whole.pieces.map((each) => (each.id === piece ? { ...each, fixed: true } : each)) };
}
function laid(answer: LayoutOutcome): Layout {
  if (answer.kind !== 'settled') throw new Error(answer.says);
  return answer.layout;
}
function ground(of: Layout, key: string): Pose {
  const found = of.obstacles.flatMap((each) => placedObstacle(each).pieces).find((piece) => piece.key === key);
  if (found === undefined) throw new Error(`no piece ${key}`);
  return found.pose;
}
/** The largest residual of everything that the layout holds. */
function worst(of: Layout): number {
  const { problem } = layoutProblem(of, ARENA);
  const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const rows = problem.constraints.flatMap((each) => each.residuals(each.bodies.map((id) => poses.get(id) ?? PLACE)));
  return rows.reduce((most, row) => Math.max(most, Math.abs(row.value)), 0);
}
function shifted(pose: Pose, x: number, y: number, angle = 0): Pose {
  return { x: pose.x + x, y: pose.y + y, angle: pose.angle + angle };
}
const far = (a: Pose, b: Pose): number =>
  Math.max(Math.hypot(a.x - b.x, a.y - b.y), Math.abs(normalizeAngle(a.angle - b.angle)));

describe.each(OBSTACLE_KINDS.map((kind) => [kind.id] as const))('a %s as it is built', (kind) => {
  test.each([1, -1] as const)('meets its constraints and repeats none, side %i', (side) => {
    const one = obstacle(kind, side);
    for (const constraint of one.constraints) expect(constraintKind(constraint.kind), constraint.kind).toBeDefined();
    expect(worst(layout([one]))).toBeLessThan(1e-9);
    const { problem } = layoutProblem(layout([one]), ARENA);
    const { degreesOfFreedom: freedoms, redundant: spare } = rankReport(problem);
    expect(spare).toEqual([]);
    expect(freedoms).toBe(3 * placedObstacle(one).pieces.length - equationCount(layout([one]), ARENA));
  });

  test('is the same object when nothing is wished and all is met', () => {
    const before = layout([obstacle(kind)]);
    expect(laid(solveLayout(before, ARENA, new Map()))).toBe(before);
  });

  test('is carried whole with its pieces in their places to the bit', () => {
    const one = obstacle(kind);
    const there = shifted(PLACE, 3, -2, 1);
    const after = laid(solveLayout(layout([one]), ARENA, new Map([[one.id, there]])));
    expect(after.obstacles[0]?.pose).toBe(there);
    expect(after.obstacles[0]?.pieces).toBe(one.pieces);
  });

  test('keeps its measures when any one of its pieces is dragged', () => {
    const one = obstacle(kind);
    for (const piece of one.pieces) {
      const key = `${one.id}/${piece.id}`;
      const wish = shifted(ground(layout([one]), key), 0.2, -0.22, 0.1);
      const after = laid(solveLayout(layout([one]), ARENA, new Map([[key, wish]])));
      expect(worst(after)).toBeLessThan(1e-9);
      expect(far(ground(after, key), wish)).toBeLessThan(1e-4);
    }
  });
});

describe.each(OBSTACLE_KINDS.map((kind) => [kind.id] as const))('a %s pulled about', (kind) => {
  const whole = obstacle(kind);
  const loose = { ...whole, constraints: whole.constraints.filter((_, i) => i % 4 !== 1) };
  const hung = loose.pieces[1] === undefined ? loose : withFixed(loose, loose.pieces[1].id);

  test('is never lost, however far the hand goes and however it turns', () => {
    const reach = fc.double({ min: -12, max: 12, noNaN: true });
    fc.assert(
      fc.property(reach, reach, fc.double({ min: -3, max: 3, noNaN: true }), fc.nat(), (x, y, turn, n) => {
        for (const one of [whole, loose, hung]) {
          const piece = one.pieces[n % one.pieces.length];
          if (piece === undefined) continue;
          const key = `${one.id}/${piece.id}`;
          const before = layout([one]);
          const after = laid(solveLayout(before, ARENA, new Map([[key, shifted(ground(before, key), x, y, turn)]])));
          expect(worst(after)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('a fan with its middle pole fixed', () => {
  const one = withFixed(obstacle('fan'), 'pole-2');
  const before = layout([one, { ...obstacle('box', 1, { x: 40, y: 20, angle: 0 }) }]);

  test('keeps every measure, and the fixed pole to the bit, when another is dragged by 0.3 m', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.3, noNaN: true }), fc.constantFrom('pole-1', 'pole-3'), (way, id) => {
        const key = `fan-1/${id}`;
        const wish = shifted(ground(before, key), 0.3 * Math.cos(way), 0.3 * Math.sin(way));
        const after = laid(solveLayout(before, ARENA, new Map([[key, wish]])));
        expect(worst(after)).toBeLessThan(1e-9);
        expect(ground(after, 'fan-1/pole-2')).toEqual(ground(before, 'fan-1/pole-2'));
        expect(after.obstacles[1]).toBe(before.obstacles[1]);
      }),
      { numRuns: 30 },
    );
  });

  test('does not move when it is wished elsewhere whole', () => {
    const after = laid(solveLayout(before, ARENA, new Map([['fan-1', shifted(PLACE, 5, 0)]])));
    for (const id of ['pole-1', 'pole-2', 'pole-3']) {
      expect(far(ground(after, `fan-1/${id}`), ground(before, `fan-1/${id}`))).toBeLessThan(1e-6);
    }
  });
});

describe('a run with one gap let go and its first pole fixed', () => {
  const built = withFixed(obstacle('run'), 'pole-1');
  const one = { ...built, constraints: built.constraints.filter(({ id }) => id !== 'gap-2') };
  const before = layout([one]);
  const key = 'run-1/pole-4';
  const home = ground(before, key);
  const along = (far: number): Pose => shifted(home, far * Math.cos(PLACE.angle), far * Math.sin(PLACE.angle));

  test('moves only what hangs on the dragged pole, along the only way that is open', () => {
    const after = laid(solveLayout(before, ARENA, new Map([[key, shifted(along(0.5), -0.3, 0.3)]])));
    expect(worst(after)).toBeLessThan(1e-9);
    expect(after.obstacles[0]?.pose).toBe(one.pose);
    expect(after.obstacles[0]?.pieces[0]).toBe(one.pieces[0]);
    expect(far(ground(after, 'run-1/pole-2'), ground(before, 'run-1/pole-2'))).toBeLessThan(1e-3);
    expect(far(ground(after, 'run-1/pole-3'), ground(before, 'run-1/pole-3'))).toBeGreaterThan(0.1);
  });

  test('moves smoothly in a drag of 60 steps and comes back to the bit', () => {
    let last = before;
    for (let k = 1; k <= 60; k++) {
      const now = laid(solveLayout(before, ARENA, new Map([[key, along(0.02 * k)]])));
      for (const { id } of one.pieces) {
        expect(far(ground(now, `run-1/${id}`), ground(last, `run-1/${id}`))).toBeLessThan(0.06);
      }
      last = now;
    }
    expect(laid(solveLayout(before, ARENA, new Map([[key, home]])))).toBe(before);
  });
});

describe('an obstacle held off a wall', () => {
  const one = obstacle('fan', 1, { x: 20, y: 6, angle: 0 });
  const off: Constraint = {
    id: 'off-1',
    kind: 'off-wall',
    grips: [{ piece: 'fan-1/pole-2', at: 0 }, { wall: 'south' }],
    hold: 1.5,
  };

  test('is brought there when nothing is wished, and slides along it when it is dragged whole', () => {
    const first = laid(solveLayout(layout([one], [off]), ARENA, new Map()));
    expect(worst(first)).toBeLessThan(1e-9);
    const frame = first.obstacles[0]?.pose ?? PLACE;
    const after = laid(solveLayout(first, ARENA, new Map([['fan-1', shifted(frame, 7, 3)]])));
    expect(worst(after)).toBeLessThan(1e-9);
    const moved = after.obstacles[0]?.pose ?? PLACE;
    expect(moved.x - frame.x).toBeCloseTo(7, 1);
    expect(Math.abs(moved.y - frame.y)).toBeLessThan(0.05);
    // All its pieces went as one: they keep their places in it.
    expect(after.obstacles[0]?.pieces).toBe(first.obstacles[0]?.pieces);
  });

  test('a constraint without a value only measures', () => {
    const { hold: _, ...loose } = off;
    const before = layout([one], [loose]);
    expect(laid(solveLayout(before, ARENA, new Map()))).toBe(before);
  });

  test('another obstacle tied to it follows', () => {
    const box = obstacle('box', 1, { x: 30, y: 8, angle: 0 });
    const link: Constraint = {
      id: 'link',
      kind: 'apart',
      grips: [{ piece: 'fan-1/pole-2' }, { piece: 'box-1/west' }],
      hold: 8,
    };
    const first = laid(solveLayout(layout([one, box], [link]), ARENA, new Map()));
    const after = laid(
      solveLayout(first, ARENA, new Map([['fan-1/pole-2', shifted(ground(first, 'fan-1/pole-2'), -4, 0)]])),
    );
    expect(worst(after)).toBeLessThan(1e-9);
    expect(ground(after, 'box-1/west').x).toBeLessThan(ground(first, 'box-1/west').x - 2);
  });
});

describe('what cannot hold', () => {
  const one = obstacle('run');
  const more = (constraint: Constraint): Layout => layout([one], [constraint]);
  const grips = [{ piece: 'run-1/pole-1' }, { piece: 'run-1/pole-2' }];
  const clash = (of: Layout) => {
    const answer = solveLayout(of, ARENA, new Map());
    if (answer.kind !== 'conflict') throw new Error(answer.kind);
    return answer;
  };

  test('is told as two gaps with their lengths', () => {
    const { conflicts: clashes, says } = clash(more({ id: 'wide', kind: 'gap', grips, hold: 5 * FOOT, side: -1 }));
    expect(clashes.map(({ members: culprits }) => culprits.map(({ key }) => key))).toEqual([['run-1/gap-1', 'wide']]);
    expect(says).toBe(
      "These cannot all hold: The gap between pole 1 of run 1 and pole 2 of run 1 is 3', inside to inside. " +
        "The gap between pole 1 of run 1 and pole 2 of run 1 is 5', inside to inside. " +
        'Change or drop one of them; nothing was moved.',
    );
  });

  test('is told in the unit of the course and by the obstacle’s own name', () => {
    const named = { ...one, name: 'Jog-overs' };
    const both = layout([named], [{ id: 'wide', kind: 'gap', grips, hold: 1.5, side: -1 }]);
    const answer = solveLayout(both, ARENA, new Map(), { unit: 'm' });
    expect(answer.kind === 'conflict' && answer.says).toContain('pole 2 of Jog-overs is 1.50 m');
  });

  test('is told as parallel and square', () => {
    const { conflicts: clashes } = clash(more({ id: 'across', kind: 'square', grips }));
    expect(clashes.map(({ members: culprits }) => culprits.map(({ key }) => key).toSorted())).toEqual([
      ['across', 'run-1/parallel-1'],
    ]);
  });

  test('is told when two walls ask for one pole', () => {
    const angle: Constraint = {
      id: 'along',
      kind: 'angle-to-wall',
      grips: [{ piece: 'run-1/pole-1' }, { wall: 'south' }],
      hold: 0,
    };
    const other: Constraint = { ...angle, id: 'along-west', grips: [{ piece: 'run-1/pole-3' }, { wall: 'west' }] };
    const { conflicts: clashes, says } = clash(layout([one], [angle, other]));
    expect(clashes[0].members.map(({ key }) => key)).toEqual(['along', 'along-west']);
    expect(says).toContain('lies at 0° to the south wall.');
  });

  test('leaves alone what it does not know or cannot grip', () => {
    const odd: readonly Constraint[] = [
      { id: 'a', kind: 'no-such-kind', grips, hold: 1 },
      { id: 'b', kind: 'gap', grips: [{ piece: 'run-1/pole-1' }, { piece: 'gone-1/pole-1' }], hold: 1 },
      { id: 'c', kind: 'gap', grips: [{ wall: 'south' }, { piece: 'run-1/pole-1' }], hold: 1 },
    ];
    const before = layout([one], odd);
    expect(laid(solveLayout(before, ARENA, new Map()))).toBe(before);
  });
});
