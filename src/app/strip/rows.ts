import type { Lead } from '../../core/course/course.ts';
import type { Horse } from '../../core/horses/horse.ts';
import { minTurnRadius } from '../../core/horses/turns.ts';
import type { Metres, Seconds } from '../../core/measure/quantity.ts';
import type { Going, LeadNote, Line, LineElement, Transition } from '../../core/ride/line.ts';
import { ridePositionAt } from '../../core/ride/playing.ts';
import { stripWords } from '../../words/strip.ts';

/** How much the line turns over a stretch: 1 is the least turn of its gait to the left, −1 to the right, 0 straight. */
export interface BendSpan {
  readonly from: Metres;
  readonly to: Metres;
  readonly share: number;
}

function minRadiusOf({ move, gait }: LineElement, horse: Horse): Metres | undefined {
  if (move === 'ride') return minTurnRadius(horse, gait);
  return move === 'back' ? horse.back.leastTurn.value : undefined;
}

/** The turning of the line against what its gait can do; what is not ridden or backed does not bend. */
export function bendSpans(elements: readonly LineElement[], horse: Horse): readonly BendSpan[] {
  return elements.flatMap((element) => {
    const least = minRadiusOf(element, horse);
    if (least === undefined) return [];
    let at = element.from;
    return element.path.map(({ length, curvature }): BendSpan => {
      const from = at;
      at += length;
      return { from, to: at, share: curvature * least };
    });
  });
}

/** The turn that is tightest for its gait, with the least turn of that gait; undefined where all is straight. */
export function tightestTurn(
  elements: readonly LineElement[],
  horse: Horse,
): { readonly radius: Metres; readonly least: Metres } | undefined {
  let found: { radius: Metres; least: Metres } | undefined;
  for (const element of elements) {
    const least = minRadiusOf(element, horse);
    if (least === undefined) continue;
    for (const { curvature } of element.path) {
      const radius = 1 / Math.abs(curvature);
      if (!Number.isFinite(radius)) continue;
      if (found === undefined || least / radius > found.least / found.radius) found = { radius, least };
    }
  }
  return found;
}

/** A part of the line that is loped on one lead, and what is wrong with it. */
export interface LeadSpan {
  readonly from: Metres;
  readonly to: Metres;
  readonly lead: Lead;
  readonly fault: Extract<LeadNote['kind'], 'wrong-lead' | 'counter-lope'> | null;
}

function isFault(note: LeadNote): note is Extract<LeadNote, { kind: 'wrong-lead' | 'counter-lope' }> {
  return note.kind === 'wrong-lead' || note.kind === 'counter-lope';
}

/** The leads along the line: those alike that follow each other as one. */
export function leadSpans({ leads, leadNotes }: Pick<Line, 'leads' | 'leadNotes'>): readonly LeadSpan[] {
  const found: LeadSpan[] = [];
  for (const { from, to, lead } of leads) {
    if (lead === null) continue;
    const note = leadNotes.find((each) => isFault(each) && each.from < to - 1e-6 && each.to > from + 1e-6);
    const fault = note !== undefined && isFault(note) ? note.kind : null;
    const last = found.at(-1);
    const goesOn = last !== undefined && last.lead === lead && last.fault === fault && from - last.to < 1e-6;
    if (goesOn) found[found.length - 1] = { ...last, to };
    else found.push({ from, to, lead, fault });
  }
  return found;
}

const FASTER: readonly Going[] = ['standing', 'walk', 'jog', 'lope'];

/** "up to a lope", "down to a walk", "halt". */
export function changeWords({ before, after }: Pick<Transition, 'before' | 'after'>): string {
  if (after === 'standing') return stripWords.halt;
  return (FASTER.indexOf(after) > FASTER.indexOf(before) ? stripWords.upTo : stripWords.downTo)(after);
}

/** A moment of the clock on the line. */
export interface Tick {
  readonly at: Metres;
  readonly time: Seconds;
}

/** Steps of the clock that people read easily, seconds. */
const CLOCK_STEPS: readonly Seconds[] = [1, 2, 5, 10, 15, 30, 60, 120, 300];

/** The clock along the line: even steps of time, never nearer than `apart` metres; where the horse stands, one tick. */
export function clockTicks(line: Line, apart: Metres): readonly Tick[] {
  const { go } = line.clock;
  if (!(go > 0 && line.length > 0)) return [];
  const wanted = (apart * go) / line.length;
  const step = CLOCK_STEPS.find((each) => each >= wanted * 0.75) ?? 600;
  const ticks: Tick[] = [];
  for (let time = step; time < go; time += step) {
    const at = ridePositionAt(line, time)?.at ?? 0;
    const last = ticks.at(-1)?.at ?? 0;
    if (at - last >= apart && line.length - at >= apart / 2) ticks.push({ at, time });
  }
  return ticks;
}
