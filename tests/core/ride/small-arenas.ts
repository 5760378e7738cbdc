/** Small arenas with a few poles and markers laid at random from a seed, and two poses with room about them. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import { type PlacedObstacle, placedObstacle } from '../../../src/core/course/placed.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { completeValues } from '../../../src/core/pieces/params.ts';
import { pieceKind } from '../../../src/core/pieces/pieces.ts';
import { pathFrom } from '../../../src/core/plane/path.ts';
import { type Pose, pose } from '../../../src/core/plane/pose.ts';
import type { WayEnd } from '../../../src/core/ride/end-straights.ts';
import { pole } from './hand-laid.ts';
import { isFree, type Small } from './lattice.ts';

export interface SmallArena {
  readonly small: Small;
  readonly obstacles: readonly PlacedObstacle[];
  readonly begin: Pose;
  readonly finish: Pose;
}

/** Room that the router keeps, and a little: the oracle must not be able to go where the router may not. */
const ROOM = { lying: 0.28, standing: 0.49 };
const WALL = 0.5;

function lying(id: string, at: Pose, thing: 'pole' | 'marker', length: number): Obstacle {
  const kind = pieceKind('marker');
  const piece =
    thing === 'pole'
      ? pole('only', pose(0, 0, 0), length)
      : { id: 'only', kind: 'marker', values: completeValues(kind?.params ?? {}, {}), pose: pose(0, 0, 0) };
  return { id, kind: 'scenery', values: {}, pose: at, side: 1, pieces: [piece], constraints: [], passages: [] };
}

/** An end of a way where nothing is kept straight. */
export function bareEnd(at: Pose): WayEnd {
  return { pose: at, straight: [], cost: 0 };
}

/** An arena of about 14 × 10 m with three to seven things in it. */
export function smallArena(seed: number): SmallArena {
  const roll = seededRandom(seed);
  const between = (least: number, most: number) => least + (most - least) * roll();
  const [length, width] = [between(11, 16), between(8, 12)];
  const count = 3 + Math.floor(roll() * 5);
  const obstacles = Array.from({ length: count }, (_, i) => {
    const at = pose(between(1, length - 1), between(1, width - 1), between(0, Math.PI));
    return placedObstacle(lying(`thing-${i + 1}`, at, roll() < 0.75 ? 'pole' : 'marker', between(1.5, 3.7)));
  });
  const small: Small = { length, width, pieces: obstacles.flatMap(({ pieces }) => pieces), ...ROOM, wall: WALL };
  const free = (): Pose => {
    for (;;) {
      const at = pose(between(1, length - 1), between(1, width - 1), between(-Math.PI, Math.PI));
      if (isFree(pathFrom(at, [{ length: 0.8, curvature: 0 }]), { ...small, lying: 0.4, standing: 0.55 })) return at;
    }
  };
  return { small, obstacles, begin: free(), finish: free() };
}
