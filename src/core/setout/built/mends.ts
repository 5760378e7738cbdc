import { piecesWords } from '../../checks/findings/thing-words.ts';
import type { Course } from '../../course/course.ts';
import { pinnedPieces } from '../../course/resolved-constraints.ts';
import { printLength } from '../../measure/length.ts';
import { FOOT, INCH, type LengthUnit, type Metres } from '../../measure/quantity.ts';
import { type Survey, survey } from '../../survey.ts';
import { andList, capitalized } from '../../text/sentence.ts';
import { isSmall, placeOn } from '../observables.ts';
import { TAPE_STEP } from '../plan/rounded-build.ts';
import { pieceNamed } from './adjust-equations.ts';
import { type AsBuiltGap, outsideBand } from './as-built-gaps.ts';
import { type MendRow, mendRows, rowSlopes, separateRows } from './mends-rows.ts';
import {
  type BandRow,
  type MoveChoice,
  type MoveLimits,
  type MoveSet,
  movesOfSize,
  nearestMoves,
  searchSize,
  stepwiseMoves,
} from './mends-search.ts';
import { type MendTrial, posesAfter, triedMoves } from './mends-trial.ts';
import { type MoveNames, moveSentence, type PoleMove } from './mends-words.ts';

/** A move of a pole, as a person is told it. */
export interface Mend extends PoleMove {
  readonly says: string;
}

/** Poles whose gaps cannot be brought into their bands together. */
export interface Unreached {
  readonly keys: readonly string[];
  readonly why: string;
  /** What brings them nearest; empty: nothing does. */
  readonly nearest: readonly Mend[];
}

/** What brings every gap into its band. */
export interface Mends {
  /** In the order in which they are made; none where all gaps are in their bands, or none can be brought there. */
  readonly moves: readonly Mend[];
  /** No fewer moves would do; false where there were too many poles to try all. */
  readonly isFewest: boolean;
  /** After them, as measured on a copy. */
  readonly survey: Survey;
  readonly unreached: readonly Unreached[];
}

export interface MendOptions {
  /** Keys of the pieces that are moved only where nothing else helps. */
  readonly held?: readonly string[];
  /** Keys of the pieces that may be moved; absent: all. */
  readonly movable?: ReadonlySet<string>;
  readonly letters?: MoveNames['letters'];
}

/** Moves are told to the half inch, or to the centimetre. */
const STEP: Readonly<Record<LengthUnit, Metres>> = { ft: INCH / 2, m: 0.01 };
/** Nothing lies nearer to an edge than the readings tell where it lies, metres. */
const EDGE: Metres = 0.001;
/** A pole that has to go further is laid anew. Estimate. */
const FURTHEST: Metres = 3 * FOOT;
/** A crew that would have to move more than this lays the obstacle anew. Estimate. */
const MOST_MOVES = 4;
/** So many sets of one size are tried on copies, the least travel first: each costs a survey with its checks. */
const MOST_TRIALS = 6;
/** A search that would try more corners than this is not begun. */
const MOST_CORNERS = 2_000_000;

type Choice = Omit<PoleMove, 'by'> & MoveChoice;

/** The whole of each pole and each of its ends, with how far it lies off the drawing across the pole. */
function choicesOf(keys: readonly string[], planned: Survey, built: Survey): readonly Choice[] {
  return keys.flatMap((key): readonly Choice[] => {
    const [drawn, lying] = [pieceNamed(planned, key), pieceNamed(built, key)];
    const { angle } = lying.pose;
    const [a, b] = [0, 1].map((at) => {
      const [from, to] = [placeOn(drawn, at), placeOn(lying, at)];
      return Math.cos(angle) * (to.y - from.y) - Math.sin(angle) * (to.x - from.x);
    }) as [number, number];
    return [
      { key, piece: key, ends: 2, off: (a + b) / 2 },
      { key, piece: key, ends: 1, end: 0, off: a },
      { key, piece: key, ends: 1, end: 1, off: b },
    ];
  });
}

const poleMove = ({ key, end }: Choice, by: Metres): PoleMove => ({ key, by, ...(end === undefined ? {} : { end }) });

/** What is known of rows that share poles, and what may be moved. */
interface Question {
  readonly built: Survey;
  readonly rows: readonly MendRow[];
  readonly bands: readonly BandRow[];
  readonly choices: readonly Choice[];
}

