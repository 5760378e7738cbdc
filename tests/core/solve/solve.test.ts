import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compose, type Pose } from '../../../src/core/plane/pose.ts';
import { degreesOfFreedom, rankReport } from '../../../src/core/solve/degrees-of-freedom.ts';
import type { Outcome, Problem, Targets } from '../../../src/core/solve/problem.ts';
import { solve } from '../../../src/core/solve/solve.ts';
import { at, chain, fan, GAP, pole, run, THICKNESS, tie, wishing, worst } from './poles.ts';

function met(problem: Problem, wishes?: Targets): Extract<Outcome, { outcome: 'met' }> {
  const outcome = solve(problem, wishes);
  if (outcome.outcome !== 'met') throw new Error(JSON.stringify(outcome));
  return outcome;
}
function poseOf(poses: ReadonlyMap<string, Pose>, id: string): Pose {
  const pose = poses.get(id);
  if (pose === undefined) throw new Error(`no pose for ${id}`);
  return pose;
}
const far = (a: Pose, b: Pose): number => Math.max(Math.hypot(a.x - b.x, a.y - b.y), Math.abs(a.angle - b.angle));
const small = fc.double({ min: -0.3, max: 0.3, noNaN: true });
const nudge = fc.record({ x: small, y: small, angle: small });
const SCENES: readonly (readonly [string, Problem])[] = [
  ['a run of 6', run(6)],
  ['a chain of 6', chain(6)],
  ['a fan of 3', fan(3)],
];

describe('what is met already', () => {
  test.each(SCENES)('%s keeps its very poses', (_, scene) => {
    const { poses } = met(scene);
    for (const body of scene.bodies) expect(poses.get(body.id)).toBe(body.pose);
  });

  test('a body with no tie goes where it is wished, to the bit', () => {
    const wish = { x: 0.1 + 0.2, y: -7, angle: 9 };
    const scene = { bodies: [pole('a', { x: 0, y: 0, angle: 0 })], constraints: [] };
    expect(met(scene, new Map([['a', wish]])).poses.get('a')).toBe(wish);
    expect(rankReport(scene).degreesOfFreedom).toBe(3);
  });
});

describe.each(SCENES)('%s', (_, scene) => {
  const last = scene.bodies[scene.bodies.length - 1];
  if (last === undefined) throw new Error('a scene without bodies');
  const home = last.pose;
  const wished = (by: Pose): readonly [Problem, Targets] =>
    wishing(scene, last.id, { x: home.x + by.x, y: home.y + by.y, angle: home.angle + by.angle });

  test('keeps its measures when one pole is dragged, and fixed poles to the bit', () => {
    fc.assert(
      fc.property(nudge, (by) => {
        const { poses } = met(...wished(by));
        expect(worst(scene, poses)).toBeLessThan(1e-10);
        for (const body of scene.bodies) if (body.weight === Infinity) expect(poses.get(body.id)).toBe(body.pose);
      }),
    );
  });

  test('solving twice is solving once', () => {
    fc.assert(
      fc.property(nudge, (by) => {
        const once = met(...wished(by)).poses;
        const twice = met(at(scene, once)).poses;
        for (const body of scene.bodies) expect(twice.get(body.id)).toBe(once.get(body.id));
      }),
    );
  });

  test('gives the same bytes for the same problem', () => {
    const by = { x: 0.2, y: -0.1, angle: 0.05 };
    expect(JSON.stringify([...met(...wished(by)).poses])).toBe(JSON.stringify([...met(...wished(by)).poses]));
  });

  test('does not care in which order bodies and ties are given', () => {
    fc.assert(
      fc.property(nudge, (by) => {
        const [problem, wishes] = wished(by);
        const here = met(problem, wishes).poses;
        const there = met(
          { bodies: problem.bodies.toReversed(), constraints: problem.constraints.toReversed() },
          wishes,
        ).poses;
        for (const [id, pose] of here) expect(far(pose, poseOf(there, id))).toBeLessThan(1e-9);
      }),
    );
  });

  test('turns and shifts with everything', () => {
    fc.assert(
      fc.property(nudge, fc.double({ min: -3, max: 3, noNaN: true }), (by, turn) => {
        const frame = { x: 20, y: -5, angle: turn };
        const [problem, wishes] = wished(by);
        const there = met(
          { ...problem, bodies: problem.bodies.map((body) => ({ ...body, pose: compose(frame, body.pose) })) },
          new Map([...wishes].map(([id, wish]) => [id, compose(frame, wish)])),
        ).poses;
        for (const [id, pose] of met(problem, wishes).poses) {
          expect(far(compose(frame, pose), poseOf(there, id))).toBeLessThan(1e-5);
        }
      }),
    );
  });

  test('comes back to the bit when one drag goes away and back: only its beginning and its end count', () => {
    const { poses } = met(...wished({ x: 0, y: 0, angle: 0 }));
    for (const body of scene.bodies) expect(poses.get(body.id)).toBe(body.pose);
  });

  test('comes back when every step of a drag starts from the one before', () => {
    let now = scene;
    for (let k = 1; k <= 20; k++) {
      const way = k <= 10 ? k : 20 - k;
      const wish = { x: home.x + 0.03 * way, y: home.y - 0.02 * way, angle: home.angle + 0.01 * way };
      now = at(scene, met(...wishing(now, last.id, wish)).poses);
    }
    // A linkage with degrees of freedom of its own may come back folded a little differently.
    const tolerance = rankReport(scene).degreesOfFreedom > 3 ? 1e-3 : 1e-6;
    for (const body of scene.bodies) {
      const back = now.bodies.find((each) => each.id === body.id);
      expect(far(back?.pose ?? home, body.pose)).toBeLessThan(tolerance);
    }
  });

  test('comes back on the same side when every pole is nudged by up to a millimetre', () => {
    const mm = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.record({ x: mm, y: mm, angle: mm }), { minLength: 6, maxLength: 6 }), (nudges) => {
        const nudged = scene.bodies.map((body, i) => {
          const by = nudges[i] ?? { x: 0, y: 0, angle: 0 };
          if (body.weight === Infinity) return body;
          const { x, y, angle } = body.pose;
          return { ...body, pose: { x: x + by.x, y: y + by.y, angle: angle + by.angle } };
        });
        const { poses } = met({ ...scene, bodies: nudged });
        for (const body of nudged) expect(far(poseOf(poses, body.id), body.pose)).toBeLessThan(0.02);
      }),
    );
  });

  test('does not jump in a drag of 60 steps', () => {
    const step = 0.02;
    // A chain that is pulled straight quickens without bound just before it is: drag it across.
    const up = rankReport(scene).degreesOfFreedom > 3 ? 0 : 0.8;
    let before = new Map(scene.bodies.map((body) => [body.id, body.pose]));
    for (let k = 1; k <= 60; k++) {
      const wish = { ...home, x: home.x - step * k * 0.6, y: home.y + step * k * up };
      const { poses } = met(...wishing(scene, last.id, wish));
      for (const [id, pose] of poses) expect(far(pose, poseOf(before, id))).toBeLessThan(3 * step);
      before = new Map(poses);
    }
  });
});

