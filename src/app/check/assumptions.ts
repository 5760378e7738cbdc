import { GAITS, type Gait, type Grade, type Horse, type Sourced, type TurnData } from '../../core/horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../../core/horses/turns.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
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
  W: 'weak source',
  D: 'derived',
  M: 'from memory',
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
    one('Height at the withers', horse.withers, length),
    one('Body, length', horse.bodyLength, length),
    one('Body, width', horse.bodyWidth, length),
    one('Fore to hind hoof', horse.wheelbase, length),
    one('Between the hooves of a pair', horse.stance, length),
    one('Hoof, width', horse.hoof, length),
    ...GAITS.flatMap((gait) => gaitRows(horse, gait, length)),
    one('Walk, the fore foot after the hind', footfall.walk.fore, ofStride),
    one('Jog, the fore foot after the hind', footfall.jog.fore, ofStride),
    one('Lope, the pair after the first hind foot', footfall.lope.diagonal, ofStride),
    one('Lope, the leading fore after the first hind foot', footfall.lope.leading, ofStride),
    one('How much its strides differ', horse.spread, ofStride),
    one('Straight line for a change of lead', horse.leadChange, length),
    one('Back, a step', back.step, length),
    one('Back, time of a step', back.period, seconds),
    one('Back, before the first step', back.settle, seconds),
    one('Back, tightest turn, radius', back.leastTurn, length),
    one('Side pass, a step', sidePass.step, length),
    one('Side pass, time of a step', sidePass.period, seconds),
    one('Side pass, before the first step', sidePass.settle, seconds),
    one('A full turn on the spot', horse.turn, seconds),
    one('To stop and settle', horse.halt, seconds),
    one('To work the gate', horse.gate, seconds),
    one('Into a faster gait', transition.up, seconds),
    one('Into a slower gait', transition.down, seconds),
  ];
}

function gaitRows(horse: Horse, gait: Gait, length: Print): readonly Assumption[] {
  const { stride, period, landing, leastTurn: least, easyTurn: easy } = horse.gaits[gait];
  const name = GAIT_WORDS[gait];
  const rest = ({ source, grade }: Sourced) => ({ source, grade });
  const band = [landing.least, landing.most].filter((end) => end !== undefined).map(length);
  return [
    { what: `${name}, a stride`, value: length(stride.value), ...rest(stride) },
    { what: `${name}, time of a stride`, value: seconds(period.value), ...rest(period) },
    {
      what: `${name}, a landing`,
      value: band.length === 2 ? band.join(' to ') : length(landing.value),
      ...rest(landing),
      isChief: true,
    },
    {
      what: `${name}, tightest radius`,
      value: length(minTurnRadius(horse, gait)),
      ...turnSource(least),
      isChief: true,
    },
    {
      what: `${name}, easy radius`,
      value: length(preferredTurnRadius(horse, gait)),
      ...turnSource(easy),
    },
  ];
}

/** A radius that follows from how far the horse leans says so. */
function turnSource(turn: TurnData): Pick<Assumption, 'source' | 'grade'> {
  if ('radius' in turn) return { source: turn.radius.source, grade: turn.radius.grade };
  const { value, source, grade } = turn.lean;
  return { source: `from a lean of ${printAngle(value)} at its speed; ${source}`, grade };
}

function seconds(value: number): string {
  return `${value} s`;
}

function ofStride(value: number): string {
  return `${Math.round(value * 1000) / 10} % of a stride`;
}