function movesFor({ choices }: Question, { moves }: MoveSet): readonly PoleMove[] {
  return moves.map(({ choice, by }) => poleMove(choices[choice] as Choice, by));
}

/** The rows as the trial found them, led back to no move: what follows from them is right near the trial. */
function bandsNear({ bands }: Question, { values }: MendTrial, { moves }: MoveSet): readonly BandRow[] {
  return bands.map((row, i) => {
    const told = moves.reduce((sum, { choice, by }) => sum + (row.slopes[choice] as number) * by, row.value);
    return { ...row, value: row.value + (values[i] ?? told) - told };
  });
}

interface Tried {
  readonly moves: readonly PoleMove[];
  readonly trial: MendTrial;
}

/** The moves of one set tried on a copy; where the ground is more bent than the slopes say, once more from there. */
function tried(question: Question, set: MoveSet, limits: MoveLimits): Tried {
  const moves = movesFor(question, set);
  const trial = triedMoves(question.built, question.rows, moves);
  if (trial.isInside) return { moves, trial };
  const own = set.moves.map(({ choice }) => choice);
  const rows = bandsNear(question, trial, set).map((row) => ({
    ...row,
    slopes: own.map((choice) => row.slopes[choice] as number),
  }));
  const choices = own.map((choice) => question.choices[choice] as Choice);
  const [again] = movesOfSize(rows, choices, own.length, limits);
  if (again === undefined) return { moves, trial };
  const next = movesFor({ ...question, choices }, again);
  return { moves: next, trial: triedMoves(question.built, question.rows, next) };
}

type Answer =
  | { readonly moves: readonly PoleMove[]; readonly course: Course; readonly isFewest: boolean }
  | { readonly fault?: string };

/**
 * The fewest moves, and of these the smallest, that bring all rows in and that the checks have nothing against. Where there are
 * too many poles to try all, moves that are found step by step.
 */
function fewestMoves(question: Question, step: Metres): Answer {
  const slack = TAPE_STEP[question.built.course.unit];
  let fault: string | undefined;
  const accepted = (set: MoveSet, limits: MoveLimits, isFewest: boolean): Answer | undefined => {
    const { moves, trial } = tried(question, set, limits);
    fault ??= trial.fault?.says;
    return trial.isInside && trial.fault === undefined ? { moves, course: trial.course, isFewest } : undefined;
  };
  for (let size = 1; size <= MOST_MOVES; size += 1) {
    if (searchSize(question.choices.length, question.rows.length, size) > MOST_CORNERS) break;
    // To the edge of the bands, and as far beyond it as no tape shows where that saves a move.
    for (const margin of [-EDGE, -slack]) {
      const limits = { step, margin, slack, most: FURTHEST };
      const sets = movesOfSize(question.bands, question.choices, size, limits);
      for (const set of sets.slice(0, MOST_TRIALS)) {
        const found = accepted(set, limits, true);
        if (found !== undefined) return found;
      }
    }
  }
  const limits = { step, margin: -slack, slack, most: FURTHEST };
  const stepwise = stepwiseMoves(question.bands, question.choices, limits);
  const found = stepwise === undefined ? undefined : accepted(stepwise, limits, false);
  return found ?? (fault === undefined ? {} : { fault });
}

function questionOf(planned: Survey, built: Survey, rows: readonly MendRow[], keys: readonly string[]): Question {
  const measurable = rows.flatMap((row) => {
    const value = row.measured(built);
    return value === undefined ? [] : [{ row, value }];
  });
  const choices = choicesOf(keys, planned, built);
  const own = measurable.map(({ row }) => row);
  const ends = choices.filter(({ end }) => end !== undefined);
  const byEnd = rowSlopes(
    built.course,
    own,
    ends.map((choice) => (by: Metres) => posesAfter(built, [poleMove(choice, by)])),
  );
  // To move the whole of a pole is to move both of its ends.
  const slopes = byEnd.map((row) =>
    choices.map(({ key, end }) =>
      ends.reduce(
        (sum, each, i) => (each.key === key && (end ?? each.end) === each.end ? sum + (row[i] as number) : sum),
        0,
      ),
    ),
  );
  const bands = measurable.map(({ row: { band }, value }, i): BandRow => {
    return { value, least: band.least, most: band.most, slopes: slopes[i] as readonly number[] };
  });
  return { built, rows: own, bands, choices };
}

