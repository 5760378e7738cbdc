import { pinnedPieces } from '../../course/resolved-constraints.ts';
import { INCH, type Metres, type Radians } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import type { Survey } from '../../survey.ts';
import { observedOn } from '../ground.ts';
import type { Observable, PieceError } from '../setout.ts';
import {
  drawnEquation,
  grippedPieces,
  groundOf,
  observableGradient,
  observableUnknowns,
  pieceNamed,
  posesOf,
  readingEquation,
  touchesWall,
} from './adjust-equations.ts';
import { relativeError } from './adjust-error.ts';
import { leastSquares, type ObservationEquation, varianceOf } from './adjust-least-squares.ts';
import { criticalW } from './adjust-quantile.ts';
import { apartBy, CONTROLLED, leftOut, type SnoopedSquares, snoopedSquares, standingOf } from './adjust-snooping.ts';

/** What a tape read between things that lie. */
export interface GroundReading extends Observable {
  /** Metres, or radians for an angle. */
  readonly read: number;
  /** Its standard error, in the same unit. */
  readonly sigma: number;
}

/**
 * `agrees`: with the others. `wrong`: likely so, and nothing was worked out from it. `undecided`: one of several, of which
 * one is likely wrong. `not-controlled`: no other reading would show an error in it.
 */
export type ReadingStanding = 'agrees' | 'wrong' | 'undecided' | 'not-controlled';

/** How a reading stands to all others. */
export interface AdjustedReading {
  readonly reading: GroundReading;
  readonly standing: ReadingStanding;
  /** What it would read where everything lies by the adjustment. */
  readonly adjusted: number;
  /** Adjusted less read. */
  readonly residual: number;
  /** The share of an error in it that shows, 0 … 1; of one that is left out 1. */
  readonly redundancy: number;
  /** Baarda's w. */
  readonly w: number;
  /** What the other readings make of it. */
  readonly expected: number;
}

/** Where a piece lies by the readings. */
export interface AdjustedPiece {
  readonly key: string;
  readonly plan: Pose;
  readonly pose: Pose;
  /** Relative to the held piece of its group; on the ground where readings tie the group to the walls. */
  readonly error: PieceError;
}

/** Pieces that readings connect, worked out together. */
export interface AdjustedGroup {
  /** Keys; the first is held: the others are told relative to it. */
  readonly pieces: readonly [string, ...string[]];
  /** Readings go to the walls, which then say where the held piece lies; else it lies as drawn. */
  readonly isTiedToWalls: boolean;
  /** Places of its readings in the list. */
  readonly readings: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Weighted sum of squared residuals, and how many readings there are beyond those that determine the pieces. */
  readonly sum: number;
  readonly redundancy: number;
}

/** Where the pieces lie by readings of a tape, and how the readings stand to each other. */
export interface Adjustment {
  /** By key: every piece that a reading touches. */
  readonly pieces: ReadonlyMap<string, AdjustedPiece>;
  readonly groups: readonly AdjustedGroup[];
  /** In the order in which they were given. */
  readonly readings: readonly AdjustedReading[];
  /** Places of the readings that are likely wrong, in the order in which they were found. */
  readonly wrong: readonly number[];
  /**
   * Sets of places: in each, one reading is likely wrong, and the others do not tell which. The first is likeliest by the
   * drawing; nothing was worked out from it.
   */
  readonly undecided: readonly (readonly number[])[];
  /** The |w| above which a reading is suspected. */
  readonly critical: number;
}

export interface AdjustOptions {
  /** Keys of pieces that are held where a group has one of them; absent: the fixed piece, else the first of the layout. */
  readonly held?: readonly string[];
  /** The chance that some reading is suspected where all are good; absent: 0.05. */
  readonly level?: number;
}

const USUAL_LEVEL = 0.05;

