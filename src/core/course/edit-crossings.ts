/** Where along their poles the line of one way over an obstacle crosses: the poles stay, the line moves. */
import { produce } from 'immer';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Passage, Station } from '../obstacles/passage.ts';
import type { Course, Layout } from './course.ts';
import { editCurrentLayout } from './layouts.ts';

export type Cross = Extract<Station, { kind: 'cross' }>;

/** The line stays this far from a pole's ends, as a share of the pole: nobody rides over the very end. Estimate. */
const LEAST_FRACTION = 0.02;

/** The fraction brought onto the pole. */
export function clampToPole(fraction: number): number {
  return Math.min(1 - LEAST_FRACTION, Math.max(LEAST_FRACTION, fraction));
}

/** The crossings of a leg's passage, in the order in which it is ridden; none when the layout has no such leg. */
export function crossingsOf({ ride, obstacles }: Pick<Layout, 'ride' | 'obstacles'>, legId: string): readonly Cross[] {
  const leg = ride.legs.find(({ id }) => id === legId);
  const obstacle = obstacles.find(({ id }) => id === leg?.obstacle);
  const passage = obstacle?.passages.find(({ id }) => id === leg?.passage);
  return passage?.stations.filter((station) => station.kind === 'cross') ?? [];
}

/**
 * The course with the line of a leg's passage over its poles at other fractions, by the place of the crossing in the
 * passage, 0 first. Fractions are brought onto the poles. Other passages of the obstacle stay, and so the leg's passage is
 * chosen by this.
 * Throws when there is no such leg.
 */
export function moveCrossings(course: Course, legId: string, fractions: ReadonlyMap<number, number>): Course {
  return editCurrentLayout(course, ({ ride, obstacles }) => {
    const leg = ride.legs.find(({ id }) => id === legId);
    if (leg === undefined) throw new Error(`moveCrossings: the ride has no leg ${legId}`);
    const obstacle = obstacles.find(({ id }) => id === leg.obstacle);
    const passage = obstacle?.passages.find(({ id }) => id === leg.passage);
    delete leg.openWay;
    let place = 0;
    for (const station of passage?.stations ?? []) {
      if (station.kind !== 'cross') continue;
      const fraction = fractions.get(place);
      if (fraction !== undefined) station.fraction = clampToPole(fraction);
      place += 1;
    }
  });
}

/** The fractions of a passage that differ from what its kind builds, by station. */
function movedFractions(passage: Passage, usual: Passage | undefined): ReadonlyMap<number, number> {
  const moved = new Map<number, number>();
  for (const [i, station] of passage.stations.entries()) {
    const like = usual?.stations[i];
    if (station.kind !== 'cross' || like?.kind !== 'cross' || like.piece !== station.piece) continue;
    if (Math.abs(like.fraction - station.fraction) > 1e-9) moved.set(i, station.fraction);
  }
  return moved;
}

/**
 * An obstacle that was built again, with its line where it had been moved to before: `usual` is the old obstacle as its
 * kind builds it. Crossings that no longer exist are dropped.
 */
export function withMovedLine(next: Obstacle, old: Obstacle, usual: Obstacle): Obstacle {
  return produce(next, (draft) => {
    for (const passage of old.passages) {
      const like = usual.passages.find(({ id }) => id === passage.id);
      const stations = draft.passages.find(({ id }) => id === passage.id)?.stations ?? [];
      for (const [i, fraction] of movedFractions(passage, like)) {
        const before = passage.stations[i];
        const station = stations[i];
        if (station?.kind !== 'cross' || before?.kind !== 'cross' || station.piece !== before.piece) continue;
        station.fraction = fraction;
      }
    }
  });
}
