import { GAITS, type Horse } from '../horses/horse.ts';
import type { Radians, Seconds } from '../measure/quantity.ts';
import type { Going, LineElement } from './line.ts';

/** The time between two ways of going: a transition, a halt, or nothing. */
export function transitionTime(before: Going, after: Going, horse: Horse): Seconds {
  if (before === after) return 0;
  if (after === 'standing') return horse.halt.value;
  const up = before === 'standing' || GAITS.indexOf(after) > GAITS.indexOf(before);
  return up ? horse.transition.up.value : horse.transition.down.value;
}

/** How the horse moves in an element: at a gait, or starting from a halt for everything that is not ridden forward. */
export function goingOf(element: Pick<LineElement, 'move' | 'gait'>): Going {
  return element.move === 'ride' ? element.gait : 'standing';
}

/** A larger turn about the middle goes about on the spot, radians: 150°, estimate. */
const ABOUT_TURN: Radians = (5 * Math.PI) / 6;

/**
 * Whether an element is a corner between two lanes. The line turns there about the middle of the horse, but the horse goes
 * round it as it finds room: where its feet come down is not known, and whether it gets round is what the sweep says.
 */
export function isCorner({ turn }: LineElement): boolean {
  return turn !== 0 && Math.abs(turn) <= ABOUT_TURN;
}

/**
 * How the horse goes in each of the elements: a corner that it is ridden up to and on from is no halt (common practice, no
 * source).
 */
export function goings(elements: readonly LineElement[]): readonly Going[] {
  return elements.map((element, i) => {
    const [before, after] = [elements[i - 1], elements[i + 1]];
    const isRidden = before?.move === 'ride' && after?.move === 'ride' && before.gait === after.gait;
    return isRidden && isCorner(element) ? before.gait : goingOf(element);
  });
}

/** Seconds that an element takes beside moving along it: the transition into it, and the time to settle. */
export function allowance(
  { move }: Pick<LineElement, 'move'>,
  [before, after]: readonly [Going, Going],
  horse: Horse,
): Seconds {
  const settle = move === 'back' ? horse.back.settle.value : move === 'side-pass' ? horse.sidePass.settle.value : 0;
  return transitionTime(before, after, horse) + settle;
}
