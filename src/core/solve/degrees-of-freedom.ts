import { memoizeByIdentity } from '../memo/by-identity.ts';
import { type Component, connectedComponents } from './components.ts';
import type { Problem } from './problem.ts';
import { evaluate, prepare, type System, systemOf } from './system.ts';

/**
 * What the constraints leave open at the present poses: degrees of freedom, and constraints that those before them
 * imply.
 */
export interface RankReport {
  readonly degreesOfFreedom: number;
  readonly redundant: readonly string[];
}

interface RankedComponent {
  readonly group: Component;
  readonly system: System;
  readonly degreesOfFreedom: number;
}

/** How many rows are linearly independent when only bodies outside of `frozen` move. Weights do not matter here. */
function rank(
  { group: component, system }: Omit<RankedComponent, 'degreesOfFreedom'>,
  frozen: ReadonlySet<string>,
): number {
  const inverseWeight = component.free.flatMap(({ id, radiusOfGyration }) =>
    frozen.has(id) ? [0, 0, 0] : [1, 1, 1 / radiusOfGyration ** 2],
  );
  prepare(system, Float64Array.from(inverseWeight), 0);
  return system.matrix.inverse.reduce((count, each) => (each === 0 ? count : count + 1), 0);
}

const NONE: ReadonlySet<string> = new Set();

const rankedComponents = memoizeByIdentity((problem: Problem): readonly RankedComponent[] => {
  const made = connectedComponents(problem).map((component) => {
    const system = systemOf(component);
    evaluate(system, Float64Array.from(component.free.flatMap(({ pose }) => [pose.x, pose.y, pose.angle])));
    return {
      group: component,
      system,
      degreesOfFreedom: 3 * component.free.length - rank({ group: component, system }, NONE),
    };
  });
  return made;
});

export function rankReport(problem: Problem): RankReport {
  const parts = rankedComponents(problem);
  const redundant = parts.flatMap(({ group: component, system }) => {
    rank({ group: component, system }, NONE);
    const useful = new Set<number>();
    const constrained = new Set<number>();
    system.constraintOf.forEach((constraint, row) => {
      // A row without a gradient waits its turn: a wall that is far enough away has none.
      if (system.matrix.size[row] !== 0) constrained.add(constraint);
      if (system.matrix.inverse[row] !== 0) useful.add(constraint);
    });
    return component.constraints
      .filter((_, t) => constrained.has(t) && !useful.has(t))
      .map((constraint) => constraint.id);
  });
  return { degreesOfFreedom: parts.reduce((sum, { degreesOfFreedom: freedoms }) => sum + freedoms, 0), redundant };
}

/**
 * The degrees of freedom of these bodies under all constraints, the others moving along: those of all, less those that
 * are left when these are frozen.
 */
export function degreesOfFreedom(problem: Problem, ids: ReadonlySet<string>): number {
  return rankedComponents(problem).reduce((sum, part) => {
    const frozen = part.group.free.filter(({ id }) => ids.has(id)).length;
    if (frozen === 0) return sum;
    return sum + part.degreesOfFreedom - (3 * (part.group.free.length - frozen) - rank(part, ids));
  }, 0);
}