/** How far a piece may lie from its place on the drawing, before anything is read: wide, so that readings outweigh it. Estimate. */
const WIDE: { readonly shift: Metres; readonly turn: Radians } = { shift: 6 * INCH, turn: (3 * Math.PI) / 180 };
/** Whether a standard error says no more than that the readings leave it open, and the drawing was taken. */
export function isOpen(sigma: Metres): boolean {
  return sigma > WIDE.shift / 2;
}

/** The held piece of a group that no reading ties to the walls lies as drawn. */
const TIGHT: typeof WIDE = { shift: 1e-4, turn: 1e-5 };

function groupsOf(survey: Survey, readings: readonly GroundReading[], held: readonly string[]) {
  const groups: { pieces: Set<string>; readings: number[] }[] = [];
  for (const [i, reading] of readings.entries()) {
    const keys = grippedPieces(reading);
    const met = groups.filter(({ pieces }) => keys.some((key) => pieces.has(key)));
    const [first = { pieces: new Set<string>(), readings: [] }, ...others] = met;
    if (met.length === 0) groups.push(first);
    for (const other of others) {
      for (const key of other.pieces) first.pieces.add(key);
      first.readings.push(...other.readings);
      groups.splice(groups.indexOf(other), 1);
    }
    for (const key of keys) first.pieces.add(pieceNamed(survey, key).key);
    first.readings.push(i);
  }
  const pinned = pinnedPieces(survey.layout);
  const rank = (key: string): number => (held.includes(key) ? 0 : pinned.has(key) ? 1 : 2);
  return groups.map(({ pieces, readings: own }) => {
    const ordered = survey.pieces.flatMap(({ key }) => (pieces.has(key) ? [key] : []));
    ordered.sort((a, b) => rank(a) - rank(b));
    return { pieces: ordered as [string, ...string[]], readings: own.toSorted((a, b) => a - b) };
  });
}

/** The start and the equations of one group: its readings first, then what is drawn. */
function groupEquations(
  survey: Survey,
  keys: readonly string[],
  readings: readonly GroundReading[],
): { readonly start: readonly number[]; readonly equations: readonly ObservationEquation[] } {
  const start = keys.flatMap((key) => {
    const { x, y, angle } = pieceNamed(survey, key).pose;
    return [x, y, angle];
  });
  const isTied = readings.some(touchesWall);
  const drawn = start.map((value, i) => {
    const { shift, turn } = i < 3 && !isTied ? TIGHT : WIDE;
    return drawnEquation(i, value, i % 3 === 2 ? turn : shift);
  });
  return { start, equations: [...readings.map((reading) => readingEquation(survey, keys, reading)), ...drawn] };
}

function adjustedReading(
  reading: GroundReading,
  equation: ObservationEquation,
  { snooped, place }: { readonly snooped: SnoopedSquares; readonly place: number },
): AdjustedReading {
  const isUndecided = snooped.undecided.some((set) => set.includes(place));
  if (leftOut(snooped).includes(place)) {
    const { residual, w } = standingOf(snooped, equation);
    const adjusted = reading.read + residual;
    const standing = isUndecided ? 'undecided' : 'wrong';
    return { reading, standing, adjusted, residual, redundancy: 1, w, expected: adjusted };
  }
  const { residual = 0, redundancy = 0, w = 0 } = snooped.fit.residuals[place] ?? {};
  const isControlled = redundancy >= CONTROLLED;
  const standing = isUndecided ? 'undecided' : isControlled ? 'agrees' : 'not-controlled';
  const expected = reading.read + (isControlled ? residual / redundancy : 0);
  return { reading, standing, adjusted: reading.read + residual, residual, redundancy, w, expected };
}

/**
 * Where the pieces that the readings touch lie, by least squares with the readings' weights. What the readings leave open
 * lies as drawn, as nearly as they allow. A reading that is likely wrong is left out, one at a time (data snooping); one
 * that no other reading controls is not judged. Throws where a reading grips no piece of the survey, or where its
 * standard error is not above 0.
 */
