import { createStore } from 'zustand/vanilla';
import {
  NO_PART_NOTES,
  type PartNotes,
  readSetOutNotes,
  type SetOutNotes,
  writeSetOutNotes,
} from '../../storage/set-out-notes.ts';
import type { PartActs } from './acts.ts';

/** What a crew notes while it sets a layout out; remembered in this browser with each change. */
export interface CrewNotes {
  state(): SetOutNotes;
  subscribe(listener: () => void): () => void;
  /** Whether the browser remembers what was noted last; else it holds until the page is left. */
  isKept(): boolean;
  /** Ticks what was not ticked, and the other way round. */
  toggle(part: string, act: string): void;
  /** What the tape read, as it was typed; empty: it was not taped. */
  type(part: string, reading: string, text: string): void;
  goTo(act: string): void;
  clear(): void;
}

/** How notes are read and written under a name. */
interface Shelf {
  read(of: string): SetOutNotes;
  write(of: string, notes: SetOutNotes): boolean;
}

const BROWSER: Shelf = { read: readSetOutNotes, write: writeSetOutNotes };

/** What was noted of a part. */
export function notesOfPart({ parts }: SetOutNotes, print: string): PartNotes {
  return parts[print] ?? NO_PART_NOTES;
}

/** How many acts of a part are ticked. */
export function doneOf({ print, acts }: Pick<PartActs, 'print' | 'acts'>, notes: SetOutNotes): number {
  const { ticks } = notesOfPart(notes, print);
  return acts.filter(({ id }) => ticks.includes(id)).length;
}

/** The notes of a layout by the slot of its course and its id. */
export function createCrewNotes(slot: string, layout: string, shelf: Shelf = BROWSER): CrewNotes {
  const of = `${slot}/${layout}`;
  const store = createStore<SetOutNotes>()(() => shelf.read(of));
  let isKept = true;
  const change = (next: SetOutNotes): void => {
    isKept = shelf.write(of, next);
    // The second argument replaces the state, so that what is gone is gone.
    store.setState(next, true);
  };
  const changePart = (print: string, edit: (part: PartNotes) => PartNotes): void => {
    const { [print]: part = NO_PART_NOTES, ...others } = store.getState().parts;
    // The part noted last stands last: the first are forgotten where there are too many.
    change({ ...store.getState(), parts: { ...others, [print]: edit(part) } });
  };
  return {
    state: store.getState,
    subscribe: (listener) => store.subscribe(() => listener()),
    isKept: () => isKept,
    toggle(print, act) {
      changePart(print, (part) => {
        const { ticks } = part;
        return { ...part, ticks: ticks.includes(act) ? ticks.filter((each) => each !== act) : [...ticks, act] };
      });
    },
    type(print, reading, text) {
      changePart(print, (part) => {
        const { [reading]: _, ...readings } = part.readings;
        return { ...part, readings: text.trim() === '' ? readings : { ...readings, [reading]: text } };
      });
    },
    goTo(at) {
      change({ ...store.getState(), at });
    },
    clear() {
      change({ parts: {} });
    },
  };
}
