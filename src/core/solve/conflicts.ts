import type { Group } from './components.ts';
import { MET, type Some, type Tie } from './problem.ts';
import { meet } from './solve-component.ts';
import { workbench } from './workspace.ts';

/** More sets than this at once help nobody. */
const MOST_SETS = 8;
/** A smaller set is looked for up to this size, in at most so many tries. */
const SMALLEST = 3;
const MOST_TRIES = 600;

/** The bodies that the ties are about, and the ties. */
function among(group: Group, ties: readonly Tie[]): Group {
  const ids = new Set(ties.flatMap((tie) => tie.bodies));
  return { free: group.free.filter(({ id }) => ids.has(id)), still: group.still.filter(({ id }) => ids.has(id)), ties };
}

/** Whether some of the group's ties can be met from where its bodies are. */
function canHold(group: Group, ties: readonly Tie[]): boolean {
  return ties.length === 0 || meet(workbench(among(group, ties))).worst <= MET;
}

/** Whether it is certain that they cannot: the search came to rest, and not at zero. */
function cannotHold(group: Group, ties: readonly Tie[]): boolean {
  return meet(workbench(among(group, ties))).stuck;
}

/**
 * A set among `suspects` that cannot hold together with `base`, though it can when any one is dropped: the suspects are
 * halved rather than dropped one by one, so that few of many ties are found in few tries.
 */
function irreducible(
  group: Group,
  base: readonly Tie[],
  search: { suspects: readonly Tie[]; baseGrew: boolean },
): readonly Tie[] {
  const { suspects, baseGrew } = search;
  if (baseGrew && !canHold(group, base)) return [];
  if (suspects.length <= 1) return suspects;
  const half = Math.ceil(suspects.length / 2);
  const early = suspects.slice(0, half);
  const late = suspects.slice(half);
  const fromLate = irreducible(group, [...base, ...early], { suspects: late, baseGrew: early.length > 0 });
  const fromEarly = irreducible(group, [...base, ...fromLate], { suspects: early, baseGrew: fromLate.length > 0 });
  return [...fromEarly, ...fromLate];
}

/** Sets of `size` ties that hang together by bodies that move, each once, in the order of the list. */
function* linked(group: Group, ties: readonly Tie[], size: number): Generator<readonly Tie[]> {
  const free = new Set(group.free.map(({ id }) => id));
  const near = (a: Tie, b: Tie) => a.bodies.some((id) => free.has(id) && b.bodies.includes(id));
  const neighbours = ties.map((a, i) => ties.flatMap((b, j) => (i !== j && near(a, b) ? [j] : [])));
  const seen = new Set<string>();
  function* grown(set: readonly number[]): Generator<readonly Tie[]> {
    const key = [...set].sort((a, b) => a - b).join(' ');
    if (seen.has(key)) return;
    seen.add(key);
    if (set.length === size) {
      yield set.map((i) => ties[i] as Tie);
      return;
    }
    for (const i of new Set(set.flatMap((each) => neighbours[each] ?? [])))
      if (!set.includes(i)) yield* grown([...set, i]);
  }
  for (let i = 0; i < ties.length; i++) yield* grown([i]);
}

/** The smallest set that cannot hold: what halving finds, unless a smaller one is found by trying the small ones out. */
function smallest(group: Group, suspects: readonly Tie[]): readonly Tie[] {
  const found = irreducible(group, [], { suspects, baseGrew: false });
  let tries = 0;
  for (let size = 1; size < found.length && size <= SMALLEST; size++) {
    for (const set of linked(group, suspects, size)) {
      if (cannotHold(group, set)) return set;
      if (++tries === MOST_TRIES) return found;
    }
  }
  return found;
}

/**
 * Sets of ties that cannot hold together and share no tie, each as small as could be found and such that it can hold when
 * any one is dropped; empty when all can hold, or when the search for an answer ran out before it had come to rest.
 */
export function culprits(group: Group): readonly Some<string>[] {
  const before = known.get(group);
  if (before !== undefined) return before;
  const sets = searched(group);
  known.set(group, sets);
  return sets;
}

const known = new WeakMap<Group, readonly Some<string>[]>();

/** Whether a search has found that the group's ties cannot all hold. */
export function isKnownToClash(group: Group): boolean {
  return (known.get(group)?.length ?? 0) > 0;
}

function searched(group: Group): readonly Some<string>[] {
  if (!cannotHold(group, group.ties)) return [];
  const sets: Some<string>[] = [];
  let suspects = group.ties;
  while (sets.length < MOST_SETS && !canHold(group, suspects)) {
    const found = smallest(group, suspects);
    const [first, ...rest] = found.map((tie) => tie.id);
    if (first === undefined) break;
    sets.push([first, ...rest]);
    suspects = suspects.filter((tie) => !found.includes(tie));
  }
  return sets;
}
