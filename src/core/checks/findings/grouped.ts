import { INCH } from '../../measure/quantity.ts';
import type { Proposal, RawFinding } from '../check.ts';

/** Values that are nearer than this are the values of one setting: a crew tapes no finer. Metres. */
const ALIKE = INCH / 4;

/** The ids that a finding stands for: its own, or those of all that were put together in it. */
export function idsOf({ id, members }: Pick<RawFinding, 'id' | 'members'>): readonly string[] {
  return members ?? [id];
}

/** Whether two findings are about the same fault, also where one of them was put together from several. */
export function isSameFault(a: Pick<RawFinding, 'id' | 'members'>, b: Pick<RawFinding, 'id' | 'members'>): boolean {
  const ids = idsOf(b);
  return a.id === b.id || idsOf(a).some((id) => ids.includes(id));
}

function isAlike(a: RawFinding, b: RawFinding): boolean {
  if (a.group?.id !== b.group?.id || a.weight !== b.weight) return false;
  const [one, other] = [a.group?.value, b.group?.value];
  return one === undefined || other === undefined || Math.abs(one - other) < ALIKE;
}

/** Every proposal once: what is said in the same words does the same. */
function distinctProposals(members: readonly RawFinding[]): readonly Proposal[] {
  const bySentence = new Map(members.flatMap(({ proposals }) => proposals).map((each) => [each.says, each]));
  return [...bySentence.values()];
}

function together(members: readonly [RawFinding, ...RawFinding[]], id: string): RawFinding {
  const [first] = members;
  return {
    ...first,
    id,
    says: first.group?.says(members) ?? first.says,
    keys: [...new Set(members.flatMap(({ keys }) => keys))],
    places: members.map(({ at }) => at),
    members: members.map((each) => each.id),
    proposals: distinctProposals(members),
  };
}

/**
 * The findings with those of one mistake put together: the same group and weight, and where the group has a value the
 * same value. One alone keeps its id, and so does one that was waived by itself: old waivers go on matching.
 */
export function groupedFindings(
  found: readonly RawFinding[],
  isWaived: (id: string) => boolean,
): readonly RawFinding[] {
  const groups: [RawFinding, ...RawFinding[]][] = [];
  for (const each of found) {
    const isAlone = each.group === undefined || isWaived(each.id);
    const known = isAlone ? undefined : groups.find(([first]) => !isWaived(first.id) && isAlike(first, each));
    if (known === undefined) groups.push([each]);
    else known.push(each);
  }
  const taken = new Map<string, number>();
  return groups.map((members) => {
    const [first] = members;
    if (members.length === 1) return first;
    const id = first.group?.id ?? first.id;
    const count = (taken.get(id) ?? 0) + 1;
    taken.set(id, count);
    return together(members, count === 1 ? id : `${id}:${count}`);
  });
}
