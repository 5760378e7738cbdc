/**
 * Where the horse changes gait, halts and goes on. A change is made before an obstacle or after it, never between its
 * poles, and the elements are cut there: each has the gait in which it is really ridden.
 */
import { type Gait, type Horse, speed } from '../horses/horse.ts';
import { minTurnRadius } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { cutPath, type Path, poseAt } from '../plane/path.ts';
import { allowance, goings, transitionTime } from './clock.ts';
import type { Going, LineElement, Transition } from './line.ts';

function speedOf(going: Going, horse: Horse): number {
  return going === 'standing' ? 0 : speed(horse, going);
}

/** Metres a transition takes: its time at the mean of both speeds. */
export function transitionLength(before: Going, after: Going, horse: Horse): Metres {
  return (transitionTime(before, after, horse) * (speedOf(before, horse) + speedOf(after, horse))) / 2;
}

/** A change of gait or halt, the element in which it is made, and the end of that element at which it is. */
interface Change {
  readonly before: Going;
  readonly after: Going;
  /** Index of the element; it is always a ridden one. */
  readonly inside: number;
  readonly end: 'first' | 'last';
  readonly length: Metres;
}

/** Before an obstacle the change is made on the way to it, after an obstacle on the way from it. */
function isEarly(before: LineElement | undefined, element: LineElement, going: Going): boolean {
  if (before === undefined || element.part !== 'obstacle') return false;
  return before.part !== 'obstacle' || going === 'standing';
}

function changes({ elements, horse }: ChosenLine, all: readonly Going[]): Change[] {
  return elements.flatMap((element, i): Change[] => {
    const before = all[i - 1] ?? 'standing';
    const after = all[i] ?? 'standing';
    if (before === after) return [];
    const early = isEarly(elements[i - 1], element, after);
    const length = transitionLength(before, after, horse);
    return [{ before, after, inside: early ? i - 1 : i, end: early ? 'last' : 'first', length }];
  });
}

/** From a halt to a walk and back it takes one step at most. */
function inAStep({ before, after }: Change): boolean {
  return [before, after].every((going) => going === 'standing' || going === 'walk');
}

/**
 * The length at the ends of an element in which no change of gait is made: beside an obstacle that is ridden through,
 * the horse keeps its own length in the obstacle's gait.
 */
function margins(elements: readonly LineElement[], i: number, horse: Horse): Record<Change['end'], Metres> {
  const isRidden = (element: LineElement | undefined): boolean => element?.move === 'ride';
  const { value } = horse.bodyLength;
  if (elements[i]?.part === 'obstacle') return { first: 0, last: 0 };
  return {
    first: isRidden(elements[i - 1]) ? value : 0,
    last: isRidden(elements[i + 1]) ? value : 0,
  };
}

/** The one or two changes inside an element, with their places in metres from its start. */
interface Changed {
  readonly first: PlacedChange | undefined;
  readonly last: PlacedChange | undefined;
}
interface PlacedChange extends Change {
  readonly at: Metres;
  readonly room: Metres;
  readonly fits: boolean;
  readonly steady: boolean;
}

/** The elements as they are chosen, and where poles are crossed, metres along the line. */
interface ChosenLine {
  readonly elements: readonly LineElement[];
  readonly poles: readonly Metres[];
  readonly horse: Horse;
}

/** Metres from the start of a path to the first turn that is tighter than the gait can; its length where there is none. */
function steadyLength(path: Path, gait: Gait, horse: Horse): Metres {
  const sharpest = (1 + 1e-6) / minTurnRadius(horse, gait);
  let along = 0;
  for (const { length, curvature } of path) {
    if (Math.abs(curvature) > sharpest) return along;
    along += length;
  }
  return along;
}

/**
 * The horse does not turn more tightly than it can in the faster gait: it changes down before such a turn and up after it.
 * The place, metres from the end of the element at which the change is, is so far from a pole there that the hooves are
 * clear of it.
 */
function steadyPlace(
  { elements, poles, horse }: ChosenLine,
  { inside, end, before, after }: Change,
  wanted: Metres,
): { readonly off: Metres; readonly steady: Metres } {
  const gait = end === 'first' ? before : after;
  const element = elements[inside];
  if (element === undefined || gait === 'standing') return { off: wanted, steady: Number.POSITIVE_INFINITY };
  const { path, from, length } = element;
  const steady = steadyLength(end === 'first' ? path : path.toReversed(), gait, horse);
  const edge = end === 'first' ? from : from + length;
  const clear = poles.some((at) => Math.abs(at - edge) < 1e-6) ? Math.min(wanted, horse.wheelbase.value / 2) : 0;
  return { off: Math.max(clear, Math.min(wanted, steady)), steady };
}

