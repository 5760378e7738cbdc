/** Words of a text and of another: in both, only in the first, or only in the second. */
export interface WordRun {
  readonly kind: 'same' | 'gone' | 'new';
  readonly text: string;
}

/**
 * How one text becomes another, word by word, by their longest common subsequence. What goes stands before what comes. Texts of
 * a thousand words take a million steps: it is for sentences.
 */
export function wordChanges(before: string, after: string): readonly WordRun[] {
  const [a, b] = [wordsOf(before), wordsOf(after)];
  const common = commonLengths(a, b);
  const runs: { kind: WordRun['kind']; words: string[] }[] = [];
  const put = (kind: WordRun['kind'], word: string) => {
    const last = runs.at(-1);
    if (last?.kind === kind) last.words.push(word);
    else runs.push({ kind, words: [word] });
  };
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const [mine, its] = [a[i], b[j]];
    if (mine !== undefined && mine === its) {
      put('same', mine);
      [i, j] = [i + 1, j + 1];
    } else if (mine !== undefined && (its === undefined || at(common, i + 1, j) >= at(common, i, j + 1))) {
      put('gone', mine);
      i += 1;
    } else if (its !== undefined) {
      put('new', its);
      j += 1;
    }
  }
  return runs.map(({ kind, words }) => ({ kind, text: words.join(' ') }));
}

function wordsOf(text: string): readonly string[] {
  return text.split(/\s+/).filter((word) => word !== '');
}

/** For each pair of places, the length of the longest common subsequence of what follows them. */
function commonLengths(a: readonly string[], b: readonly string[]): readonly (readonly number[])[] {
  const rows = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  for (let i = a.length - 1; i >= 0; i -= 1) {
    const row = rows[i] ?? [];
    for (let j = b.length - 1; j >= 0; j -= 1) {
      row[j] = a[i] === b[j] ? at(rows, i + 1, j + 1) + 1 : Math.max(at(rows, i + 1, j), at(rows, i, j + 1));
    }
  }
  return rows;
}

function at(rows: readonly (readonly number[])[], i: number, j: number): number {
  return rows[i]?.[j] ?? 0;
}
