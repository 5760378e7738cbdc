/** The time of a class: many goes, and what lies between them. */
import type { ClassEntry, Ride } from '../course/course.ts';
import { entryCount } from '../course/entry-count.ts';
import type { Seconds } from '../measure/quantity.ts';
import type { Line, LineElement } from './line.ts';

/** What a class takes that does not say: half a minute between goes, ten minutes of dragging after 25. Estimates. */
export const USUAL_CLASS = { changeover: 30, dragEvery: 25, drag: 600 } as const;

/** What one number of the ride costs. */
interface LegClock {
  readonly leg: number;
  readonly obstacle: string;
  /** Coming to it and riding it, in one go. */
  readonly way: Seconds;
  readonly own: Seconds;
  /** Of `own`, what grows and shrinks with the obstacle: moving and turning, not settling or working a gate. */
  readonly moving: Seconds;
  /** Way and obstacle, all entries together. */
  readonly class: Seconds;
}

/** An obstacle that would bring the class nearer to its time if it were shorter. */
interface Shortening {
  readonly leg: number;
  readonly obstacle: string;
  /** How much shorter it has to be in one go if it alone makes good what is over. */
  readonly by: Seconds;
  /** Whether it has that much to give. */
  readonly enough: boolean;
}

export interface ClassClock {
  readonly entries: number;
  readonly go: Seconds;
  readonly riding: Seconds;
  readonly changeovers: Seconds;
  readonly drags: number;
  readonly dragging: Seconds;
  readonly whole: Seconds;
  /** Null when as long as it takes is allowed. */
  readonly allotted: Seconds | null;
  /** How much longer than allotted; 0 when it is not. */
  readonly over: Seconds;
  readonly legs: readonly LegClock[];
  /** When over: which obstacle to shorten first. Empty otherwise. */
  readonly shorten: readonly Shortening[];
}

function movingSeconds({ elements }: Line, leg: number): Seconds {
  const own = elements.filter((each) => each.leg === leg && each.part === 'obstacle' && each.move !== 'work');
  return own.reduce((sum, { moving }) => sum + moving, 0);
}

function secondsOf(
  elements: readonly LineElement[],
  leg: number,
  wanted: (part: LineElement['part']) => boolean,
): Seconds {
  return elements
    .filter((each) => each.leg === leg && wanted(each.part))
    .reduce((sum, { seconds }) => sum + seconds, 0);
}

/** The time of a class whose horses all ride this line. */
export function classClock(line: Line, ride: Ride, entry: ClassEntry): ClassClock {
  const { changeover, dragEvery, drag } = { ...USUAL_CLASS, ...entry };
  const entries = entryCount(entry);
  const { go } = line.clock;
  const legs = ride.legs.map(({ obstacle }, leg): LegClock => {
    const own = secondsOf(line.elements, leg, (part) => part === 'obstacle');
    const way = secondsOf(line.elements, leg, (part) => part !== 'obstacle');
    return { leg, obstacle, way, own, moving: movingSeconds(line, leg), class: entries * (way + own) };
  });
  const riding = entries * go;
  const changeovers = Math.max(0, entries - 1) * changeover;
  // After the last go there is nobody left to drag for.
  const drags = dragEvery > 0 ? Math.floor(Math.max(0, entries - 1) / dragEvery) : 0;
  const whole = riding + changeovers + drags * drag;
  const allotted = entry.allotted ?? null;
  const over = allotted === null ? 0 : Math.max(0, whole - allotted);
  const by = entries > 0 ? over / entries : 0;
  const shorten = over > 0 ? legs.toSorted((a, b) => b.moving - a.moving) : [];
  return {
    ...{ entries, go, riding, changeovers, drags, dragging: drags * drag, whole, allotted, over, legs },
    shorten: shorten.map(({ leg, obstacle, moving }) => ({ leg, obstacle, by, enough: moving > by })),
  };
}
