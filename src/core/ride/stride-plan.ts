import type { Lead } from '../course/course.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Beat, beats, clearPhase, LANDING_SHARE } from './footfall.ts';
import type { Landings } from './line.ts';

/** Strides as a function of distance: piecewise linear between knots, both rising. */
export interface StrideKnot {
  readonly at: Metres;
  readonly strides: number;
  /** Whether the knot is over a pole: the horse sees the pole, and its errors start anew. */
  readonly pole: boolean;
}

/** A pole that is crossed, and the landings in the gap after it where the next pole belongs to the same obstacle. */
export interface PoleCrossing {
  readonly at: Metres;
  readonly gap?: { readonly ridden: Metres; readonly landings: Pick<Landings, 'count' | 'each' | 'fits'> };
}

export interface GaitContext {
  readonly horse: Horse;
  readonly gait: Gait;
  readonly lead: Lead;
}

/** The value brought within half a period of 0. */
function signedRemainder(value: number, period: number): number {
  return value - period * Math.round(value / period);
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** Metres of a stride in the gap from one pole to the next, as its landings ask. */
function strideIn(step: PoleCrossing | undefined, next: PoleCrossing | undefined, share: number): Metres | undefined {
  if (step?.gap === undefined || next === undefined) return undefined;
  return (next.at - step.at) / (step.gap.landings.count * share);
}

/** The stride at a pole: the mean of those before and after it; the open stride at a pole that stands alone. */
function strideAt(steps: readonly PoleCrossing[], i: number, { horse, gait }: GaitContext): Metres {
  const share = LANDING_SHARE[gait];
  const around = [strideIn(steps[i - 1], steps[i], share), strideIn(steps[i], steps[i + 1], share)];
  const known = around.filter((each) => each !== undefined);
  if (known.length === 0) return horse.gaits[gait].stride.value;
  return known.reduce((sum, each) => sum + each, 0) / known.length;
}

/** From one pole to the next: where the strides are to be, and how many there may be. */
interface StrideRange {
  readonly usual: number;
  readonly fewest: number;
  readonly most: number;
  /** Knots between the two poles: metres and strides from the first, and strides back from the second. */
  readonly leaves?: { readonly far: Metres; readonly strides: number };
  readonly comes?: { readonly far: Metres; readonly strides: number };
}

/** In a gap: as its landings ask, each within what the horse does over poles. */
function strideRangeInGap(
  far: Metres,
  { ridden, landings }: NonNullable<PoleCrossing['gap']>,
  { horse, gait }: GaitContext,
): StrideRange {
  const { least, most, value } = horse.gaits[gait].landing;
  const usual = landings.count * LANDING_SHARE[gait];
  const poles = far - ridden;
  const [shortest, longest] = [least ?? value, most ?? value].map((each) => landings.count * each + poles);
  return { usual, fewest: (usual * far) / (longest ?? far), most: (usual * far) / (shortest ?? far) };
}

/**
 * Between obstacles: the stride of the first until the hind feet are over its last pole, then open strides, then the
 * stride of the second.
 */
function strideRangeBetween(
  far: Metres,
  [before, after]: readonly [Metres, Metres],
  { horse, gait }: GaitContext,
): StrideRange {
  const { value: open, least = open, most = open } = horse.gaits[gait].stride;
  const body = horse.wheelbase.value;
  if (far < 3 * body) return { usual: far / open, fewest: far / most, most: far / least };
  const [leaves, comes] = [
    { far: body, strides: body / before },
    { far: body, strides: body / after },
  ];
  const [own, rest] = [leaves.strides + comes.strides, far - 2 * body];
  return { usual: own + rest / open, fewest: own + rest / most, most: own + rest / least, leaves, comes };
}

/** Beyond the last pole: its stride for the length of the body, then the open one. */
function tail(far: Metres, [own, open]: readonly [Metres, Metres], body: Metres): Omit<StrideKnot, 'pole'>[] {
  if (!(far > 0)) return [];
  const near = Math.min(far, body);
  const first = { at: near, strides: near / own };
  return far > body ? [first, { at: far, strides: near / own + (far - body) / open }] : [first];
}

/**
 * The strides along a stretch of one gait, `length` metres long, over these poles. In a gap the stride adapts to the
 * gap's landings, within what the horse does over poles; between obstacles within what it does on open ground, so that
 * it comes right to the next pole. Where that range is too small, the prints fall where the stride puts them.
 */
export function stridePlan(length: Metres, steps: readonly PoleCrossing[], context: GaitContext): StrideKnot[] {
  const { horse, gait, lead } = context;
  const open = horse.gaits[gait].stride.value;
  const body = horse.wheelbase.value;
  const share = LANDING_SHARE[gait];
  const all: readonly Beat[] = beats(horse, gait, lead);
  const local = steps.map((_, i) => strideAt(steps, i, context));
  const clearPhases = local.map((stride) => clearPhase(all, stride, body, share));
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) {
    return [
      { at: 0, strides: 0, pole: false },
      { at: length, strides: length / open, pole: false },
    ];
  }
  let strides = clearPhases[0] ?? 0;
  let ideal = strides;
  const knots: StrideKnot[] = [{ at: first.at, strides, pole: true }];
  for (const [i, step] of steps.entries()) {
    const next = steps[i + 1];
    if (next === undefined) break;
    const far = next.at - step.at;
    const ends = [local[i] ?? open, local[i + 1] ?? open] as const;
    const range =
      step.gap === undefined ? strideRangeBetween(far, ends, context) : strideRangeInGap(far, step.gap, context);
    const from = strides;
    ideal += range.usual + signedRemainder((clearPhases[i + 1] ?? 0) - ideal - range.usual, share);
    strides = from + clamp(ideal - from, range.fewest, range.most);
    if (range.leaves !== undefined && range.comes !== undefined) {
      knots.push({ at: step.at + range.leaves.far, strides: from + range.leaves.strides, pole: false });
      knots.push({ at: next.at - range.comes.far, strides: strides - range.comes.strides, pole: false });
    }
    knots.push({ at: next.at, strides, pole: true });
  }
  const head = tail(first.at, [local[0] ?? open, open], body).map(({ at, strides: gone }): StrideKnot => {
    return { at: first.at - at, strides: (clearPhases[0] ?? 0) - gone, pole: false };
  });
  const foot = tail(length - last.at, [local.at(-1) ?? open, open], body).map(({ at, strides: gone }): StrideKnot => {
    return { at: last.at + at, strides: strides + gone, pole: false };
  });
  return [...head.reverse(), ...knots, ...foot];
}

/** Where the middle of the horse is after so many strides. */
export function positionAfter(knots: readonly StrideKnot[], strides: number): Metres {
  const next = knots.findIndex((knot, i) => i > 0 && (knot.strides >= strides || i === knots.length - 1));
  const [a, b] = [knots[next - 1], knots[next]];
  if (a === undefined || b === undefined || b.strides === a.strides) return knots[0]?.at ?? 0;
  return a.at + ((strides - a.strides) / (b.strides - a.strides)) * (b.at - a.at);
}