describe('a long drag', () => {
  test('of a slack chain goes on smoothly where it passes from one goal on its way to the next', () => {
    const scene = chain(12);
    const last = scene.bodies[11];
    if (last === undefined) throw new Error('no last pole');
    let before = new Map(scene.bodies.map((body) => [body.id, body.pose]));
    for (let k = 1; k <= 95; k++) {
      const wish = { ...last.pose, x: last.pose.x + 0.012 * k, y: last.pose.y + 0.016 * k };
      const { poses } = met(...wishing(scene, last.id, wish));
      for (const [id, pose] of poses) expect(far(pose, poseOf(before, id))).toBeLessThan(0.03);
      expect(poses.get(last.id)).toEqual(wish);
      before = new Map(poses);
    }
  });
});

describe('a dragged pole', () => {
  test('takes a free fan along, however far, and turns it only when it is turned', () => {
    const scene = fan(3);
    const home = poseOf(new Map(scene.bodies.map((body) => [body.id, body.pose])), 'p2');
    const { poses } = met(...wishing(scene, 'p2', { ...home, x: home.x + 12, y: home.y - 5 }));
    for (const body of scene.bodies) {
      const there = { ...body.pose, x: body.pose.x + 12, y: body.pose.y - 5 };
      expect(far(poseOf(poses, body.id), there)).toBeLessThan(1e-5);
    }
  });

  test('slides in its chain while the poles that need not move stay', () => {
    const scene = chain(6);
    const { poses } = met(...wishing(scene, 'p5', { x: 0.4, y: 5 * (GAP + THICKNESS), angle: 0 }));
    expect(poseOf(poses, 'p5').x).toBeCloseTo(0.4, 3);
    expect(Math.abs(poseOf(poses, 'p1').x)).toBeLessThan(0.1);
  });

  test('goes as near to an unreachable wish as its tie allows: a stick on a pin points at the hand', () => {
    const pin = { id: 'pin', pose: { x: 0, y: 0, angle: 0 }, weight: Infinity, radiusOfGyration: 1 };
    const stick = pole('stick', { x: 2, y: 0, angle: 0 });
    const wishes = new Map([['stick', { x: 0, y: 9, angle: 0 }]]);
    const apart = { ...tie('apart', ['pin', 'stick'], { hold: 2 - THICKNESS }) };
    const { poses } = met({ bodies: [pin, stick], constraints: [apart] }, wishes);
    expect(poseOf(poses, 'stick').x).toBeCloseTo(0, 3);
    expect(poseOf(poses, 'stick').y).toBeCloseTo(2, 5);
  });

  test('that never moves ignores its wish', () => {
    const scene = chain(3);
    const { poses } = met(...wishing(scene, 'p0', { x: 5, y: 5, angle: 1 }));
    for (const body of scene.bodies) expect(poses.get(body.id)).toBe(body.pose);
  });

  test('put on the wrong side of its neighbour comes back to the side that was meant', () => {
    const scene = run(2);
    const wrong = scene.bodies.map((body, i) => (i === 1 ? { ...body, pose: { x: 0.2, y: -1, angle: 0.2 } } : body));
    const { poses } = met({ ...scene, bodies: wrong });
    expect(poseOf(poses, 'p1').y - poseOf(poses, 'p0').y).toBeGreaterThan(GAP);
  });
});

