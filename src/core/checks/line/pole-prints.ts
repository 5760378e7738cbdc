import { obstacleOf } from '../../course/ids.ts';
import { PRINT_WORDS } from '../../ride/hoof-print.ts';
import type { PrintNote } from '../../ride/print-notes.ts';
import type { Survey } from '../../survey.ts';
import { printNotesOf } from '../../survey-prints.ts';
import { andList, capitalized } from '../../text/sentence.ts';
import type { Check, Limits, Proposal, RawFinding } from '../check.ts';
import { piecesWords, pieceWords } from '../findings/thing-words.ts';
import { widerProposals } from '../findings/wider-proposals.ts';
import { sweepsOf } from '../geometry/sweep.ts';
import { gapProposals } from '../spacing/gap-band.ts';
import { lineCrosses } from './line-crosses.ts';

const FEET = { LH: 'left hind foot', LF: 'left fore foot', RH: 'right hind foot', RF: 'right fore foot' } as const;

/** A pole that is hit in less than every second go is a matter of the horse and the rider. */
const LIKELY = 0.5;

const idOf = ({ key, print }: PrintNote): string => `pole-prints:${key}:${print.gait}`;
const percent = ({ likelihood }: PrintNote): number => Math.round(likelihood * 100);

/**
 * Obstacles in which a horse that places its feet well backs and turns clear of every pole: prints along the line, which a
 * rider improves on there, are no fault of the obstacle.
 */
function passable(survey: Survey): ReadonlySet<string> {
  const sweeps = sweepsOf(survey);
  const tight = new Set(sweeps.filter(({ clear }) => clear < 0).map(({ obstacle }) => obstacle));
  return new Set(sweeps.map(({ obstacle }) => obstacle).filter((id) => !tight.has(id)));
}

const isSteered = ({ print: { gait } }: PrintNote): boolean => gait === 'back' || gait === 'turn' || gait === 'halt';

/** The prints that likely meet a pole, by the obstacle that is being ridden, the likeliest first. */
function metByObstacle(survey: Survey, limits: Limits): ReadonlyMap<string, readonly PrintNote[]> {
  const { legs } = survey.layout.ride;
  // A pole of another obstacle that lies in the way has a finding of its own.
  const inTheWay = new Set(lineCrosses.findings(survey, limits).flatMap(({ keys }) => keys));
  const clear = passable(survey);
  const met = new Map<string, PrintNote[]>();
  for (const note of printNotesOf(survey)) {
    const obstacle = legs[note.print.leg]?.obstacle;
    if (obstacle === undefined || note.kind !== 'meets' || note.likelihood <= LIKELY) continue;
    if (obstacleOf(note.key) !== obstacle && inTheWay.has(note.key)) continue;
    if (isSteered(note) && clear.has(obstacle)) continue;
    met.set(obstacle, [...(met.get(obstacle) ?? []), note]);
  }
  return new Map([...met].map(([id, notes]) => [id, notes.toSorted((a, b) => b.likelihood - a.likelihood)]));
}

/** Another gap where a hoof goes over a pole; more room where it backs or turns beside one. */
function proposalsFor(survey: Survey, obstacle: string, notes: readonly PrintNote[]): readonly Proposal[] {
  const gaps = survey.line.gaps.filter(({ keys, leg }) =>
    notes.some(({ key, print }) => print.leg === leg && keys[1] === key),
  );
  const spaced = gaps.flatMap((gap) =>
    gapProposals(
      survey,
      gap,
      gap.landings.nearest.map((value) => ({ value, idea: `landings ${value}` })),
    ),
  );
  const deepest = Math.max(...notes.map(({ clear }) => -clear));
  return [...spaced, ...widerProposals(survey, obstacle, deepest)];
}

function says(survey: Survey, notes: readonly [PrintNote, ...PrintNote[]]): string {
  const [first] = notes;
  const between = 'hooves should come down between poles';
  if (new Set(notes.map(idOf)).size === 1) {
    return `${capitalized(pieceWords(survey, first.key))} is where a ${FEET[first.print.foot]} comes down ${PRINT_WORDS[first.print.gait]}, in about ${percent(first)} of 100 goes; ${between}.`;
  }
  const poles = piecesWords(survey, [...new Set(notes.map(({ key }) => key))]);
  const ways = andList([...new Set(notes.map(({ print }) => PRINT_WORDS[print.gait]))]);
  return `Hooves come down ${notes.length} times on ${poles}, ${ways}, the likeliest in about ${percent(first)} of 100 goes; ${between}.`;
}

function polePrintsFinding(survey: Survey, obstacle: string, notes: readonly PrintNote[]): readonly RawFinding[] {
  const [first, ...others] = notes;
  if (first === undefined) return [];
  const ids = [...new Set(notes.map(idOf))];
  return [
    {
      ...(ids.length === 1 ? { id: idOf(first) } : { id: `pole-prints:${obstacle}`, members: ids }),
      check: 'pole-prints',
      weight: 'note',
      says: says(survey, [first, ...others]),
      because: polePrints.because,
      at: first.print.point,
      places: notes.map(({ print }) => print.point),
      leg: first.print.leg,
      keys: [obstacle, ...new Set(notes.map(({ key }) => key))],
      measured: first.clear,
      source: 'the hoof prints of this horse along the line (estimate)',
      proposals: proposalsFor(survey, obstacle, notes),
    },
  ];
}

export const polePrints: Check = {
  id: 'pole-prints',
  says: 'No hoof comes down on a pole.',
  because: 'A hoof on a round pole rolls: the horse stumbles or falls.',
  weight: 'note',
  limits: [],
  runs: 'closer',
  findings: (survey, limits) =>
    [...metByObstacle(survey, limits)].flatMap(([obstacle, notes]) => polePrintsFinding(survey, obstacle, notes)),
};
