/** The hoof prints of a surveyed course. They are by themselves because a first picture needs the survey without them. */
import { memoizeByIdentity } from './memo/by-identity.ts';
import type { HoofPrint } from './ride/hoof-print.ts';
import { type PrintNote, printNotes } from './ride/print-notes.ts';
import { printsOn } from './ride/prints.ts';
import type { Survey } from './survey.ts';

/** Every hoof print of the go; worked out on first access, then cached. */
export function printsOf({ line, horse }: Survey): readonly HoofPrint[] {
  return printsOn(line, horse);
}

/** Prints that meet a pole or come within a hoof's width of one; worked out on first access, then cached. */
export const printNotesOf = memoizeByIdentity((of: Survey): readonly PrintNote[] => {
  const made = printNotes(printsOf(of), of.pieces, of.horse);
  return made;
});

/** How many of something there are, and how many of them were worked out again. */
interface NewCount {
  readonly all: number;
  readonly anew: number;
}

/** What an edit cost. */
export type Recount = Readonly<Record<'obstacles' | 'pieces' | 'ways' | 'passages' | 'gaps' | 'prints', NewCount>>;

function newCount(now: readonly object[], before: readonly object[]): NewCount {
  const known = new Set(before);
  return { all: now.length, anew: now.filter((each) => !known.has(each)).length };
}

/** Counts what the two surveys do not share. It asks both for their prints. */
export function recount(before: Survey, after: Survey): Recount {
  const count = (parts: (of: Survey) => readonly object[]): NewCount => newCount(parts(after), parts(before));
  const paths = (of: Survey, own: boolean) =>
    of.line.elements.filter(({ part }) => (part === 'obstacle') === own).map(({ path }) => path);
  return {
    obstacles: count(({ obstacles }) => obstacles),
    pieces: count(({ pieces }) => pieces),
    ways: count((of) => paths(of, false)),
    passages: count((of) => paths(of, true)),
    // Its place along the line changes with everything before it; what was measured of it does not.
    gaps: count(({ line }) => line.gaps.map(({ ends }) => ends)),
    prints: count((of) => printsOf(of).map(({ point }) => point)),
  };
}
