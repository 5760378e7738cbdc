import { GAITS, type Gait, type Grade, type Horse, type Sourced, type TurnData } from '../../core/horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../../core/horses/turns.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { checkWords } from '../../words/check.ts';
import { GAIT_WORDS } from '../app-words.ts';

/** One number that is assumed about the horse, as a person reads it. */
export interface Assumption {
  readonly what: string;
  readonly value: string;
  readonly grade: Grade;
  readonly source: string;
  /** Shown without asking: what gaps and turns are judged by. */
  readonly isChief?: true;
}

export const GRADE_WORDS: Readonly<Record<Grade, string>> = {
  P: 'published',
  W: checkWords.weakSource,
  D: 'derived',
  M: checkWords.fromMemory,
  E: 'estimate',
};

type Print = (value: number) => string;

/** Everything that is assumed about a horse, in the course's unit, the sizes first and then gait by gait. */
export function assumptions(horse: Horse, unit: LengthUnit): readonly Assumption[] {
  const length: Print = (value) => printLength(value, unit);
  const one = (what: string, { value, source, grade }: Sourced, print: Print): Assumption => ({
    what,
    value: print(value),
    source,
    grade,
  });
  const { back, sidePass, transition, footfall } = horse;
  return [
    one(checkWords.heightWithers, horse.withers, length),
    one(checkWords.bodyLength, horse.bodyLength, length),
    one(checkWords.bodyWidth, horse.bodyWidth, length),
    one(checkWords.foreHindHoof, horse.wheelbase, length),
    one(checkWords.betweenHoovesPair, horse.stance, length),
    one(checkWords.hoofWidth, horse.hoof, length),
    ...GAITS.flatMap((gait) => gaitRows(horse, gait, length)),
    one(checkWords.walkForeFootAfter, footfall.walk.fore, ofStride),
    one(checkWords.jogForeFootAfter, footfall.jog.fore, ofStride),
    one(checkWords.lopePairAfterFirst, footfall.lope.diagonal, ofStride),
    one(checkWords.lopeLeadingForeAfter, footfall.lope.leading, ofStride),
    one(checkWords.howMuchStridesDiffer, horse.spread, ofStride),
    one(checkWords.straightLineChangeLead, horse.leadChange, length),
    one(checkWords.backAStep, back.step, length),
    one(checkWords.backTimeStep, back.period, seconds),
    one(checkWords.backBeforeFirstStep, back.settle, seconds),
    one(checkWords.backTightestTurnRadius, back.leastTurn, length),
    one(checkWords.sidePassStep, sidePass.step, length),
    one(checkWords.sidePassTimeStep, sidePass.period, seconds),
    one(checkWords.sidePassBeforeFirst, sidePass.settle, seconds),
    one(checkWords.fullTurnOnSpot, horse.turn, seconds),
    one(checkWords.stopSettle, horse.halt, seconds),
    one(checkWords.workGate, horse.gate, seconds),
    one(checkWords.intoFasterGait, transition.up, seconds),
    one(checkWords.intoSlowerGait, transition.down, seconds),
  ];
}

function gaitRows(horse: Horse, gait: Gait, length: Print): readonly Assumption[] {
  const { stride, period, landing, leastTurn: least, easyTurn: easy } = horse.gaits[gait];
  const name = GAIT_WORDS[gait];
  const rest = ({ source, grade }: Sourced) => ({ source, grade });
  const band = [landing.least, landing.most].filter((end) => end !== undefined).map(length);
  return [
    { what: `${name}, a stride`, value: length(stride.value), ...rest(stride) },
    { what: checkWords.timeStride(name), value: seconds(period.value), ...rest(period) },
    {
      what: `${name}, a landing`,
      value: band.length === 2 ? band.join(' to ') : length(landing.value),
      ...rest(landing),
      isChief: true,
    },
    {
      what: checkWords.tightestRadius(name),
      value: length(minTurnRadius(horse, gait)),
      ...turnSource(least),
      isChief: true,
    },
    {
      what: checkWords.easyRadius(name),
      value: length(preferredTurnRadius(horse, gait)),
      ...turnSource(easy),
    },
  ];
}

/** A radius that follows from how far the horse leans says so. */
function turnSource(turn: TurnData): Pick<Assumption, 'source' | 'grade'> {
  if ('radius' in turn) return { source: turn.radius.source, grade: turn.radius.grade };
  const { value, source, grade } = turn.lean;
  return { source: checkWords.fromLeanSpeed(printAngle(value), source), grade };
}

function seconds(value: number): string {
  return `${value} s`;
}

function ofStride(value: number): string {
  return checkWords.ofAStride(Math.round(value * 1000) / 10);
}