export function adjustReadings(
  survey: Survey,
  readings: readonly GroundReading[],
  { held = [], level = USUAL_LEVEL }: AdjustOptions = {},
): Adjustment {
  for (const { sigma } of readings) {
    if (!(sigma > 0)) throw new Error(`adjustReadings: a standard error must be above 0, got ${sigma}`);
  }
  const groups = groupsOf(survey, readings, held).map((group) => {
    const own = group.readings.map((i) => readings[i] as GroundReading);
    const { start, equations } = groupEquations(survey, group.pieces, own);
    const { residuals } = leastSquares(start, equations);
    const tests = own.filter((_, i) => (residuals[i]?.redundancy ?? 0) >= CONTROLLED).length;
    return { ...group, own, start, equations, tests };
  });
  const tests = groups.reduce((sum, group) => sum + group.tests, 0);
  const critical = criticalW(level, tests);
  const limits = { critical, apart: apartBy(level, tests) };
  const found = groups.map((group) => {
    const snooped = snoopedSquares(group.start, group.equations, { tested: group.own.map((_, i) => i), ...limits });
    const global = (places: readonly number[]) => places.map((i) => group.readings[i] as number);
    return { ...group, snooped, wrong: global(snooped.wrong), undecided: snooped.undecided.map(global) };
  });
  const told = new Map(
    found.flatMap(({ own, equations, readings: places, snooped }) =>
      own.map((reading, i) => {
        const equation = equations[i] as ObservationEquation;
        return [places[i] as number, adjustedReading(reading, equation, { snooped, place: i })] as const;
      }),
    ),
  );
  return {
    pieces: new Map(
      found.flatMap((group) =>
        adjustedPieces(survey, group.pieces, { ...group.snooped, isTied: group.own.some(touchesWall) }),
      ),
    ),
    groups: found.map(({ pieces, own, readings: places, snooped }): AdjustedGroup => {
      const { covariance, residuals, sum } = snooped.fit;
      const redundancy = own.reduce((total, _, i) => total + (residuals[i]?.redundancy ?? 0), 0);
      return { pieces, isTiedToWalls: own.some(touchesWall), readings: places, covariance, sum, redundancy };
    }),
    readings: readings.map((_, i) => told.get(i) as AdjustedReading),
    wrong: found.flatMap(({ wrong }) => wrong),
    undecided: found.flatMap(({ undecided }) => undecided),
    critical,
  };
}

function adjustedPieces(
  survey: Survey,
  keys: readonly [string, ...string[]],
  { fit: { values, covariance }, isTied }: Pick<SnoopedSquares, 'fit'> & { readonly isTied: boolean },
): readonly (readonly [string, AdjustedPiece])[] {
  const poses = posesOf(keys, values);
  const poseOf = (key: string) => poses.get(key) as Pose;
  return keys.map((key, i) => {
    const { pose: plan, figure } = pieceNamed(survey, key);
    const piece = { at: 3 * i, pose: poseOf(key), length: figure.length };
    const error = relativeError(covariance, piece, isTied ? undefined : { at: 0, pose: poseOf(keys[0]) });
    return [key, { key, plan, pose: poseOf(key), error }] as const;
  });
}

/**
 * What would be observed where the pieces lie by the adjustment, with its standard error; undefined where it is about a
 * piece that no reading touches, or about pieces of two groups.
 */
export function observedAsBuilt(
  survey: Survey,
  adjustment: Adjustment,
  observable: Observable,
): { readonly value: number; readonly sigma: number } | undefined {
  const keys = grippedPieces(observable);
  const group = adjustment.groups.find(({ pieces }) => keys.every((key) => pieces.includes(key)));
  if (group === undefined) return undefined;
  const poses = new Map(group.pieces.map((key) => [key, (adjustment.pieces.get(key) as AdjustedPiece).pose]));
  const there = observedOn(groundOf(survey), observable, poses);
  const variance = varianceOf(
    group.covariance,
    observableUnknowns(group.pieces, observable),
    observableGradient(survey, group.pieces, observable, there),
  );
  return { value: there.value, sigma: Math.sqrt(Math.max(0, variance)) };
}
