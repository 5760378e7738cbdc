import type { Group } from './groups.ts';
import { meet } from './meet.ts';
import { MET, type Some, type Tie } from './problem.ts';

/** More sets than this at once help nobody. */
const MOST_SETS = 4;

/** Whether some of the group's ties can be met from where its bodies are, wishes aside. */
function canHold(group: Group, ties: readonly Tie[]): boolean {
  if (ties.length === 0) return true;
  const free = group.free.map(({ wish: _, ...body }) => body);
  return meet({ ...group, free, ties }).worst <= MET;
}

/**
 * A set among `suspects` that cannot hold together with `base`, though it can when any one is dropped: the suspects are
 * halved rather than dropped one by one, so that few of many ties are found in few tries.
 */
function smallest(
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
  const fromLate = smallest(group, [...base, ...early], { suspects: late, baseGrew: early.length > 0 });
  const fromEarly = smallest(group, [...base, ...fromLate], { suspects: early, baseGrew: fromLate.length > 0 });
  return [...fromEarly, ...fromLate];
}

/**
 * Sets of ties that cannot hold together and share no tie, each as small as can be; empty when all can hold, or when the
 * search for an answer ran out before it had come to rest.
 */
export function culprits(group: Group): readonly Some<string>[] {
  const { stuck } = meet({ ...group, free: group.free.map(({ wish: _, ...body }) => body) });
  if (!stuck) return [];
  const sets: Some<string>[] = [];
  let suspects = group.ties;
  while (sets.length < MOST_SETS && !canHold(group, suspects)) {
    const found = smallest(group, [], { suspects, baseGrew: false });
    const [first, ...rest] = found.map((tie) => tie.id);
    if (first === undefined) break;
    sets.push([first, ...rest]);
    suspects = suspects.filter((tie) => !found.includes(tie));
  }
  return sets;
}
