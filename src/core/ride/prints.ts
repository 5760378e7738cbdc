/** The hoof prints of a ride. Worked out on demand and not with the line, so that a drag need not wait for them. */

import type { Lead } from '../course/course.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Path } from '../plane/path.ts';
import { isSamePose, toWorld } from '../plane/pose.ts';
import { isCorner, transitionTime } from './clock.ts';
import { beats, footOffset, sideOf } from './footfall.ts';
import type { HoofPrint, LocalPrint } from './hoof-print.ts';
import type { Crossing, Gap, Line, LineElement } from './line.ts';
import { secondsAt } from './playing.ts';
import { backedPrints, haltPrints, poseBeyond, steppedPrints } from './stepped-prints.ts';
import { type PoleCrossing, positionAfter, type StrideKnot, stridePlan } from './stride-plan.ts';

/** Elements that follow each other and are gone in one way. */
interface GaitStretch {
  readonly elements: readonly LineElement[];
  readonly path: Path;
  readonly from: Metres;
  readonly length: Metres;
  readonly crossings: readonly Crossing[];
  readonly gaps: readonly Gap[];
  readonly leads: readonly { readonly from: Metres; readonly to: Metres; readonly lead: Lead | null }[];
}

interface CachedPrints {
  readonly paths: readonly Path[];
  readonly inputs: readonly unknown[];
  readonly horse: Horse;
  readonly prints: readonly LocalPrint[];
}
const stretchCache = new WeakMap<Path, CachedPrints>();

/** A horse without a lead to take lopes on the left: estimate. */
const USUAL_LEAD: Lead = 'left';

function gaitStretches(line: Line): GaitStretch[] {
  const groups: LineElement[][] = [];
  for (const element of line.elements) {
    if (element.move === 'work' || isCorner(element)) continue;
    const before = groups.at(-1)?.at(-1);
    const goesOn =
      before !== undefined &&
      element.move === 'ride' &&
      before.move === 'ride' &&
      before.gait === element.gait &&
      Math.abs(before.from + before.length - element.from) < 1e-9;
    if (goesOn) groups.at(-1)?.push(element);
    else groups.push([element]);
  }
  return groups.map((elements): GaitStretch => {
    const from = elements[0]?.from ?? 0;
    const length = elements.reduce((sum, each) => sum + each.length, 0);
    const inside = (at: Metres): boolean => at >= from - 1e-9 && at <= from + length + 1e-9;
    const path = elements.flatMap((each) => each.path);
    const [first] = elements;
    const ridden = first?.move === 'ride';
    return {
      elements,
      path,
      from,
      length,
      crossings: ridden ? line.crossings.filter(({ at }) => inside(at)) : [],
      gaps: ridden ? line.gaps.filter((gap) => inside(gap.from) && inside(gap.to)) : [],
      leads: line.leads
        .filter((each) => inside(each.from) && inside(each.to))
        .map((each) => ({ from: each.from - from, to: each.to - from, lead: each.lead })),
    };
  });
}

function poleCrossings({ crossings, gaps, from }: GaitStretch): PoleCrossing[] {
  return crossings.map((crossing, i): PoleCrossing => {
    const next = crossings[i + 1];
    const gap = gaps.find(
      ({ keys, from: leaves }) =>
        keys[0] === crossing.key && keys[1] === next?.key && leaves >= crossing.at && leaves <= next.at,
    );
    const at = crossing.at - from;
    return gap === undefined ? { at } : { at, gap: { ridden: gap.ridden, landings: gap.landings } };
  });
}

/**
 * Strides since the last pole in a gap, over which errors add up; elsewhere one, because the rider corrects each
 * stride.
 */
function stridesSincePole(knots: readonly StrideKnot[], strides: number): number {
  const next = knots.findIndex((knot) => knot.strides > strides);
  const [before, after] = [knots[next - 1], knots[next]];
  if (before === undefined || after === undefined || !before.pole || !after.pole) return 1;
  return Math.max(1, strides - before.strides);
}

