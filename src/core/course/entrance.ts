import type { Point } from '../plane/point.ts';
import type { Arena } from './course.ts';

/** The middle of the entrance. */
export function entranceMiddle({ entrance: { wall, at }, length, width }: Arena): Point {
  switch (wall) {
    case 'west':
      return { x: 0, y: at };
    case 'east':
      return { x: length, y: at };
    case 'south':
      return { x: at, y: 0 };
    case 'north':
      return { x: at, y: width };
  }
}
