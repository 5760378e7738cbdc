import type { Component } from './components.ts';
import type { ConstraintEquations, NonEmpty } from './problem.ts';
import { type Effort, solveFromStarts } from './starts.ts';
import { workspace } from './workspace.ts';

/** More conflicts at once help nobody. */
const MOST_SETS = 8;
/** A smaller set is searched for in at most this many trials. */
const MOST_TRIES = 600;

/** The constraints, and the bodies that they are about. */
function subproblem(component: Component, constraints: readonly ConstraintEquations[]): Component {
  const ids = new Set(constraints.flatMap((constraint) => constraint.bodies));
  return {
    free: component.free.filter(({ id }) => ids.has(id)),
    grounded: component.grounded.filter(({ id }) => ids.has(id)),
    constraints,
  };
}

/** Whether some of the component's constraints can be met, from any of several arrangements. */
function isSatisfiable(
  component: Component,
  constraints: readonly ConstraintEquations[],
  effort: Effort = 'usual',
): boolean {
  return constraints.length === 0 || solveFromStarts(workspace(subproblem(component, constraints)), effort).isMet;
}

/**
 * A minimal set among `suspects` that is infeasible together with `background` (an irreducible infeasible subset): any one
 * dropped, the rest can be met. Divide and conquer rather than one by one, so that few of many constraints are found in
 * few trials.
 */
function irreducible(
  component: Component,
  background: readonly ConstraintEquations[],
  search: { suspects: readonly ConstraintEquations[]; baseGrew: boolean; effort: Effort },
): readonly ConstraintEquations[] {
  const { suspects, baseGrew: backgroundGrew, effort } = search;
  if (backgroundGrew && !isSatisfiable(component, background, effort)) return [];
  if (suspects.length <= 1) return suspects;
  const half = Math.ceil(suspects.length / 2);
  const early = suspects.slice(0, half);
  const late = suspects.slice(half);
  const fromLate = irreducible(component, [...background, ...early], {
    suspects: late,
    baseGrew: early.length > 0,
    effort,
  });
  const fromEarly = irreducible(component, [...background, ...fromLate], {
    suspects: early,
    baseGrew: fromLate.length > 0,
    effort,
  });
  return [...fromEarly, ...fromLate];
}

/** Sets of `size` constraints that are connected by bodies that move, each once, in the order of the list. */
function* connectedSets(
  component: Component,
  constraints: readonly ConstraintEquations[],
  size: number,
): Generator<readonly ConstraintEquations[]> {
  const free = new Set(component.free.map(({ id }) => id));
  const near = (a: ConstraintEquations, b: ConstraintEquations) =>
    a.bodies.some((id) => free.has(id) && b.bodies.includes(id));
  const neighbours = constraints.map((a, i) => constraints.flatMap((b, j) => (i !== j && near(a, b) ? [j] : [])));
  const seen = new Set<string>();
  function* grown(set: readonly number[]): Generator<readonly ConstraintEquations[]> {
    const key = [...set].sort((a, b) => a - b).join(' ');
    if (seen.has(key)) return;
    seen.add(key);
    if (set.length === size) {
      yield set.map((i) => constraints[i] as ConstraintEquations);
      return;
    }
    for (const i of new Set(set.flatMap((each) => neighbours[each] ?? [])))
      if (!set.includes(i)) yield* grown([...set, i]);
  }
  for (let i = 0; i < constraints.length; i++) yield* grown([i]);
}

/** The smallest conflict: the one that halving finds, unless trying the small sets finds a smaller one. */
function smallestConflict(
  component: Component,
  suspects: readonly ConstraintEquations[],
  effort: Effort,
): readonly ConstraintEquations[] {
  const found = irreducible(component, [], { suspects, baseGrew: false, effort });
  let tries = 0;
  for (let size = 1; size < found.length; size++) {
    for (const set of connectedSets(component, suspects, size)) {
      if (!isSatisfiable(component, set, effort)) return set;
      if (++tries === MOST_TRIES) return found;
    }
  }
  return found;
}

/**
 * `satisfiable`: some arrangement meets all constraints. Else disjoint conflicts: sets of constraints that no arrangement
 * that was tried can meet, each as small as could be found and met when any one is dropped.
 */
export type Diagnosis =
  | { readonly satisfiable: true }
  | { readonly satisfiable: false; readonly conflicts: NonEmpty<NonEmpty<string>> };

/** What is the matter with a component that a search from where its bodies are could not solve. */
export const diagnose: (component: Component) => Diagnosis = (component) => {
  const cached = cache.get(component);
  if (cached !== undefined) return cached;
  const made = conflictSets(component);
  cache.set(component, made);
  return made;
};

const cache = new WeakMap<Component, Diagnosis>();

/** Whether it was found that the component's constraints cannot all hold. */
export function isKnownConflict(component: Component): boolean {
  return cache.get(component)?.satisfiable === false;
}

function thoroughConflict(
  component: Component,
  suspects: readonly ConstraintEquations[],
): readonly ConstraintEquations[] {
  return isSatisfiable(component, suspects, 'thorough') ? [] : smallestConflict(component, suspects, 'thorough');
}

function conflictSets(component: Component): Diagnosis {
  const sets: NonEmpty<string>[] = [];
  let suspects = component.constraints;
  while (sets.length < MOST_SETS && !isSatisfiable(component, suspects)) {
    const quick = smallestConflict(component, suspects, 'usual');
    // A set is named only after a thorough search; where that meets it, all is searched as thoroughly.
    const isUnmet = !isSatisfiable(component, quick, 'thorough');
    const found = isUnmet ? quick : thoroughConflict(component, suspects);
    const [first, ...rest] = found.map((constraint) => constraint.id);
    if (first === undefined) break;
    sets.push([first, ...rest]);
    suspects = suspects.filter((constraint) => !found.includes(constraint));
  }
  const [first, ...rest] = sets;
  return first === undefined ? { satisfiable: true } : { satisfiable: false, conflicts: [first, ...rest] };
}