function riddenPrints(stretch: GaitStretch, horse: Horse): LocalPrint[] {
  const gait = stretch.elements[0]?.gait ?? 'walk';
  const leadAt = (at: Metres): Lead => stretch.leads.find((each) => at <= each.to)?.lead ?? USUAL_LEAD;
  const steps = poleCrossings(stretch);
  const knots = stridePlan(stretch.length, steps, { horse, gait, lead: leadAt(steps[0]?.at ?? 0) });
  const [begin, end] = [knots[0]?.strides ?? 0, knots.at(-1)?.strides ?? 0];
  const found: LocalPrint[] = [];
  for (let k = Math.floor(begin) - 1; k <= end; k += 1) {
    const [here, there] = [positionAfter(knots, Math.max(k, begin)), positionAfter(knots, Math.min(k + 1, end))];
    const lead = leadAt(Math.max(0, here));
    const share = Math.min(k + 1, end) - Math.max(k, begin);
    for (const { foot, phase } of beats(horse, gait, lead)) {
      const strides = k + phase;
      if (strides < begin || strides > end) continue;
      const at = positionAfter(knots, strides);
      const stride = share > 0 ? (there - here) / share : horse.gaits[gait].stride.value;
      const under = poseBeyond(stretch.path, at + footOffset(foot, horse.wheelbase.value), stretch.length);
      found.push({
        gait,
        lead: gait === 'lope' ? lead : null,
        foot,
        point: toWorld(under, { x: 0, y: (sideOf(foot) * horse.stance.value) / 2 }),
        heading: under.angle,
        carried: under.angle,
        at,
        stride,
        spread: horse.spread.value * stride * Math.sqrt(stridesSincePole(knots, strides)),
      });
    }
  }
  return found.sort((a, b) => a.at - b.at);
}

/**
 * Whether two paths are the same to the bit. After an edit further on, the part of a way that is ridden in the gait before
 * it is a new path in the old place.
 */
function isSamePath(a: Path, b: Path): boolean {
  if (a === b) return true;
  return (
    a.length === b.length &&
    a.every(({ start, length, curvature }, i) => {
      const other = b[i];
      return (
        other !== undefined &&
        isSamePose(start, other.start) &&
        length === other.length &&
        curvature === other.curvature
      );
    })
  );
}

/** What the prints of a stretch depend on beside its paths: the same objects and numbers give the same prints. */
function inputsOf(stretch: GaitStretch): readonly unknown[] {
  const { elements, crossings, gaps, leads } = stretch;
  return [
    ...elements.flatMap(({ gait, move }) => [gait, move]),
    ...crossings.flatMap(({ pose, key }) => [pose, key]),
    ...gaps.map(({ ends }) => ends),
    ...leads.map(({ lead }) => lead),
  ];
}

function newPrints(stretch: GaitStretch, horse: Horse): readonly LocalPrint[] {
  const [first] = stretch.elements;
  if (first === undefined) return [];
  switch (first.move) {
    case 'back':
      return backedPrints(stretch.path, stretch.length, horse);
    case 'side-pass':
    case 'turn':
      return steppedPrints(first, horse);
    default:
      return riddenPrints(stretch, horse);
  }
}

function localPrints(stretch: GaitStretch, horse: Horse): readonly LocalPrint[] {
  const owner = stretch.elements[0]?.path ?? stretch.path;
  const inputs = inputsOf(stretch);
  const paths = stretch.elements.map(({ path }) => path);
  const cached = stretchCache.get(owner);
  if (cached?.horse === horse && cached.paths.length === paths.length && cached.inputs.length === inputs.length) {
    const isSame = cached.inputs.every((each, i) => each === inputs[i]);
    if (isSame && paths.every((path, i) => isSamePath(path, cached.paths[i] ?? []))) return cached.prints;
  }
  const prints = newPrints(stretch, horse);
  stretchCache.set(owner, { paths, inputs, horse, prints });
  return prints;
}

/** The element that follows, where the horse halts at the end of this stretch. */
function halted(
  stretch: GaitStretch,
  line: Line,
): { readonly last: LineElement; readonly next: LineElement } | undefined {
  const last = stretch.elements.at(-1);
  const next = last === undefined ? undefined : line.elements[line.elements.indexOf(last) + 1];
  if (last?.move !== 'ride' || next === undefined || next.move === 'ride' || isCorner(next)) return undefined;
  return { last, next };
}

/** Every print of the go, in order. Cached by line; what an edit did not touch keeps the same prints. */
export const printsOn = memoizeByIdentity((line: Line, horse: Horse): readonly HoofPrint[] =>
  gaitStretches(line).flatMap((stretch) => {
    const gone = localPrints(stretch, horse).map(({ share = 0, ...print }): HoofPrint => {
      const element =
        stretch.elements.findLast(({ from }) => from - stretch.from <= print.at + 1e-9) ?? stretch.elements[0];
      const at = print.at + stretch.from;
      const standing = element !== undefined && element.length === 0 ? share * element.seconds : 0;
      return { ...print, leg: element?.leg ?? 0, at, time: secondsAt(line, at, element) + standing };
    });
    const halt = halted(stretch, line);
    if (halt === undefined) return gone;
    // It stands square when what comes after the halt begins: the time to stop belongs to that.
    const time = secondsAt(line, halt.next.from, halt.next) + transitionTime(halt.last.gait, 'standing', horse);
    const square = haltPrints(halt.last.path, horse).map(({ share: _, ...print }): HoofPrint => {
      return { ...print, leg: halt.last.leg, at: print.at + halt.last.from, time };
    });
    return [...gone, ...square];
  }),
);
