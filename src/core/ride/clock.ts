import { GAITS, type Horse } from '../horses/horse.ts';
import type { Seconds } from '../measure/quantity.ts';
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

/** Seconds that an element takes beside moving along it: the transition into it, and the time to settle. */
export function allowance(element: Pick<LineElement, 'move' | 'gait'>, before: Going, horse: Horse): Seconds {
  const settle =
    element.move === 'back' ? horse.back.settle.value : element.move === 'side-pass' ? horse.sidePass.settle.value : 0;
  return transitionTime(before, goingOf(element), horse) + settle;
}
