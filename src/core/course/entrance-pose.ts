import type { Pose } from '../plane/pose.ts';
import type { Arena } from './course.ts';

/** How far inside the entrance the go starts: about a horse's length. An estimate. */
const INSIDE = 3;

/** A pose just inside the entrance, heading into the arena. */
export function entrancePose(arena: Arena): Pose {
  const { wall, at } = arena.entrance;
  switch (wall) {
    case 'west':
      return { x: INSIDE, y: at, angle: 0 };
    case 'east':
      return { x: arena.length - INSIDE, y: at, angle: Math.PI };
    case 'south':
      return { x: at, y: INSIDE, angle: Math.PI / 2 };
    case 'north':
      return { x: at, y: arena.width - INSIDE, angle: -Math.PI / 2 };
  }
}