/** "the gap between poles 1 and 2 of the fan is 3' 8" and should be 3' to 3' 6"". */
function rowWords(built: Survey, { keys, what, band: { least, most } }: MendRow, value: Metres): string {
  const { unit } = built.course;
  const print = (length: Metres): string => printLength(length, unit);
  const poles = piecesWords(built, keys);
  if (what === 'evenness') {
    return `the two ends of the gap between ${poles} differ by ${print(Math.abs(value))} and may differ by ${print(most)}`;
  }
  return `the gap between ${poles} is ${print(value)} and should be ${print(least)} to ${print(most)}`;
}

function outsideRows(built: Survey, rows: readonly MendRow[]): readonly MendRow[] {
  return rows.filter((row) => outsideBand(row.band, row.measured(built) ?? row.band.least, built.course.unit) > 0);
}

function unreached(question: Question, names: MoveNames, fault: string | undefined, step: Metres): Unreached {
  const { built, rows } = question;
  const nearest = nearestMoves(question.bands, question.choices, 2, { step, most: FURTHEST });
  const moves = nearest === undefined ? [] : movesFor(question, nearest);
  const after = moves.length === 0 ? built : survey(triedMoves(built, rows, moves).course);
  const words = (of: Survey): string =>
    andList(outsideRows(of, rows).map((row) => rowWords(of, row, row.measured(of) ?? 0)));
  const left = words(after);
  const reason =
    fault === undefined
      ? 'No moves that were tried bring these into their bands together'
      : `What brings these into their bands causes another fault (${fault.replace(/\.$/, '')})`;
  const then = moves.length === 0 || left === '' ? '' : ` After what comes nearest, ${left}.`;
  return {
    keys: [...new Set(rows.flatMap(({ keys }) => keys))],
    why: `${reason}: ${words(built)}.${then}`,
    nearest: moves.map((move) => ({ ...move, says: moveSentence(built, move, names) })),
  };
}

function neighboursOf(rows: readonly MendRow[]): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, Set<string>>();
  for (const { keys } of rows) {
    for (const [own, other] of [keys, [keys[1], keys[0]] as const]) {
      found.set(own, (found.get(own) ?? new Set()).add(other));
    }
  }
  return new Map([...found].map(([key, others]) => [key, [...others]]));
}

/**
 * The fewest moves of ends and poles that bring every gap as built into its band, and of these the smallest, in half inches or
 * centimetres. Gaps change in proportion to small moves, so that the least is at a corner of the bands; what is found is tried
 * on a copy, and offered only where the survey measures all gaps inside and the checks find no new must or should. A piece
 * that is held, or fixed in the course, is moved only where nothing else helps.
 */
export function mendsOf(
  planned: Survey,
  built: Survey,
  gaps: readonly AsBuiltGap[],
  { held = [], letters, movable }: MendOptions = {},
): Mends {
  const step = STEP[built.course.unit];
  const pinned = pinnedPieces(planned.layout);
  const isHeld = (key: string): boolean => held.includes(key) || pinned.has(key);
  const rows = mendRows(planned, gaps);
  const names: MoveNames = { neighbours: neighboursOf(rows), ...(letters === undefined ? {} : { letters }) };
  const moves: Mend[] = [];
  const open: Unreached[] = [];
  let isFewest = true;
  let now = built;
  for (const own of separateRows(rows)) {
    if (outsideRows(now, own).length === 0) continue;
    const keys = [...new Set(own.flatMap((row) => row.keys))].filter(
      (key) => !isSmall(pieceNamed(now, key)) && movable?.has(key) !== false,
    );
    const all = questionOf(planned, now, own, keys);
    const isLoose = all.choices.map(({ key }) => !isHeld(key));
    const loose: Question = {
      ...all,
      choices: all.choices.filter((_, i) => isLoose[i]),
      bands: all.bands.map((row) => ({ ...row, slopes: row.slopes.filter((_, i) => isLoose[i]) })),
    };
    const first = fewestMoves(loose, step);
    const answer = 'course' in first || loose.choices.length === all.choices.length ? first : fewestMoves(all, step);
    if (!('course' in answer)) {
      open.push(unreached(all, names, answer.fault ?? ('course' in first ? undefined : first.fault), step));
      continue;
    }
    for (const move of answer.moves) moves.push({ ...move, says: capitalized(moveSentence(now, move, names)) });
    now = survey(answer.course);
    isFewest &&= answer.isFewest;
  }
  return { moves, isFewest, survey: now, unreached: open };
}
