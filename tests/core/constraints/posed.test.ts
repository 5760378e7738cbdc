/** Every kind in random systems that have an answer: things laid by sets of constraints, jolted, and solved again. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { GrippedPose } from '../../../src/core/constraints/constraint.ts';
import { CONSTRAINT_KINDS, constraintKind } from '../../../src/core/constraints/constraints.ts';
import { grippedWall } from '../../../src/core/constraints/grip.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';
import { rankReport } from '../../../src/core/solve/degrees-of-freedom.ts';
import type { Body, ConstraintEquations, Problem } from '../../../src/core/solve/problem.ts';
import { solve } from '../../../src/core/solve/solve.ts';

const LENGTH = 3.6576;
const WIDTH = 0.1016;
const ARENA = { length: 60, width: 30 };

/** A constraint of a set: on the new thing `n`, the one before it `b`, the one before that `a`, or the south wall. */
interface Part {
  readonly kind: string;
  readonly on: readonly ('a' | 'b' | 'n' | 'wall')[];
  readonly at?: readonly number[];
  readonly hold?: number;
  readonly side?: 1 | -1;
}
/** Sets of constraints, and where the new thing lies as seen from the one before when all of them hold. */
interface Way {
  readonly parts: readonly Part[];
  readonly near: Pose;
}

const quarter = Math.PI / 2;
const WAYS: readonly Way[] = [
  {
    near: { x: 0, y: 2, angle: 0 },
    parts: [
      { kind: 'gap', on: ['b', 'n'], hold: 1.8 },
      { kind: 'parallel', on: ['b', 'n'] },
      { kind: 'ends-level', on: ['b', 'n'], at: [0, 0] },
    ],
  },
  {
    near: { x: 0.1, y: 1.6, angle: 0.1 },
    parts: [
      { kind: 'gap-ends', on: ['b', 'n'], hold: 1.5 },
      { kind: 'centres-level', on: ['b', 'n'] },
    ],
  },
  {
    near: { x: 0, y: 2.2, angle: 0 },
    parts: [
      { kind: 'equal-gaps', on: ['a', 'b', 'n'] },
      { kind: 'parallel', on: ['b', 'n'] },
      { kind: 'stripe-to-stripe', on: ['b', 'n'], at: [0.4, 0.6] },
    ],
  },
  {
    near: { x: 2.6, y: 0.9, angle: -0.6 },
    parts: [
      { kind: 'ends-touching', on: ['b', 'n'], at: [1, 1] },
      { kind: 'angle-between', on: ['b', 'n'], hold: 0.7, side: -1 },
    ],
  },
  {
    near: { x: -1, y: -1.9, angle: quarter },
    parts: [
      { kind: 'square', on: ['b', 'n'] },
      { kind: 'touching', on: ['n', 'b'], at: [1, 0.5], side: -1 },
      { kind: 'apart', on: ['b', 'n'], at: [0, 1], hold: 0.8 },
    ],
  },
  {
    near: { x: 4.4, y: 0, angle: 0 },
    parts: [
      { kind: 'in-line', on: ['b', 'n'], at: [0.5, 0] },
      { kind: 'apart', on: ['b', 'n'], at: [1, 0], hold: 0.6 },
    ],
  },
  {
    near: { x: 0.6, y: 3.2, angle: quarter },
    parts: [
      { kind: 'on-line', on: ['n', 'b'], at: [0.5, 0.5] },
      { kind: 'on-arc', on: ['b', 'n'], at: [0.5, 0], hold: 1.4 },
      { kind: 'square', on: ['b', 'n'] },
    ],
  },
  {
    near: { x: 0.4, y: 2.3, angle: 0.2 },
    parts: [
      { kind: 'marker-clear', on: ['b', 'n'], at: [0.5, 0], hold: 1 },
      { kind: 'beside', on: ['n', 'b'], at: [0.7, 0.5], hold: 2.2 },
      { kind: 'angle-between', on: ['b', 'n'], hold: 0.3 },
    ],
  },
  {
    near: { x: 0.2, y: 2.5, angle: 0.1 },
    parts: [{ kind: 'mirrored', on: ['a', 'n', 'b'] }],
  },
];
/** Sets that hang a thing on the walls, and where on the ground it lies then. */
const WALLED: readonly Way[] = [
  {
    near: { x: 20, y: 4, angle: 0.4 },
    parts: [
      { kind: 'off-wall', on: ['n', 'wall'], at: [0, 0.5], hold: 3 },
      { kind: 'angle-to-wall', on: ['n', 'wall'], hold: 0.4 },
    ],
  },
  { near: { x: 20, y: 1.2, angle: 0.4 }, parts: [{ kind: 'clear-of-wall', on: ['n', 'wall'], hold: 1.5 }] },
  { near: { x: 40, y: 6, angle: 0.4 }, parts: [{ kind: 'mirrored-centre', on: ['a', 'n', 'wall'] }] },
];

function pole(id: string, pose: Pose, fixed = false): Body {
  return { id, pose, weight: fixed ? Number.POSITIVE_INFINITY : 1, radiusOfGyration: LENGTH / Math.sqrt(12) };
}
const wall = grippedWall(ARENA, 'south');
const WALL: Body = { id: 'wall', pose: wall.pose, weight: Number.POSITIVE_INFINITY, radiusOfGyration: 1 };

