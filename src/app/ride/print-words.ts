import { pieceWords } from '../../core/checks/findings/thing-words.ts';
import type { Foot } from '../../core/ride/footfall.ts';
import type { PrintNote } from '../../core/ride/print-notes.ts';
import type { Survey } from '../../core/survey.ts';
import { rideWords } from '../../words/ride.ts';
import { terms } from '../../words/terms.ts';

const FOOT_WORDS: Readonly<Record<Foot, string>> = {
  LF: terms.leftFore,
  RF: terms.rightFore,
  LH: terms.leftHind,
  RH: terms.rightHind,
};

/** How often, as a person says it: from the top, the first that the likelihood reaches. */
const OFTEN: readonly (readonly [number, string])[] = [
  [0.95, rideWords.nearlyEveryGo],
  [0.7, rideWords.inMostGoes],
  [0.4, rideWords.aboutEveryOtherGo],
  [0.2, rideWords.aboutOneGoFour],
  [0.07, rideWords.aboutOneGoTen],
  [0.01, rideWords.fewGoesHundred],
];

export function likelihoodWords(likelihood: number): string {
  return OFTEN.find(([least]) => likelihood >= least)?.[1] ?? rideWords.hardlyEver;
}

/** For a plate in the arena: "left fore on it in most goes". */
export function plateWords({ print, likelihood }: PrintNote): string {
  return rideWords.footOnPole(FOOT_WORDS[print.foot], likelihoodWords(likelihood));
}

/** "Pole 2 of the fan (obstacle 3): the left fore comes down on it in most goes." */
export function noteSentence(survey: Survey, note: PrintNote): string {
  const where = pieceWords(survey, note.key);
  const foot = FOOT_WORDS[note.print.foot];
  const sentence = note.kind === 'meets' ? rideWords.comesDownOn : rideWords.comesDownBeside;
  return sentence(foot, where, likelihoodWords(note.likelihood));
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
