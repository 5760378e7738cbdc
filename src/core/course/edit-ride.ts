/** Edits of the go in the current layout: its legs, their order, and how each is ridden. */
import { castDraft, type Draft } from 'immer';
import type { Course, Lead, Leg, PassedSide } from './course.ts';
import { editCurrentLayout } from './layouts.ts';
import { adaptLeg, openLeg, usualLeg } from './legs.ts';

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

/** Chooses on which hand a leg's approach leaves an obstacle; null leaves it to the line. Throws when there is no such leg. */
export function passOn(course: Course, legId: string, obstacle: string, hand: PassedSide['hand'] | null): Course {
  return editCurrentLayout(course, ({ ride: { legs } }) => {
    const leg = legById(legs, legId);
    const others = (leg.passes ?? []).filter((each) => each.obstacle !== obstacle);
    const passes = hand === null ? others : [...others, { obstacle, hand }];
    if (passes.length > 0) leg.passes = passes;
    else delete leg.passes;
  });
}

/**
 * What of a leg is to change; `undefined` takes a lead or words away. To give a passage is to choose it. Words come with the
 * sentence that they are written for, or that is not known.
 */
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
    if ('words' in change && change.wordsFor === undefined) delete leg.wordsFor;
    if (change.passage !== undefined && change.openWay === undefined) delete leg.openWay;
    adaptLeg(leg, obstacles.find((obstacle) => obstacle.id === leg.obstacle)?.passages ?? []);
  });
}

/**
 * Rides an obstacle once more, at the end of the go, as it is usually ridden: by the named passage, or by its first with
 * its way open. Throws when there is no such obstacle or passage, and for an obstacle that nobody rides.
 */
export function addLeg(course: Course, obstacleId: string, passageId?: string): Course {
  return editCurrentLayout(course, ({ obstacles, ride: { legs } }) => {
    const obstacle = obstacles.find(({ id }) => id === obstacleId);
    if (obstacle === undefined) throw new Error(`the layout has no obstacle ${obstacleId}`);
    const passage =
      passageId === undefined ? obstacle.passages[0] : obstacle.passages.find(({ id }) => id === passageId);
    if (passage === undefined) throw new Error(`${obstacleId} has no passage ${passageId ?? 'to ride'}`);
    legs.push(castDraft((passageId === undefined ? openLeg : usualLeg)(legs, obstacle, passage)));
  });
}

/** Rides legs by other passages; an open way stays open. A leg that is not there is passed over. */
export function takeWays(course: Course, ways: readonly { readonly leg: string; readonly passage: string }[]): Course {
  return editCurrentLayout(course, ({ ride: { legs } }) => {
    for (const { leg: id, passage } of ways) {
      const leg = legs.find((each) => each.id === id);
      if (leg !== undefined) leg.passage = passage;
    }
  });
}

/** Takes a leg out of the go; its obstacle stays in the arena. Throws when there is no such leg. */
export function removeLeg(course: Course, legId: string): Course {
  return editCurrentLayout(course, ({ ride: { legs } }) => {
    legs.splice(legs.indexOf(legById(legs, legId)), 1);
  });
}
