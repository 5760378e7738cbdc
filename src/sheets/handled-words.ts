/** What a rider does with a horse that is not ridden forwards: turns, side passes, and work by hand, in words. */
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Metres, Radians } from '../core/measure/quantity.ts';
import type { Wording } from '../core/obstacles/wording.ts';
import { toLocal, toWorld } from '../core/plane/pose.ts';
import { type Ring, ringContains } from '../core/plane/ring.ts';
import type { MoveStep, Step, TurnStep } from './steps.ts';

/** What the words of each step are made with. */
export interface Phrasing {
  readonly wording: Wording;
  readonly gait: Gait;
  readonly letters: ReadonlyMap<string, string>;
  /** The markers that the way passes. */
  readonly markers: readonly PlacedPiece[];
  /** The ground that the horse goes into, convex; undefined where it goes into none. */
  readonly inside: Ring | undefined;
  /** From the horse's front feet to its hind feet. */
  readonly wheelbase: Metres;
  /** The part of the obstacle on which a move lies; undefined where it has no parts. */
  partOf(step: MoveStep): string | undefined;
}

/** The hand to which something goes or stands, by its signed way to the left. */
export function handOf(by: number): 'left' | 'right' {
  return by > 0 ? 'left' : 'right';
}

/** "90° to the right". */
function turnWords(by: Radians): string {
  return `${Math.round((Math.abs(by) * 180) / Math.PI)}° to the ${handOf(by)}`;
}

/** A turn between two side passes that leads from one pole to another, and not back along the same; radians: 135°. */
const MOST_CORNER = (3 * Math.PI) / 4;

/** Whether a step is the turn at a corner that is side passed. */
function isCorner(steps: readonly Step[], index: number): boolean {
  const turn = steps[index];
  if (turn?.kind !== 'turn' || Math.abs(turn.by) > MOST_CORNER) return false;
  return steps[index - 1]?.kind === 'side-pass' && steps[index + 1]?.kind === 'side-pass';
}

/** " with the hind feet inside", where one pair of feet treads in place and one pair only is inside. */
function feetWords({ at, about }: TurnStep, { inside, wheelbase }: Phrasing): string {
  if (inside === undefined || about === undefined) return '';
  const [front, hind] = [1, -1].map((end) => ringContains(inside, toWorld(at, { x: (end * wheelbase) / 2, y: 0 })));
  return front === hind ? '' : ` with the ${front ? 'front' : 'hind'} feet inside`;
}

/** A turn on the spot with the feet that tread in place, where it has such feet. */
export function turning(steps: readonly Step[], index: number, phrasing: Phrasing): string {
  const turn = steps[index];
  if (turn?.kind !== 'turn') return '';
  const about = turn.about === undefined ? '' : ` on the ${turn.about}`;
  const where = isCorner(steps, index) ? ' at the corner' : feetWords(turn, phrasing);
  return `turn${about} ${turnWords(turn.by)}${where}`;
}

/** The hand to which a horse goes sideways: the other one than that on which it then has where it began. */
export function sideHand({ from, stations }: MoveStep): 'left' | 'right' {
  const to = stations[stations.length - 1] ?? stations[0];
  return from === undefined ? 'left' : handOf(-toLocal(to.pose, from.pose).y);
}

/** Which feet are inside the corner between two side passes: those on whose side the horse goes on. */
function feetInside(first: MoveStep, second: MoveStep): 'front feet' | 'hind feet' {
  const here = first.stations[first.stations.length - 1] ?? first.stations[0];
  const there = second.stations[second.stations.length - 1] ?? second.stations[0];
  return toLocal(here.pose, there.pose).x > 0 ? 'front feet' : 'hind feet';
}

export function sidePassing(steps: readonly Step[], index: number, { wording, partOf }: Phrasing): string {
  const step = steps[index];
  if (step?.kind !== 'side-pass') return '';
  const over = wording.sidePassed ?? 'over {}';
  const part = partOf(step);
  const where = part === undefined ? over : over.replace('{}', part);
  const pass = `side pass ${sideHand(step)}`;
  if (isCorner(steps, index - 1)) return part === undefined ? `${pass} to the end` : `${pass} ${where} to the end`;
  const next = isCorner(steps, index + 1) ? steps[index + 2] : undefined;
  const inside = next?.kind === 'side-pass' ? ` with the ${feetInside(step, next)} inside` : '';
  const isAgain = steps.slice(0, index).some((each) => each.kind === 'side-pass' && partOf(each) === part);
  return `${pass} ${where}${isAgain ? ' again' : inside}`;
}

/** The work at a gate, a mailbox or the like: the hand is that on whose side it stands. */
export function handWork(steps: readonly Step[], index: number, { wording }: Pick<Phrasing, 'wording'>): string {
  const step = steps[index];
  if (step?.kind !== 'work' || step.from === undefined) return '';
  const hand = handOf(toLocal(step.from.pose, step.stations[0].piece.pose).y);
  const how = steps[index - 1]?.kind === 'back' ? 'pull' : 'push';
  return wording.work?.(hand, how) ?? `work {} on the ${hand}`;
}
