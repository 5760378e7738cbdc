import usual from '../../../assets/crew/usual.json' with { type: 'json' };
import { type Course, DEFAULT_CREW } from '../course/course.ts';
import { entranceMiddle } from '../course/entrance.ts';
import type { Sourced } from '../horses/horse.ts';
import type { Crew } from './change-over.ts';

/** What is assumed about people who carry and set things. Lengths in metres, times in seconds, speeds in metres a second. */
export interface CrewData {
  readonly walk: { readonly empty: Sourced; readonly loaded: Sourced };
  /** To take hold of a thing that lies in the arena. */
  readonly pickUp: Sourced;
  /** To take one thing off the truck, and to put one on. */
  readonly unload: Sourced;
  readonly stow: Sourced;
  /** To lay a long thing, tape it and square it. */
  readonly lay: { readonly two: Sourced; readonly alone: Sourced };
  /** To set a small thing on its spot. */
  readonly set: Sourced;
  /** To put a riser under an end of a pole. */
  readonly fit: Sourced;
  readonly layAside: Sourced;
  /** Two people carry a pole of this length or more. */
  readonly twoCarryFrom: Sourced;
  /** A thing whose every end is so near its place is left as it lies. */
  readonly liesRight: Sourced;
  /** What it costs to pick a thing up at all, as metres that are walked under it. */
  readonly charge: Sourced;
  /** So many small things one person takes at once. */
  readonly atOnce: Sourced;
}

// JSON widens a grade to string; tests/core/change/crew.test.ts looks at every grade, source and bound.
export const USUAL_CREW = usual as CrewData;

/** The crew of a course: two people and the truck in the entrance, unless it names others. */
export function crewOf({ crew = DEFAULT_CREW, arena }: Pick<Course, 'crew' | 'arena'>): Crew {
  return { people: crew.people, truckAt: crew.truckAt ?? entranceMiddle(arena) };
}