/**
 * The place of a change is the middle of its transition: half of its length is ridden before it and half after. A halt is
 * where the horse stands, and so is the start from a halt. Where there is too little room, everything is shortened
 * alike, and the places stay in order inside the element.
 */
function placedChanges(line: ChosenLine, inside: number, own: readonly Change[]): Changed {
  const { elements, horse } = line;
  const length = elements[inside]?.length ?? 0;
  const margin = margins(elements, inside, horse);
  const wanted = own.reduce((sum, each) => sum + each.length, 0);
  const free = Math.max(0, length - margin.first - margin.last);
  const scale = Math.min(1, length / Math.max(wanted + margin.first + margin.last, 1e-9));
  const placed = (end: Change['end']): PlacedChange | undefined => {
    const change = own.find((each) => each.end === end);
    if (change === undefined) return undefined;
    const half = change.before === 'standing' || change.after === 'standing' ? 0 : change.length / 2;
    const { off, steady } = steadyPlace(line, change, scale * (margin[end] + half));
    return {
      ...change,
      at: end === 'first' ? off : length - off,
      room: free / own.length,
      fits: inAStep(change) || wanted <= free + 1e-9,
      steady: steady >= change.length - 1e-9 || steady >= length - 1e-9,
    };
  };
  return { first: placed('first'), last: placed('last') };
}

/** A change that is made while going, and so has a part of the element before and after it. */
function cutAt(change: PlacedChange | undefined): Metres | undefined {
  return change === undefined || change.before === 'standing' || change.after === 'standing' ? undefined : change.at;
}

/** A part of an element in one gait. */
interface Part {
  readonly gait: Gait;
  readonly path: Path;
  readonly from: Metres;
  readonly length: Metres;
}

/** A ridden element as its parts in one gait each. The paths are cached by the element's, and so shared between lines. */
function partsOf(element: LineElement, { first, last }: Changed): readonly Part[] {
  const { gait, path, from, length } = element;
  const begins = cutAt(first) ?? 0;
  const ends = cutAt(last) ?? length;
  const parts: Part[] = [];
  let rest = path;
  if (first !== undefined && first.before !== 'standing' && begins > 0) {
    const [before, beyond] = cutPath(rest, begins);
    parts.push({ gait: first.before, path: before, from, length: begins });
    rest = beyond;
  }
  const own = { gait, from: from + begins, length: ends - begins };
  if (last === undefined || last.after === 'standing' || ends === length) parts.push({ ...own, path: rest });
  else {
    const [before, beyond] = cutPath(rest, ends - begins);
    parts.push({ ...own, path: before });
    parts.push({ gait: last.after, path: beyond, from: from + ends, length: length - ends });
  }
  // A change right at an end leaves nothing on one side of it.
  const kept = parts.filter((part) => part.length > 1e-9);
  return kept.length > 0 ? kept : [element];
}

function transitionOf(element: LineElement, change: PlacedChange): Transition {
  const { before, after, length, room, fits, steady } = change;
  const ahead = before === 'standing' ? 0 : after === 'standing' ? length : length / 2;
  return {
    leg: element.leg,
    before,
    after,
    at: element.from + change.at,
    pose: poseAt(element.path, change.at),
    from: Math.max(element.from, element.from + change.at - ahead),
    length,
    room,
    fits,
    steady,
  };
}

/** The elements as they are really ridden, and every transition between them, in the order of the go. */
export interface RiddenElements {
  readonly elements: readonly LineElement[];
  readonly transitions: readonly Transition[];
}

/**
 * Cuts the elements where the gait changes, and adds to each its transition and the time to settle. The elements of the
 * chosen line have one gait each, that of the way or the obstacle, and only the seconds that they move.
 */
export function riddenElements(line: ChosenLine): RiddenElements {
  const { elements, horse } = line;
  const byElement = new Map<number, Change[]>();
  const all = goings(elements);
  for (const change of changes(line, all)) {
    byElement.set(change.inside, [...(byElement.get(change.inside) ?? []), change]);
  }
  const transitions: Transition[] = [];
  let going: Going = 'standing';
  const ridden: LineElement[] = [];
  for (const [i, element] of elements.entries()) {
    const own = byElement.get(i);
    const changed = own === undefined ? undefined : placedChanges(line, i, own);
    for (const each of [changed?.first, changed?.last]) {
      if (each !== undefined) transitions.push(transitionOf(element, each));
    }
    const { leg, part, move, facing, turn } = element;
    for (const { gait, path, from, length } of changed === undefined ? [element] : partsOf(element, changed)) {
      const moving = gait === element.gait && length === element.length ? element.moving : length / speed(horse, gait);
      const after = move === 'ride' ? gait : (all[i] ?? 'standing');
      const seconds = moving + allowance(element, [going, after], horse);
      going = after;
      ridden.push({ leg, part, move, gait, path, from, length, facing, turn, seconds, moving });
    }
  }
  return { elements: ridden, transitions };
}
