import { describe, expect, test } from 'vitest';
import { createCrewNotes, doneOf, notesOfPart } from '../../../src/app/setout/notes.ts';
import { readSetOutNotes, SET_OUT_KEY, writeSetOutNotes } from '../../../src/storage/set-out-notes.ts';

/** A browser's store that can be full. */
function store(kept: Record<string, string> = {}, isFull = false) {
  return () => ({
    getItem: (key: string) => kept[key] ?? null,
    setItem(key: string, text: string) {
      if (isFull) throw new Error('QuotaExceededError');
      kept[key] = text;
    },
  });
}

function shelf(storage = store()) {
  return {
    read: (of: string) => readSetOutNotes(of, storage),
    write: (of: string, notes: Parameters<typeof writeSetOutNotes>[1]) => writeSetOutNotes(of, notes, storage),
  };
}

describe('the notes of a crew', () => {
  test('are found again: ticks, readings and the place', () => {
    const kept = shelf();
    const notes = createCrewNotes('slot', 'layout-1', kept);
    notes.toggle('part', 'a');
    notes.toggle('part', 'b');
    notes.toggle('part', 'a');
    notes.type('part', 'b', `3' 1"`);
    notes.goTo('b');
    const again = createCrewNotes('slot', 'layout-1', kept).state();
    expect(again).toEqual({ parts: { part: { ticks: ['b'], readings: { b: `3' 1"` } } }, at: 'b' });
    expect(doneOf({ print: 'part', acts: [{ id: 'a' }, { id: 'b' }] as never }, again)).toBe(1);
  });

  test('of another layout, another course or another plan of a part are others', () => {
    const kept = shelf();
    createCrewNotes('slot', 'layout-1', kept).toggle('part', 'a');
    expect(createCrewNotes('slot', 'layout-2', kept).state().parts).toEqual({});
    expect(createCrewNotes('other', 'layout-1', kept).state().parts).toEqual({});
    expect(notesOfPart(createCrewNotes('slot', 'layout-1', kept).state(), 'changed').ticks).toEqual([]);
  });

  test('a reading that is emptied is gone, and clearing forgets everything', () => {
    const kept = shelf();
    const notes = createCrewNotes('slot', 'layout-1', kept);
    notes.type('part', 'a', '3');
    notes.type('part', 'a', ' ');
    expect(notesOfPart(notes.state(), 'part').readings).toEqual({});
    notes.goTo('a');
    notes.clear();
    expect(createCrewNotes('slot', 'layout-1', kept).state()).toEqual({ parts: {} });
  });

  test('hold until the page is left where the browser stores nothing', () => {
    const notes = createCrewNotes('slot', 'layout-1', shelf(store({}, true)));
    expect(notes.isKept()).toBe(true);
    notes.toggle('part', 'a');
    expect(notesOfPart(notes.state(), 'part').ticks).toEqual(['a']);
    expect(notes.isKept()).toBe(false);
  });

  test.each(['', 'no json', '{}', '[{"of":"slot/layout-1"}]', '[{"of":"slot/layout-1","notes":{"parts":{"part":7}}}]'])(
    'that cannot be read (%s) are none, and are written over',
    (text) => {
      const kept = { [SET_OUT_KEY]: text };
      const notes = createCrewNotes('slot', 'layout-1', shelf(store(kept)));
      expect(notesOfPart(notes.state(), 'part')).toEqual({ ticks: [], readings: {} });
      notes.toggle('part', 'a');
      expect(notesOfPart(createCrewNotes('slot', 'layout-1', shelf(store(kept))).state(), 'part').ticks).toEqual(['a']);
    },
  );

  test('of the layouts that were set out last are remembered, not of all', () => {
    const kept = shelf();
    for (let i = 0; i < 30; i += 1) createCrewNotes(`slot-${i}`, 'layout-1', kept).toggle('part', 'a');
    const known = Array.from({ length: 30 }, (_, i) => createCrewNotes(`slot-${i}`, 'layout-1', kept).state().parts);
    expect(known.map((parts) => Object.keys(parts).length)).toEqual([...Array(18).fill(0), ...Array(12).fill(1)]);
  });
});
