/** Which foot comes down when, and where: the body moves at an even speed, and the feet keep the beats of the gait. */
import type { Lead } from '../course/course.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';

/** Left or right, hind or fore. */
export type Foot = 'LH' | 'LF' | 'RH' | 'RF';

/** A foot coming down, `phase` of a stride after the stride's first foot. */
export interface Beat {
  readonly foot: Foot;
  readonly phase: number;
}

export function isFore(foot: Foot): boolean {
  return foot === 'LF' || foot === 'RF';
}

/** 1 for the left feet, −1 for the right. */
export function sideOf(foot: Foot): 1 | -1 {
  return foot === 'LH' || foot === 'LF' ? 1 : -1;
}

/** The part of a stride that one landing in a gap is: a step at walk and jog, a whole stride at the lope. */
export const LANDING_SHARE: Readonly<Record<Gait, number>> = { walk: 0.5, jog: 0.5, lope: 1 };

/** The four beats of a stride. The lope's mirror image is the other lead. */
export function beats(horse: Horse, gait: Gait, lead: Lead): readonly Beat[] {
  if (gait === 'lope') {
    const { diagonal, leading } = horse.footfall.lope;
    const left = lead === 'left';
    return [
      { foot: left ? 'RH' : 'LH', phase: 0 },
      { foot: left ? 'LH' : 'RH', phase: diagonal.value },
      { foot: left ? 'RF' : 'LF', phase: diagonal.value },
      { foot: left ? 'LF' : 'RF', phase: leading.value },
    ];
  }
  const fore = horse.footfall[gait].fore.value;
  return [
    { foot: 'LH', phase: 0 },
    { foot: 'LF', phase: fore },
    { foot: 'RH', phase: 0.5 },
    { foot: 'RF', phase: (fore + 0.5) % 1 },
  ];
}

/** How far the next hind print is in front of the fore print of its side, whose foot came down at the phase, metres. */
export function overtrack(stride: Metres, wheelbase: Metres, phase: number): Metres {
  return stride * (1 - phase) - wheelbase;
}

/** The four steps of a lope from print to print, metres; together they are the stride. */
export function lopeSteps(
  stride: Metres,
  wheelbase: Metres,
  { diagonal, leading }: { readonly diagonal: number; readonly leading: number },
): Readonly<Record<'hind' | 'mid' | 'fore' | 'airborne', Metres>> {
  return {
    hind: diagonal * stride,
    mid: wheelbase,
    fore: (leading - diagonal) * stride,
    airborne: overtrack(stride, wheelbase, leading),
  };
}

/** How far in front of the middle of the hoof base a foot comes down; behind it for a hind foot, metres. */
export function footOffset(foot: Foot, wheelbase: Metres): Metres {
  return isFore(foot) ? wheelbase / 2 : -wheelbase / 2;
}

function modulo(value: number, period: number): number {
  return value - period * Math.floor(value / period);
}

/**
 * The phase, 0 … the share of a landing, at which the middle of the horse is over a pole when the feet keep furthest
 * from it: the pole is in the middle of the widest interval that the prints of this stride leave free.
 */
export function clearPhase(all: readonly Beat[], stride: Metres, wheelbase: Metres, share: number): number {
  const period = stride * share;
  const prints = all
    .map(({ foot, phase }) => modulo(phase * stride + footOffset(foot, wheelbase), period))
    .sort((a, b) => a - b);
  let widest = { room: -1, middle: 0 };
  for (const [i, print] of prints.entries()) {
    const next = prints[i + 1] ?? (prints[0] ?? 0) + period;
    const room = next - print;
    // Intervals that are equal but for rounding: the first stays, so that the result does not change to and fro.
    if (room > widest.room + 1e-9) widest = { room, middle: print + room / 2 };
  }
  return modulo(widest.middle / stride, share);
}
