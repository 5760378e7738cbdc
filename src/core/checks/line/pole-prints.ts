import { PRINT_WORDS } from '../../ride/hoof-print.ts';
import type { PrintNote } from '../../ride/print-notes.ts';
import { printNotesOf, type Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { pieceWords } from '../findings/finding-words.ts';
import { gapProposals } from '../spacing/gap-band.ts';

const FEET = { LH: 'left hind foot', LF: 'left fore foot', RH: 'right hind foot', RF: 'right fore foot' } as const;

/** A pole that is hit in more than every second go is already reported by the gaps. */
const LIKELY = 0.5;

function likeliestByPole(notes: readonly PrintNote[]): readonly PrintNote[] {
  const byPole = new Map<string, PrintNote>();
  for (const note of notes) {
    const known = byPole.get(note.key);
    if (known === undefined || note.likelihood > known.likelihood) byPole.set(note.key, note);
  }
  return [...byPole.values()];
}

function polePrintsFinding(survey: Survey, { key, print, clear, likelihood }: PrintNote): RawFinding {
  const gap = survey.line.gaps.find(({ keys, leg }) => leg === print.leg && keys[1] === key);
  const { nearest } = gap?.landings ?? { nearest: [] };
  const obstacle = survey.layout.ride.legs[print.leg]?.obstacle ?? '';
  return {
    id: `pole-prints:${key}:${print.gait}`,
    check: 'pole-prints',
    weight: 'note',
    says: `${capitalized(pieceWords(survey, key))} is where a ${FEET[print.foot]} comes down ${PRINT_WORDS[print.gait]}, in about ${Math.round(likelihood * 100)} of 100 goes; hooves should come down between poles.`,
    because: polePrints.because,
    at: print.point,
    leg: print.leg,
    keys: [obstacle, key],
    measured: clear,
    source: 'the hoof prints of this horse along the line (estimate)',
    proposals:
      gap === undefined
        ? []
        : gapProposals(
            survey,
            gap,
            nearest.map((value) => ({ value, idea: `landings ${value}` })),
          ),
  };
}

export const polePrints: Check = {
  id: 'pole-prints',
  says: 'No hoof comes down on a pole.',
  because: 'A hoof on a round pole rolls: the horse stumbles or falls.',
  weight: 'note',
  limits: [],
  runs: 'closer',
  findings(survey) {
    // A pole that is only in the way is reported by the check of what the line crosses.
    const crossed = new Set(survey.line.crossings.map(({ key, leg }) => `${leg} ${key}`));
    const met = printNotesOf(survey).filter(
      ({ kind, likelihood, key, print }) =>
        kind === 'meets' && likelihood > LIKELY && print.gait !== 'back' && crossed.has(`${print.leg} ${key}`),
    );
    return likeliestByPole(met).map((note) => polePrintsFinding(survey, note));
  },
};
