import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wordChanges } from '../../../src/core/text/word-changes.ts';

function joined(runs: ReturnType<typeof wordChanges>, kinds: readonly string[]): string {
  return runs.flatMap(({ kind, text }) => (kinds.includes(kind) ? [text] : [])).join(' ');
}

describe('how a sentence has changed', () => {
  test('a word that is another, one that is gone and one that has come', () => {
    expect(wordChanges('Jog to and over the poles.', 'Lope on the left lead to and over the poles.')).toEqual([
      { kind: 'gone', text: 'Jog' },
      { kind: 'new', text: 'Lope on the left lead' },
      { kind: 'same', text: 'to and over the poles.' },
    ]);
    expect(wordChanges('Walk to the gate, stop, and work it.', 'Walk to the gate, and work it.')).toEqual([
      { kind: 'same', text: 'Walk to the gate,' },
      { kind: 'gone', text: 'stop,' },
      { kind: 'same', text: 'and work it.' },
    ]);
  });

  test('equal texts, and nothing', () => {
    expect(wordChanges('Walk.', 'Walk.')).toEqual([{ kind: 'same', text: 'Walk.' }]);
    expect(wordChanges('', 'Walk.')).toEqual([{ kind: 'new', text: 'Walk.' }]);
    expect(wordChanges('', '')).toEqual([]);
  });

  test('without what has come it is the text before, without what is gone the text after', () => {
    const sentence = fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 12 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(sentence, sentence, (before, after) => {
        const runs = wordChanges(before, after);
        expect(joined(runs, ['same', 'gone'])).toBe(before);
        expect(joined(runs, ['same', 'new'])).toBe(after);
      }),
    );
  });
});