describe('what is left over', () => {
  test('freedoms are counted: a rigid fan has 3, hung on a fixed pole none', () => {
    expect(rankReport(fan(3)).degreesOfFreedom).toBe(3);
    expect(rankReport(run(6)).degreesOfFreedom).toBe(3);
    expect(rankReport(chain(6)).degreesOfFreedom).toBe(5);
  });

  test('freedoms of one body are those that it has while the others make way', () => {
    const scene = chain(6);
    // Parallel to a pole that never moves: they shift, and do not turn.
    expect(degreesOfFreedom(scene, new Set(['p1']))).toBe(1);
    expect(degreesOfFreedom(scene, new Set(['p2']))).toBe(2);
    expect(degreesOfFreedom(scene, new Set(['p1', 'p2']))).toBe(2);
    expect(degreesOfFreedom(scene, new Set(['p0']))).toBe(0);
    expect(degreesOfFreedom(run(6), new Set(['p3']))).toBe(3);
  });

  test('a tie that says nothing new is spare', () => {
    const scene = run(3);
    const again = tie('parallel', ['p0', 'p2']);
    expect(rankReport({ ...scene, constraints: [...scene.constraints, again] }).redundant).toEqual([again.id]);
    expect(rankReport(scene).redundant).toEqual([]);
  });
});

describe('a clash', () => {
  const clashOf = (problem: Problem) => {
    const outcome = solve(problem);
    if (outcome.outcome !== 'conflict') throw new Error(JSON.stringify([outcome.outcome]));
    return outcome.conflicts;
  };

  test('names the two gaps that differ, and nothing else', () => {
    const scene = run(6);
    const other = { ...tie('gap', ['p2', 'p3'], { hold: 1 }), id: 'other' };
    expect(clashOf({ ...scene, constraints: [...scene.constraints, other] })).toEqual([['gap p2 p3 0.5', 'other']]);
  });

  test('names a ring of parallel and square', () => {
    const scene = run(3);
    const other = tie('square', ['p0', 'p2']);
    const [set, ...more] = clashOf({ ...scene, constraints: [...scene.constraints, other] });
    expect(set.toSorted()).toEqual(['parallel p0 p1 0.5', 'parallel p1 p2 0.5', 'square p0 p2 0.5']);
    expect(more).toEqual([]);
  });

  test('names a tie between poles that never move', () => {
    const still = { weight: Infinity };
    const a = pole('a', { x: 0, y: 0, angle: 0 }, still);
    const b = pole('b', { x: 0, y: 5, angle: 0 }, still);
    expect(clashOf({ bodies: [a, b], constraints: [tie('gap', ['a', 'b'], { hold: 1 })] })).toEqual([['gap a b 0.5']]);
  });

  test('names two independent conflicts one by one', () => {
    const scene = run(6);
    const one = { ...tie('gap', ['p0', 'p1'], { hold: 1 }), id: 'one' };
    const two = { ...tie('square', ['p4', 'p5']), id: 'two' };
    const sets = clashOf({ ...scene, constraints: [...scene.constraints, one, two] }).map((set) => set.toSorted());
    expect(sets).toContainEqual(['gap p0 p1 0.5', 'one']);
    expect(sets).toContainEqual(['parallel p4 p5 0.5', 'two']);
    expect(sets).toHaveLength(2);
  });

  test('of gaps that no place can meet: two ends nearer together than the poles are apart', () => {
    const scene = run(2);
    const ends = [tie('gap', ['p0', 'p1'], { at: 0, hold: 1 }), tie('gap', ['p0', 'p1'], { at: 1, hold: 3 })];
    const sets = clashOf({ ...scene, constraints: [...scene.constraints, ...ends] });
    expect(sets.length).toBeGreaterThan(0);
    for (const set of sets) expect(set.length).toBeGreaterThan(1);
  });
});

describe('a programmer’s mistake', () => {
  test('a tie to a body that is not there is told with both names', () => {
    expect(() => solve({ bodies: [], constraints: [tie('parallel', ['a', 'b'])] })).toThrow('parallel a b 0.5 names a');
  });
  test('two bodies with one id are refused', () => {
    const twin = pole('a', { x: 0, y: 0, angle: 0 });
    expect(() => solve({ bodies: [twin, twin], constraints: [] })).toThrow('same id');
  });
});
