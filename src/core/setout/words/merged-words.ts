import { andList } from '../../text/sentence.ts';

/** The ends that a sentence names: "end A", "ends A and C". */
const ENDS = /\bends? ([A-Z]+)(?: and ([A-Z]+))?(?=[ ,.:)]|$)/g;

interface Split {
  readonly before: string;
  readonly letters: readonly string[];
  readonly after: string;
}

/** A sentence about the rest of its ends; undefined where it names ends at no place, or at several. */
function splitAtEnds(sentence: string): Split | undefined {
  const [found, ...more] = [...sentence.matchAll(ENDS)];
  if (found === undefined || more.length > 0) return undefined;
  const letters = found.slice(1).filter((each) => each !== undefined);
  return {
    before: sentence.slice(0, found.index),
    letters,
    after: sentence.slice(found.index + found[0].length),
  };
}

function joined(group: readonly Split[]): string {
  const [first] = group;
  if (first === undefined) return '';
  const { before, after } = first;
  if (group.length === 1)
    return `${before}${first.letters.length === 1 ? 'end' : 'ends'} ${andList(first.letters)}${after}`;
  const ends =
    first.letters.length === 1
      ? `ends ${andList(group.flatMap(({ letters }) => letters))}`
      : group.map(({ letters }) => `ends ${andList(letters)}`).join(', and at ');
  return `${before}${ends}${after}`;
}

/** Whether two sentences differ only in the ends they name. Two ends at once are joined only after "at". */
function isAlike(a: Split, b: Split): boolean {
  const isSame = a.before === b.before && a.after === b.after && a.letters.length === b.letters.length;
  return isSame && (a.letters.length === 1 || a.before.endsWith('at '));
}

/**
 * Sentences that differ only in the ends they name, told as one: "… to ends A and B", "… at ends A and C, and at ends B
 * and D". Only neighbours are joined, so the order stays.
 */
export function mergedSentences(sentences: readonly string[]): readonly string[] {
  const merged: string[] = [];
  let open: readonly Split[] = [];
  for (const sentence of sentences) {
    const split = splitAtEnds(sentence);
    const [first] = open;
    const goesOn = split !== undefined && first !== undefined && isAlike(first, split);
    if (!goesOn && first !== undefined) merged.push(joined(open));
    if (split === undefined) merged.push(sentence);
    open = split === undefined ? [] : goesOn ? [...open, split] : [split];
  }
  return open.length > 0 ? [...merged, joined(open)] : merged;
}
