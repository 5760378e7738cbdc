/** Edits of the go in the current layout: its legs, their order, and how each is ridden. */
import { castDraft, type Draft } from 'immer';
import type { Course, Lead, Leg } from './course.ts';
import { editCurrentLayout } from './layouts.ts';
import { adaptLeg, usualLeg } from './legs.ts';

function legById(legs: readonly Draft<Leg>[], id: string): Draft<Leg> {
  const found = legs.find((leg) => leg.id === id);
  if (found === undefined) throw new Error(`the ride has no leg ${id}`);
  return found;
}

/** Rides a leg as the `to`-th of the go, 0 first; beyond the end is last. Throws when there is no such leg. */
export function reorderLeg(course: Course, legId: string, to: number): Course {
  return editCurrentLayout(course, ({ ride: { legs } }) => {
    const from = legs.indexOf(legById(legs, legId));
    const place = Math.max(0, Math.min(legs.length - 1, Math.round(to)));
    if (place !== from) legs.splice(place, 0, ...legs.splice(from, 1));
  });
}

/** What of a leg is to change; `undefined` takes a lead or words away. */
export interface LegChange extends Partial<Omit<Leg, 'id' | 'lead' | 'words'>> {
  readonly lead?: Lead | undefined;
  readonly words?: string | undefined;
}

/** Changes a leg. A gait that its passage does not allow becomes the usual one. Throws when there is no such leg. */
export function changeLeg(course: Course, legId: string, change: LegChange): Course {
  return editCurrentLayout(course, ({ obstacles, ride: { legs } }) => {
    const leg = legById(legs, legId);
    Object.assign(leg, Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)));
    if ('lead' in change && change.lead === undefined) delete leg.lead;
    if ('words' in change && change.words === undefined) delete leg.words;
    adaptLeg(leg, obstacles.find((obstacle) => obstacle.id === leg.obstacle)?.passages ?? []);
  });
}

/**
 * Rides an obstacle once more, at the end of the go, by the named passage or its first, as it is usually ridden. Throws
 * when there is no such obstacle or passage, and for an obstacle that nobody rides.
 */
export function addLeg(course: Course, obstacleId: string, passageId?: string): Course {
  return editCurrentLayout(course, ({ obstacles, ride: { legs } }) => {
    const obstacle = obstacles.find(({ id }) => id === obstacleId);
    if (obstacle === undefined) throw new Error(`the layout has no obstacle ${obstacleId}`);
    const passage =
      passageId === undefined ? obstacle.passages[0] : obstacle.passages.find(({ id }) => id === passageId);
    if (passage === undefined) throw new Error(`${obstacleId} has no passage ${passageId ?? 'to ride'}`);
    legs.push(castDraft(usualLeg(legs, obstacle, passage)));
  });
}

/** Takes a leg out of the go; its obstacle stays in the arena. Throws when there is no such leg. */
export function removeLeg(course: Course, legId: string): Course {
  return editCurrentLayout(course, ({ ride: { legs } }) => {
    legs.splice(legs.indexOf(legById(legs, legId)), 1);
  });
}
