import { pieceWords } from '../../core/checks/findings/finding-words.ts';
import type { Foot } from '../../core/ride/footfall.ts';
import type { PrintNote } from '../../core/ride/print-notes.ts';
import type { Survey } from '../../core/survey.ts';

const FOOT_WORDS: Readonly<Record<Foot, string>> = {
  LF: 'left fore',
  RF: 'right fore',
  LH: 'left hind',
  RH: 'right hind',
};

/** How often, as a person says it: from the top, the first that the likelihood reaches. */
const OFTEN: readonly (readonly [number, string])[] = [
  [0.95, 'in nearly every go'],
  [0.7, 'in most goes'],
  [0.4, 'in about every other go'],
  [0.2, 'in about one go of four'],
  [0.07, 'in about one go of ten'],
  [0.01, 'in a few goes of a hundred'],
];

export function likelihoodWords(likelihood: number): string {
  return OFTEN.find(([least]) => likelihood >= least)?.[1] ?? 'hardly ever';
}

/** For a plate in the arena: "left fore on it in most goes". */
export function plateWords({ print, likelihood }: PrintNote): string {
  return `${FOOT_WORDS[print.foot]} on it ${likelihoodWords(likelihood)}`;
}

/** "Pole 2 of the fan (obstacle 3): the left fore comes down on it in most goes." */
export function noteSentence(survey: Survey, note: PrintNote): string {
  const where = pieceWords(survey, note.key);
  const foot = FOOT_WORDS[note.print.foot];
  const does = note.kind === 'meets' ? 'comes down on' : 'comes down within a hoof’s width of';
  return `The ${foot} ${does} ${where}; it meets it ${likelihoodWords(note.likelihood)}.`;
}

/** The worst note of each pole in each leg, in the order of the go. */
export function worstNotes(notes: readonly PrintNote[]): readonly PrintNote[] {
  const worst = new Map<string, PrintNote>();
  for (const note of notes) {
    const key = `${note.print.leg} ${note.key}`;
    const known = worst.get(key);
    if (known === undefined || note.likelihood > known.likelihood) worst.set(key, note);
  }
  return [...worst.values()];
}
