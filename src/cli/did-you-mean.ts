/** How many single letters must be changed, added or left out to turn one word into the other. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const kept = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(kept, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** ` Did you mean X?` for the known word that is nearest, when it is near enough to be a slip; else nothing. */
export function didYouMean(word: string, known: readonly string[]): string {
  const [best] = known
    .map((each) => ({ each, off: editDistance(word.toLowerCase(), each) }))
    .filter(({ each, off }) => off <= Math.max(1, Math.floor(each.length / 3)))
    .sort((a, b) => a.off - b.off);
  return best === undefined ? '' : ` Did you mean ${best.each}?`;
}

/** Why a word is not known, what was probably meant, and what there is. */
export function unknownWord(what: string, word: string, known: readonly string[]): string {
  return `There is no ${what} "${word}".${didYouMean(word, known)} There are: ${known.join(', ')}.`;
}
