import type { Lead, LeadChange, Leg } from '../course/course.ts';
import type { Horse } from '../horses/horse.ts';
import { preferredTurnRadius } from '../horses/turns.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { poseAt } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import type { LeadNote, LeadStretch, LineElement } from './line.ts';
import { transitionLength } from './transitions.ts';

/** The line must turn by this much to one side before it asks for a lead. 10°: estimate. */
const LEAST_BEND: Radians = (10 * Math.PI) / 180;

/**
 * At the depart, and before the horse comes down from the lope, a bend that is over before a change of lead could be made
 * asks for no lead of its own; a turn of more than this does. 45°: estimate.
 */
const BRIEF_BEND: Radians = Math.PI / 4;

interface Curve {
  readonly element: LineElement;
  /** The leg whose lead it is ridden on. */
  readonly leg: number;
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

/** What is loped on beyond an obstacle before the horse comes down is ridden on that obstacle's lead. */
function legOf(run: readonly LineElement[], i: number, legs: readonly Leg[]): number {
  const [before, element] = [run[i - 1], run[i]];
  const leg = element?.leg ?? 0;
  return before !== undefined && element?.part === 'approach' && legs[leg]?.approach !== 'lope' ? before.leg : leg;
}

function curves(run: readonly LineElement[], legs: readonly Leg[]): Curve[] {
  return run.flatMap((element, i) => {
    const leg = legOf(run, i, legs);
    let at = element.from;
    return element.path.map(({ length, curvature }): Curve => {
      const from = at;
      at += length;
      return { element, leg, from, to: at, curvature };
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

/** A stretch of one lope, and how much it turns, radians; positive to the left. */
interface BentStretch extends Omit<LeadStretch, 'lope'> {
  readonly turn: Radians;
}

/** Curves of one element that bend the same way, as one. */
function bentStretches(run: readonly LineElement[], legs: readonly Leg[]): BentStretch[] {
  const found: BentStretch[] = [];
  for (const { curve, bend } of bends(curves(run, legs))) {
    const { leg } = curve;
    const { part } = curve.element;
    const radius = bend === null ? null : 1 / Math.abs(curve.curvature);
    const turn = (curve.to - curve.from) * curve.curvature;
    const last = found.at(-1);
    if (last !== undefined && last.leg === leg && last.part === part && last.bend === bend) {
      const tighter = radius === null || last.radius === null ? last.radius : Math.min(radius, last.radius);
      found[found.length - 1] = { ...last, to: curve.to, radius: tighter, turn: last.turn + turn };
      continue;
    }
    const chosen = legs[leg]?.lead;
    const lead = chosen ?? bend;
    found.push({ leg, part, from: curve.from, to: curve.to, bend, radius, lead, chosen: chosen !== undefined, turn });
  }
  return found;
}

/** Whether a bend between obstacles lies so near to where the lope begins or ends that no change of lead is worth it. */
function isBrief(stretch: BentStretch, run: readonly BentStretch[], horse: Horse): boolean {
  const [first, last] = [run[0] ?? stretch, run.at(-1) ?? stretch];
  if (stretch.part === 'obstacle' || Math.abs(stretch.turn) > BRIEF_BEND) return false;
  const near = horse.leadChange.value;
  return stretch.to - first.from < near || last.to - stretch.from < near;
}

/** The lead of every part of the line that is loped, in order. */
export function leadStretches(elements: readonly LineElement[], legs: readonly Leg[], horse: Horse): LeadStretch[] {
  return lopedRuns(elements).flatMap((run, lope) => {
    const found = bentStretches(run, legs);
    const brief = found.map((each) => isBrief(each, found, horse));
    const all = found.map(({ lead }) => lead);
    const lasting = found.map(({ chosen, lead }, i) => (brief[i] && !chosen ? null : lead));
    // Where every bend is brief, each of them asks after all.
    const asked = lasting.some((lead) => lead !== null) ? lasting : all;
    return found.map(({ turn: _, ...each }, i): LeadStretch => {
      const next = asked.slice(i).find((lead) => lead !== null);
      const lead = next ?? asked.slice(0, i).findLast((before) => before !== null) ?? null;
      return brief[i] && lead !== each.bend
        ? { ...each, lope, bend: null, radius: null, lead }
        : { ...each, lope, lead };
    });
  });
}

function linePose(elements: readonly LineElement[], at: Metres): Pose {
  const element = elements.findLast(({ from }) => from <= at) ?? elements[0];
  if (element === undefined) throw new Error('linePose: there is no line');
  return poseAt(element.path, at - element.from);
}

/**
 * Where in its room a change of lead is made: in the middle of the longest part of it between obstacles, or of all of it
 * where there is none.
 */
function changePlace(elements: readonly LineElement[], from: Metres, to: Metres): Metres {
  let best = { from, to: from };
  for (const element of elements) {
    if (element.part === 'obstacle') continue;
    const [begins, ends] = [Math.max(from, element.from), Math.min(to, element.from + element.length)];
    if (ends - begins > best.to - best.from) best = { from: begins, to: ends };
  }
  return best.to > best.from ? (best.from + best.to) / 2 : (from + to) / 2;
}

/** Metres that a change wants: two transitions and a stride of the jog between them where it is a simple one. */
function changeLength(horse: Horse, how: LeadChange | undefined): Metres {
  if (how !== 'simple') return horse.leadChange.value;
  const [down, up] = [transitionLength('lope', 'jog', horse), transitionLength('jog', 'lope', horse)];
  return down + horse.gaits.jog.stride.value + up;
}

/** What leads depend on beside the line: the horse, and how the class asks for a change; absent: either way. */
export interface LeadContext {
  readonly horse: Horse;
  readonly how?: LeadChange | undefined;
}

/** A lope whose lead nothing says. */
function openNotes(stretches: readonly LeadStretch[], elements: readonly LineElement[]): LeadNote[] {
  return stretches.flatMap(({ leg, lope, from, lead }, i): LeadNote[] => {
    if (lead !== null || stretches[i - 1]?.lope === lope) return [];
    const to = stretches.findLast((each) => each.lope === lope)?.to ?? from;
    const { x, y } = linePose(elements, from);
    return [{ kind: 'open', leg, from, to, at: { x, y } }];
  });
}

/** Leads that do not go with the bend, changes of lead with their place and room, and lopes whose lead is open. */
export function leadNotes(
  stretches: readonly LeadStretch[],
  elements: readonly LineElement[],
  { horse, how }: LeadContext,
): LeadNote[] {
  const notes: LeadNote[] = openNotes(stretches, elements);
  const easy = preferredTurnRadius(horse, 'lope');
  const wants = changeLength(horse, how);
  for (const [i, stretch] of stretches.entries()) {
    const { leg, part, from, to, bend, radius, lead } = stretch;
    if (bend !== null && radius !== null && lead !== null && bend !== lead) {
      const wrong = part === 'obstacle' || radius < easy * (1 - 1e-9);
      const { x, y } = linePose(elements, (from + to) / 2);
      notes.push({ kind: wrong ? 'wrong-lead' : 'counter-lope', leg, from, to, at: { x, y }, lead, bend, radius });
    }
    const next = stretches[i + 1];
    if (next === undefined || lead === null || next.lead === null || next.lead === lead) continue;
    if (next.lope !== stretch.lope) continue;
    // From the straight before the bend up to the bend that needs the other lead: the change may be made anywhere on
    // it.
    const begins = bend === null ? from : to;
    const after = stretches.slice(i + 1).find((each) => each.bend !== null);
    const ends = next.bend === null ? (after?.from ?? next.to) : next.from;
    const room = Math.max(0, ends - begins);
    const place = changePlace(elements, begins, begins + room);
    const pose = linePose(elements, place);
    const where = { leg: next.leg, from: begins, to: ends, place, pose, at: { x: pose.x, y: pose.y } };
    const change = { before: lead, after: next.lead, ...(how === undefined ? {} : { how }) };
    notes.push({ kind: 'change', ...where, ...change, room, wants, fits: room >= wants - 1e-9 });
  }
  return notes;
}