function tie(part: Part, names: Readonly<Record<'a' | 'b' | 'n', string>>, id: string): ConstraintEquations {
  const kind = constraintKind(part.kind);
  if (kind === undefined) throw new Error(`no kind ${part.kind}`);
  const bodies = part.on.map((each) => (each === 'wall' ? 'wall' : names[each]));
  return {
    id: `${part.kind} ${id}`,
    bodies,
    residuals: (poses) =>
      kind.residuals(
        poses.map((pose, i): GrippedPose => {
          if (bodies[i] === 'wall') return { ...wall, pose };
          return { pose, length: LENGTH, width: WIDTH, at: part.at?.[i] ?? 0.5 };
        }),
        part.hold ?? 0,
        part.side ?? 1,
      ),
  };
}

function worst({ constraints: ties }: Problem, poses: ReadonlyMap<string, Pose>): number {
  const rows = ties.flatMap((each) => each.residuals(each.bodies.map((id) => poses.get(id) ?? WALL.pose)));
  return Math.max(...rows.map(({ value }) => Math.abs(value)));
}

const jolt = fc.double({ min: -0.15, max: 0.15, noNaN: true });
const jolts = fc.array(fc.record({ x: jolt, y: jolt, angle: jolt }), { minLength: 8, maxLength: 8 });

/** Things hung one on the other by the chosen sets, from two fixed poles side by side. */
function hung(ways: readonly Way[], nudges: readonly Pose[]): Problem {
  const first = pole('p0', { x: 30, y: 12, angle: 0 }, true);
  const second = pole('p1', { x: 30, y: 14, angle: 0 }, true);
  const bodies = [first, second];
  const ties: ConstraintEquations[] = [];
  let { x, y, angle } = second.pose;
  ways.forEach((way, i) => {
    const by = nudges[i] ?? { x: 0, y: 0, angle: 0 };
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    x += c * way.near.x - s * way.near.y;
    y += s * way.near.x + c * way.near.y;
    angle += way.near.angle;
    const id = `p${i + 2}`;
    bodies.push(pole(id, { x: x + by.x, y: y + by.y, angle: angle + by.angle }));
    const names = { a: `p${i}`, b: `p${i + 1}`, n: id };
    ties.push(...way.parts.map((part) => tie(part, names, id)));
  });
  return { bodies: [...bodies, WALL], constraints: ties };
}

describe('things hung on one another', () => {
  test.each(WAYS.map((way) => [way.parts.map(({ kind }) => kind).join(', '), way] as const))('by %s', (_, way) => {
    fc.assert(
      fc.property(jolts, (nudges) => {
        const problem = hung([way], nudges);
        const outcome = solve(problem);
        if (outcome.outcome !== 'met') throw new Error(JSON.stringify(outcome));
        expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);
      }),
      { numRuns: 30 },
    );
  });

  test('by any sets in any order, several deep: residuals below 1e-9, and no freedom left', () => {
    const upright = WAYS.filter(({ near }) => near.angle < 0.15 && near.x < 1);
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...upright), { minLength: 1, maxLength: 6 }), jolts, (ways, nudges) => {
        const problem = hung(
          ways,
          nudges.map(({ x, y, angle }) => ({ x: x / 4, y: y / 4, angle: angle / 4 })),
        );
        const outcome = solve(problem);
        if (outcome.outcome !== 'met') throw new Error(JSON.stringify(outcome));
        expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);
        const there = {
          ...problem,
          bodies: problem.bodies.map((b) => ({ ...b, pose: outcome.poses.get(b.id) ?? b.pose })),
        };
        expect(rankReport(there)).toEqual({ degreesOfFreedom: 0, redundant: [] });
      }),
      { numRuns: 250 },
    );
  });
});

test.each(WALLED.map((way) => [way.parts.map(({ kind }) => kind).join(', '), way] as const))(
  'a thing hung on the walls by %s',
  (_, way) => {
    fc.assert(
      fc.property(jolts, ([by]) => {
        const { x, y, angle } = way.near;
        const free = pole('n', { x: x + (by?.x ?? 0), y: y + (by?.y ?? 0), angle: angle + (by?.angle ?? 0) });
        const image = pole('a', { x: 20, y: 6, angle: -0.4 }, true);
        const names = { a: 'a', b: 'a', n: 'n' };
        const problem = { bodies: [image, free, WALL], constraints: way.parts.map((part) => tie(part, names, 'n')) };
        const outcome = solve(problem);
        if (outcome.outcome !== 'met') throw new Error(JSON.stringify(outcome));
        expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);
      }),
      { numRuns: 30 },
    );
  },
);

test('every kind with equations is in one of these sets', () => {
  const used = new Set([...WAYS, ...WALLED].flatMap(({ parts }) => parts.map(({ kind }) => kind)));
  const kinds = CONSTRAINT_KINDS.map(({ id }) => id).filter((id) => id !== 'fixed');
  expect(kinds.filter((id) => !used.has(id))).toEqual([]);
});
