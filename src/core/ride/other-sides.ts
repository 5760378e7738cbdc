/** The other sides that a way could take: offered where they are nearly as good. */
import type { PassedSide } from '../course/course.ts';
import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { type Path, pathBounds, pathLength } from '../plane/path.ts';
import { boundsIntersect } from '../plane/ring.ts';
import { approach } from './approach.ts';
import { barrier, obstacleMiddle } from './barrier.ts';
import type { KeptWay } from './kept-way.ts';
import { isSameSide, sweptAngle } from './same-side.ts';

/** A side is nearly as good while it costs no more than both beside the way as it is: metres of way, and a share of it. */
const NEARLY: Metres = 3;
const NEARLY_SHARE = 0.25;
/** An obstacle is passed when it lies this near to the box of the way, metres. */
const BESIDE: Metres = 1;

/** To leave an obstacle on the other hand, and by how much the way would be longer, metres; shorter is below 0. */
export interface OtherSide extends PassedSide {
  readonly longer: Metres;
  readonly path: Path;
}

/**
 * The clear ways that leave one obstacle more on the other hand, shortest first. Of obstacles that give the same way only
 * one is named. It seeks a way for each obstacle beside the line: ask it for one way at rest.
 */
export const otherSides = memoizeByIdentity(({ query, context, found }: KeptWay): readonly OtherSide[] => {
  if (query.bends.length > 0 || found.blocked !== undefined) return [];
  const { arena, obstacles, fromEnd, toEnd, barriers = [] } = context;
  const ends = [fromEnd?.obstacle, toEnd?.obstacle];
  const except = [fromEnd, toEnd].flatMap((end) => (end === undefined ? [] : [end.piece]));
  const length = pathLength(found.path);
  const most = found.cost + Math.max(NEARLY, NEARLY_SHARE * found.cost);
  const sides: OtherSide[] = [];
  for (const obstacle of obstacles) {
    const { id } = obstacle.obstacle;
    if (ends.includes(id) || !boundsIntersect(obstacle.bounds, pathBounds(found.path), BESIDE)) continue;
    const hand = sweptAngle(found.path, obstacleMiddle(obstacle)) > 0 ? 'right' : 'left';
    const { from, to } = query;
    const other = barrier(obstacle, hand, { from, to, reach: arena.length + arena.width });
    const kept = barriers.filter((each) => each.obstacle !== obstacle);
    const way = approach(query, { ...context, barriers: [...kept, other] }, { effort: 'side', most });
    if (way.blocked !== undefined || way.cost > most) continue;
    if (sides.some(({ path }) => isSameSide(path, way.path, { obstacles, except }))) continue;
    sides.push({ obstacle: id, hand, longer: pathLength(way.path) - length, path: way.path });
  }
  return sides.sort((a, b) => a.longer - b.longer);
});
