/** Poles and the constraints between them, for the tests of the solver. */
import type { GrippedPose } from '../../../src/core/constraints/constraint.ts';
import { constraintKind } from '../../../src/core/constraints/constraints.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';
import type { Body, ConstraintEquations, Problem, Targets } from '../../../src/core/solve/problem.ts';

export const LENGTH = 3.6576;
export const THICKNESS = 0.1016;
export const GAP = 1.8288;

export function pole(id: string, pose: Pose, more: Partial<Body> = {}): Body {
  return { id, pose, weight: 1, radiusOfGyration: LENGTH / Math.sqrt(12), ...more };
}

export interface Between {
  readonly at?: number;
  readonly hold?: number;
  readonly side?: 1 | -1;
}

/** A constraint of a kind between equal poles, gripped at the same fraction. */
export function tie(
  kind: string,
  bodies: readonly string[],
  { at = 0.5, hold = 0, side = 1 }: Between = {},
): ConstraintEquations {
  const law = constraintKind(kind);
  if (law === undefined) throw new Error(`no kind ${kind}`);
  const held = (pose: Pose): GrippedPose => ({ pose, length: LENGTH, width: THICKNESS, at });
  return {
    id: `${kind} ${bodies.join(' ')} ${at}`,
    bodies,
    residuals: (poses) => law.residuals(poses.map(held), hold, side),
  };
}

/** A run of parallel poles, middle to middle square across; every pole on the +y side of the one before. */
export function run(count: number): Problem {
  const names = Array.from({ length: count }, (_, i) => `p${i}`);
  return {
    bodies: names.map((id, i) => pole(id, { x: 0, y: i * (GAP + THICKNESS), angle: 0 })),
    constraints: names.slice(1).flatMap((id, i) => {
      const pair = [names[i] ?? '', id];
      return [tie('parallel', pair), tie('gap', pair, { hold: GAP }), tie('ends-level', pair)];
    }),
  };
}

/**
 * Parallel poles with a gap at two-thirds, free to slide along each other and every other one slid by `slack` metres;
 * the first one never moves.
 */
export function chain(count: number, slack = 0.8): Problem {
  // The tape of c metres is c − t·c/rise long between faces, with c² = slack² + rise²: a few steps find the rise.
  let rise = GAP + THICKNESS;
  for (let k = 0; k < 60; k++) {
    const tape = Math.hypot(slack, rise);
    rise -= (tape - (THICKNESS * tape) / rise - GAP) * (tape / rise) * 0.5;
  }
  const plain = run(count);
  return {
    bodies: plain.bodies.map((body, i) => ({
      ...body,
      pose: { x: (i % 2) * slack, y: i * rise, angle: 0 },
      ...(i === 0 ? { weight: Number.POSITIVE_INFINITY } : {}),
    })),
    constraints: plain.bodies.slice(1).flatMap((body, i) => {
      const pair = [`p${i}`, body.id];
      return [tie('parallel', pair), tie('gap', pair, { hold: GAP, at: 2 / 3 })];
    }),
  };
}

/** A fan about the origin: held at the inner ends, at two-thirds, and level. */
export function fan(count: number): Problem {
  const inner = 0.3048;
  const half = Math.asin((GAP - inner) / (2 * (2 / 3) * LENGTH));
  const radius = (inner + THICKNESS / Math.cos(half)) / (2 * Math.sin(half)) + LENGTH / 2;
  const names = Array.from({ length: count }, (_, i) => `p${i}`);
  return {
    bodies: names.map((id, i) => {
      const angle = 2 * half * i;
      return pole(id, { x: radius * Math.cos(angle), y: radius * Math.sin(angle), angle });
    }),
    constraints: names.slice(1).flatMap((id, i) => {
      const pair = [names[i] ?? '', id];
      return [
        tie('gap', pair, { hold: inner, at: 0 }),
        tie('gap', pair, { hold: GAP, at: 2 / 3 }),
        tie('ends-level', pair, { at: 0 }),
      ];
    }),
  };
}

/** What `solved` takes when one body is dragged. */
export function wishing(problem: Problem, id: string, wish: Pose): readonly [Problem, Targets] {
  return [problem, new Map([[id, wish]])];
}

/** The problem with every body where `poses` has it. */
export function at(problem: Problem, poses: ReadonlyMap<string, Pose>): Problem {
  return {
    ...problem,
    bodies: problem.bodies.map((body) => ({ ...body, pose: poses.get(body.id) ?? body.pose })),
  };
}

/** The largest residual with the bodies at the given poses. */
export function worst(problem: Problem, poses: ReadonlyMap<string, Pose>): number {
  const rows = problem.constraints.flatMap((each) =>
    each.residuals(
      each.bodies.map((id) => {
        const pose = poses.get(id);
        if (pose === undefined) throw new Error(`no pose for ${id}`);
        return pose;
      }),
    ),
  );
  return Math.max(...rows.map((row) => Math.abs(row.value)));
}
