import { type Horse, speed } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { goingOf, transitionTime } from './clock.ts';
import type { Going, LineElement, Transition } from './line.ts';

function speedOf(going: Going, horse: Horse): number {
  return going === 'standing' ? 0 : speed(horse, going);
}

/** A change of gait or halt, the element in which it is made, and the end of that element at which it is. */
interface Change {
  readonly before: Going;
  readonly after: Going;
  readonly element: LineElement;
  readonly end: 'first' | 'last';
  readonly length: Metres;
}

/**
 * Before an obstacle the change is made before it, after an obstacle after it: never between poles, where there is a
 * choice.
 */
function changePosition(before: LineElement | undefined, element: LineElement): Pick<Change, 'element' | 'end'> {
  if (before === undefined) return { element, end: 'first' };
  const early = element.part === 'obstacle' && (before.part !== 'obstacle' || goingOf(element) === 'standing');
  return early ? { element: before, end: 'last' } : { element, end: 'first' };
}

function changes(elements: readonly LineElement[], horse: Horse): Change[] {
  let before: Going = 'standing';
  return elements.flatMap((element, i): Change[] => {
    const [was, after] = [before, goingOf(element)];
    before = after;
    if (was === after) return [];
    const length = (transitionTime(was, after, horse) * (speedOf(was, horse) + speedOf(after, horse))) / 2;
    return [{ before: was, after, length, ...changePosition(elements[i - 1], element) }];
  });
}

/**
 * The length of an element that may be used: at its ends next to obstacles the horse keeps its own length in one gait.
 */
function margins(element: LineElement, horse: Horse): Record<Change['end'], Metres> {
  if (element.part === 'obstacle' || element.move !== 'ride') return { first: 0, last: 0 };
  const { value } = horse.bodyLength;
  return { first: element.from > 0 ? value : 0, last: element.part === 'approach' ? value : 0 };
}

/** From a halt to a walk and back it takes one step at most. */
function inAStep(before: Going, after: Going): boolean {
  return [before, after].every((going) => going === 'standing' || going === 'walk');
}

/** Every transition on the line, where it is made and whether there is room for it. */
export function transitionsOn(elements: readonly LineElement[], horse: Horse): Transition[] {
  const all = changes(elements, horse);
  return all.map(({ before, after, element, end, length }) => {
    const margin = margins(element, horse);
    const sharing = all.filter((other) => other.element === element);
    const wanted = sharing.reduce((sum, other) => sum + other.length, 0);
    const free = Math.max(0, element.length - margin.first - margin.last);
    const begins = end === 'first' ? element.from + margin.first : element.from + element.length - margin.last - length;
    const latest = element.from + Math.max(0, element.length - length);
    return {
      leg: element.leg,
      before,
      after,
      from: Math.min(Math.max(element.from, begins), latest),
      length,
      room: free / sharing.length,
      fits: element.move !== 'ride' || inAStep(before, after) || wanted <= free + 1e-9,
    };
  });
}
