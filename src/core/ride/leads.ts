import type { Lead, Leg } from '../course/course.ts';
import type { Horse } from '../horses/horse.ts';
import { preferredTurnRadius } from '../horses/turns.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { poseAt } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { LeadNote, LeadStretch, LineElement } from './line.ts';

/** The line must turn by this much to one side before it asks for a lead. 10°: estimate. */
const LEAST_BEND: Radians = (10 * Math.PI) / 180;

interface Curve {
  readonly element: LineElement;
  readonly from: Metres;
  readonly to: Metres;
  readonly curvature: number;
}

/** Loped elements that follow each other without a break. */
function lopedRuns(elements: readonly LineElement[]): LineElement[][] {
  const runs: LineElement[][] = [];
  let open = false;
  for (const element of elements) {
    const loped = element.move === 'ride' && element.gait === 'lope';
    if (loped && open) runs.at(-1)?.push(element);
    else if (loped) runs.push([element]);
    open = loped;
  }
  return runs;
}

function curves(run: readonly LineElement[]): Curve[] {
  return run.flatMap((element) => {
    let at = element.from;
    return element.path.map(({ length, curvature }): Curve => {
      const from = at;
      at += length;
      return { element, from, to: at, curvature };
    });
  });
}

function bendSide(curvature: number): Lead | null {
  if (curvature === 0) return null;
  return curvature > 0 ? 'left' : 'right';
}

/** Curves that bend the same way, one after the other; those that hardly bend altogether count as straight. */
function bends(all: readonly Curve[]): { readonly curve: Curve; readonly bend: Lead | null }[] {
  const groups: Curve[][] = [];
  for (const curve of all) {
    const group = groups.at(-1);
    if (group !== undefined && bendSide(group[0]?.curvature ?? 0) === bendSide(curve.curvature)) group.push(curve);
    else groups.push([curve]);
  }
  return groups.flatMap((group) => {
    const turn = group.reduce((sum, { from, to, curvature }) => sum + (to - from) * curvature, 0);
    const bend = Math.abs(turn) < LEAST_BEND ? null : bendSide(turn);
    return group.map((curve) => ({ curve, bend }));
  });
}

/** Curves of one element that bend the same way, as one. */
function bentStretches(run: readonly LineElement[], legs: readonly Leg[]): LeadStretch[] {
  const found: LeadStretch[] = [];
  for (const { curve, bend } of bends(curves(run))) {
    const { leg, part } = curve.element;
    const radius = bend === null ? null : 1 / Math.abs(curve.curvature);
    const last = found.at(-1);
    if (last !== undefined && last.leg === leg && last.part === part && last.bend === bend) {
      const tighter = radius === null || last.radius === null ? last.radius : Math.min(radius, last.radius);
      found[found.length - 1] = { ...last, to: curve.to, radius: tighter };
      continue;
    }
    const chosen = legs[leg]?.lead;
    const lead = chosen ?? bend;
    found.push({ leg, part, from: curve.from, to: curve.to, bend, radius, lead, chosen: chosen !== undefined });
  }
  return found;
}

/** The lead of every part of the line that is loped, in order. */
export function leadStretches(elements: readonly LineElement[], legs: readonly Leg[]): LeadStretch[] {
  return lopedRuns(elements).flatMap((run) => {
    const found = bentStretches(run, legs);
    return found.map((each, i) => {
      if (each.lead !== null) return each;
      const next = found.slice(i + 1).find(({ lead }) => lead !== null);
      const before = found.slice(0, i).findLast(({ lead }) => lead !== null);
      return { ...each, lead: next?.lead ?? before?.lead ?? null };
    });
  });
}

function pointAt(elements: readonly LineElement[], at: Metres): Point {
  const element = elements.findLast(({ from }) => from <= at) ?? elements[0];
  if (element === undefined) throw new Error('pointAt: there is no line');
  const { x, y } = poseAt(element.path, at - element.from);
  return { x, y };
}

/** Leads that do not go with the bend, and changes of lead with their room. */
export function leadNotes(
  stretches: readonly LeadStretch[],
  elements: readonly LineElement[],
  horse: Horse,
): LeadNote[] {
  const notes: LeadNote[] = [];
  const easy = preferredTurnRadius(horse, 'lope');
  const wants = horse.leadChange.value;
  for (const [i, { leg, part, from, to, bend, radius, lead }] of stretches.entries()) {
    if (bend !== null && radius !== null && lead !== null && bend !== lead) {
      const wrong = part === 'obstacle' || radius < easy * (1 - 1e-9);
      const at = pointAt(elements, (from + to) / 2);
      notes.push({ kind: wrong ? 'wrong-lead' : 'counter-lope', leg, from, to, at, lead, bend, radius });
    }
    const next = stretches[i + 1];
    if (next === undefined || lead === null || next.lead === null || next.lead === lead) continue;
    if (Math.abs(next.from - to) > 1e-6) continue;
    // From the straight before the bend up to the bend that needs the other lead: the change may be made anywhere on
    // it.
    const begins = bend === null ? from : to;
    const after = stretches.slice(i + 1).find((each) => each.bend !== null);
    const ends = next.bend === null ? (after?.from ?? next.to) : next.from;
    const room = Math.max(0, ends - begins);
    const note = { leg: next.leg, from: begins, to: ends, at: pointAt(elements, begins + room / 2) };
    notes.push({ kind: 'change', ...note, before: lead, after: next.lead, room, wants, fits: room >= wants - 1e-9 });
  }
  return notes;
}
