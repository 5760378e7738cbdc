import { type Group, groups } from './components.ts';
import type { Problem } from './problem.ts';
import { evaluate, prepare, type System, systemOf } from './system.ts';

/** What the ties leave open where the bodies are now: ways to move, and ties that say nothing new after those before them. */
export interface Ranked {
  readonly freedoms: number;
  readonly spare: readonly string[];
}

interface Counted {
  readonly group: Group;
  readonly system: System;
  readonly freedoms: number;
}

/** How many rows are independent when only bodies outside of `frozen` move. Weights have no say here. */
function rank({ group, system }: Omit<Counted, 'freedoms'>, frozen: ReadonlySet<string>): number {
  const mobility = group.free.flatMap(({ id, lever }) => (frozen.has(id) ? [0, 0, 0] : [1, 1, 1 / lever ** 2]));
  prepare(system, Float64Array.from(mobility), 0);
  return system.matrix.inverse.reduce((count, each) => (each === 0 ? count : count + 1), 0);
}

const NONE: ReadonlySet<string> = new Set();
const known = new WeakMap<Problem, readonly Counted[]>();

function counted(problem: Problem): readonly Counted[] {
  const before = known.get(problem);
  if (before !== undefined) return before;
  const made = groups(problem).map((group) => {
    const system = systemOf(group);
    evaluate(system, Float64Array.from(group.free.flatMap(({ pose }) => [pose.x, pose.y, pose.angle])));
    return { group, system, freedoms: 3 * group.free.length - rank({ group, system }, NONE) };
  });
  known.set(problem, made);
  return made;
}

export function ranked(problem: Problem): Ranked {
  const parts = counted(problem);
  const spare = parts.flatMap(({ group, system }) => {
    rank({ group, system }, NONE);
    const useful = new Set<number>();
    const tied = new Set<number>();
    system.tieOf.forEach((tie, row) => {
      // A row without slopes waits for its turn, as a wall that is far enough away.
      if (system.matrix.size[row] !== 0) tied.add(tie);
      if (system.matrix.inverse[row] !== 0) useful.add(tie);
    });
    return group.ties.filter((_, t) => tied.has(t) && !useful.has(t)).map((tie) => tie.id);
  });
  return { freedoms: parts.reduce((sum, { freedoms }) => sum + freedoms, 0), spare };
}

/**
 * In how many ways these bodies can move while all ties hold, the others making way: what is left of the ways of all
 * once these are nailed down is theirs alone no more.
 */
export function freedomsOf(problem: Problem, ids: ReadonlySet<string>): number {
  return counted(problem).reduce((sum, part) => {
    const frozen = part.group.free.filter(({ id }) => ids.has(id)).length;
    if (frozen === 0) return sum;
    return sum + part.freedoms - (3 * (part.group.free.length - frozen) - rank(part, ids));
  }, 0);
}
