/** What the readings of a tape make of a layout, as plain data: it is worked out in the app's worker. */
import { findingsOf } from '../../core/checks/checks.ts';
import { piecesWords, pieceWords } from '../../core/checks/findings/thing-words.ts';
import type { Course } from '../../core/course/course.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import { distance } from '../../core/plane/point.ts';
import { type Pose, toWorld } from '../../core/plane/pose.ts';
import type { GroundReading, ReadingStanding } from '../../core/setout/built/adjust.ts';
import { asBuiltOf } from '../../core/setout/built/as-built.ts';
import { outsideBand } from '../../core/setout/built/as-built-gaps.ts';
import { survey as surveyOf } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';

/** Readings of the shown layout. */
export interface AsBuiltQuestion {
  readonly kind: 'as-built';
  readonly course: Course;
  readonly readings: readonly GroundReading[];
  /** Keys of the first piece of each part. */
  readonly held: readonly string[];
  readonly letters: ReadonlyMap<string, readonly [string, string]>;
}

export interface BuiltPiece {
  readonly name: string;
  /** How far its end that is worst off lies from the plan. */
  readonly off: Metres;
  /** Standard error of an end. */
  readonly sigma: Metres;
}

export interface BuiltGap {
  /** "Poles 1 and 2 of the fan (obstacle 3)". */
  readonly name: string;
  readonly keys: readonly [string, string];
  readonly at: readonly [number, number];
  /** It is measured along the line of travel, else by a straight tape. */
  readonly isRidden: boolean;
  readonly built: Metres;
  /** The readings say nothing of one of its poles, which is taken as drawn. */
  readonly isOpen: boolean;
  readonly least: Metres;
  readonly most: Metres;
  /** How far it is out of its band; 0 inside. */
  readonly outside: Metres;
}

export interface AsBuiltAnswer {
  /** In the order of the question's readings; `expected` is what the others make of it. */
  readonly readings: readonly { readonly standing: ReadingStanding; readonly expected: number }[];
  /** Places of readings of which one is likely wrong, and nothing tells which. */
  readonly undecided: readonly (readonly number[])[];
  readonly pieces: readonly BuiltPiece[];
  readonly gaps: readonly BuiltGap[];
  /** Sentences, in the order in which the moves are made. */
  readonly moves: readonly string[];
  /** What no moves bring into its band, with what comes nearest. */
  readonly unreached: readonly { readonly why: string; readonly nearest: readonly string[] }[];
  /** What the checks find as built, and do not find on the plan. */
  readonly findings: readonly string[];
  /** Where the pieces lie, by key. */
  readonly poses: ReadonlyMap<string, Pose>;
}

export function asBuiltAnswer({ course, readings, held, letters }: AsBuiltQuestion): AsBuiltAnswer {
  const survey = surveyOf(course);
  const { adjustment, gaps, mends, findings } = asBuiltOf(survey, readings, { held, letters });
  const onPlan = new Set(findingsOf(survey).map(({ says }) => says));
  const lengths = new Map(survey.pieces.map(({ key, figure }) => [key, figure.length]));
  const off = (key: string, plan: Pose, pose: Pose): Metres => {
    const half = (lengths.get(key) ?? 0) / 2;
    const ends = [-half, half].map((x) => distance(toWorld(plan, { x, y: 0 }), toWorld(pose, { x, y: 0 })));
    return Math.max(...ends);
  };
  return {
    readings: adjustment.readings.map(({ standing, expected }) => ({ standing, expected })),
    undecided: adjustment.undecided,
    pieces: [...adjustment.pieces.values()].map(({ key, plan, pose, error }) => ({
      name: capitalized(pieceWords(survey, key)),
      off: off(key, plan, pose),
      sigma: error.end,
    })),
    gaps: gaps.map(({ keys, at, gait, built, band, sigma }) => ({
      name: capitalized(piecesWords(survey, keys)),
      keys,
      at,
      isRidden: gait !== undefined,
      built,
      isOpen: sigma === undefined,
      least: band.least,
      most: band.most,
      outside: outsideBand(band, built, course.unit),
    })),
    moves: mends.moves.map(({ says }) => says),
    unreached: mends.unreached.map(({ why, nearest }) => ({ why, nearest: nearest.map(({ says }) => says) })),
    findings: findings.flatMap(({ says }) => (onPlan.has(says) ? [] : [says])),
    poses: new Map([...adjustment.pieces].map(([key, { pose }]) => [key, pose])),
  };
}
