import type { Draft } from 'immer';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Passage, Station } from '../obstacles/passage.ts';
import { sameWork } from '../obstacles/same-work.ts';
import type { Leg } from './course.ts';
import { freeId } from './ids.ts';

/** Whether a station is ridden to forward; only such a one begins a passage. */
export function isForward(station: Station): boolean {
  return station.kind === 'cross' || (station.kind === 'reach' && station.move === 'ride');
}

/** One leg more, that rides a passage as it is usually ridden. What is not ridden forward is come to at a walk. */
export function usualLeg(legs: readonly Leg[], obstacle: Obstacle, passage: Passage): Leg {
  const gait = passage.gaits[0] ?? 'walk';
  return {
    id: freeId(
      'leg',
      legs.map((leg) => leg.id),
    ),
    obstacle: obstacle.id,
    passage: passage.id,
    gait,
    approach: passage.stations.every(isForward) ? gait : 'walk',
    bends: [],
  };
}

/** One leg more, by the obstacle's first passage; where others ask the same of the horse, its way stays open. */
export function openLeg(legs: readonly Leg[], obstacle: Obstacle, first: Passage): Leg {
  const leg = usualLeg(legs, obstacle, first);
  return sameWork(obstacle, first).length > 1 ? { ...leg, openWay: true } : leg;
}

/** Puts a leg on a passage that exists, the first for one that does not, in a gait that the passage allows. */
export function adaptLeg(leg: Draft<Leg>, passages: readonly Passage[]): void {
  const passage = passages.find((each) => each.id === leg.passage) ?? passages[0];
  if (passage === undefined) return;
  leg.passage = passage.id;
  if (!passage.gaits.includes(leg.gait)) leg.gait = passage.gaits[0] ?? leg.gait;
}

/** Adapts a leg when its obstacle was built again: a leg in the usual gait takes the new usual gait. */
export function adoptRebuilt(leg: Draft<Leg>, old: Obstacle, next: Obstacle): void {
  const usual = ({ passages }: Obstacle) => passages.find((passage) => passage.id === leg.passage)?.gaits[0];
  const before = usual(old);
  const after = usual(next);
  if (after === undefined || leg.gait !== before) return;
  leg.gait = after;
  if (leg.approach === before) leg.approach = after;
}
