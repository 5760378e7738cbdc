/** A crew that reads its tapes again after everything lies, and reads one of them half a foot wrong. */
import type { Pose } from '../../../src/core/plane/pose.ts';
import { adjustReadings, type GroundReading } from '../../../src/core/setout/built/adjust.ts';
import type { Ground } from '../../../src/core/setout/ground.ts';
import { observedOn } from '../../../src/core/setout/ground.ts';
import { candidatesFor, observationOf } from '../../../src/core/setout/plan/candidates.ts';
import { orderedParts } from '../../../src/core/setout/plan-setout.ts';
import type { Observation, SetOutCrew } from '../../../src/core/setout/setout.ts';
import type { Survey } from '../../../src/core/survey.ts';
import { normal } from './crew.ts';

const HALF_A_FOOT = 0.1524;
/** How far poles lie from where they were to lie, standard errors: metres and radians. */
const LIES_OFF = { shift: 0.02, turn: 0.01 };
/** Read by tape: what is set by eye or pushed together is not read again. */
const TAPED: ReadonlySet<string> = new Set(['gap', 'between', 'clear', 'beside', 'ahead']);

/** So many tapes to each piece show an error in one of them: three markers by three tapes show none, whoever looks. */
const CONTROLLING = 4;

/** The readings of one part: by which each piece could be laid from those before it, tapes only. */
export interface TapedPart {
  readonly survey: Survey;
  readonly ground: Ground;
  readonly held: string;
  readonly keys: readonly string[];
  readonly observations: readonly Observation[];
}

export function tapedParts(survey: Survey, crew: SetOutCrew): readonly TapedPart[] {
  const { parts, ground } = orderedParts(survey, crew);
  return parts.flatMap(({ order, question }): TapedPart[] => {
    const [first] = order.pieces;
    const observations = order.pieces.flatMap((piece, i) =>
      candidatesFor(piece, order.pieces.slice(0, i), question)
        .filter(({ of }) => TAPED.has(of.kind))
        .map((each) => observationOf(each, crew.marked)),
    );
    const others = order.pieces.length - 1;
    if (first === undefined || others === 0 || observations.length < CONTROLLING * others) return [];
    return [{ survey, ground, held: first.key, keys: order.pieces.map(({ key }) => key), observations }];
  });
}

export interface BlunderTrial {
  /** The reading that was wrong was left out. */
  readonly isFound: boolean;
  /** A good reading was left out. */
  readonly blames: boolean;
}

/** One reading of everything: with a blunder in one of them, or with none. */
export function blunderTrial(part: TapedPart, roll: () => number, hasBlunder: boolean, level: number): BlunderTrial {
  const { survey, ground, held, keys, observations } = part;
  const poses = new Map<string, Pose>(
    keys.map((key) => {
      const { pose } = survey.pieces.find((each) => each.key === key) as { pose: Pose };
      const off = (sigma: number): number => (key === held ? 0 : sigma * normal(roll));
      return [
        key,
        { x: pose.x + off(LIES_OFF.shift), y: pose.y + off(LIES_OFF.shift), angle: pose.angle + off(LIES_OFF.turn) },
      ];
    }),
  );
  const wrong = hasBlunder ? Math.floor(roll() * observations.length) : -1;
  const way = roll() < 0.5 ? -1 : 1;
  const readings = observations.map((each, i): GroundReading => {
    const truth = observedOn(ground, each, poses).value;
    return {
      ...each,
      read: truth + each.sigma * normal(roll) + (i === wrong ? way * HALF_A_FOOT : 0),
      sigma: each.sigma,
    };
  });
  const found = adjustReadings(survey, readings, { held: [held], level }).wrong;
  return { isFound: found.includes(wrong), blames: found.some((i) => i !== wrong) };
}
