/** Where horses come in and where the judge is, on paper. */
import type { Arena } from '../core/course/course.ts';
import { lerp } from '../core/plane/point.ts';
import { opening } from './ground.ts';
import { headingOnPaper, onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { arrowhead } from './travel.ts';

interface Entrance {
  readonly at: PaperPoint;
  readonly ring: readonly PaperPoint[];
}

/** A hollow arrow into the opening, outside the rail. */
export function entranceSign(arena: Arena, transform: PaperTransform): Entrance {
  const [from, to] = opening(arena);
  const middle = onPaper(transform, lerp(from, to, 0.5));
  const inward = { south: Math.PI / 2, west: 0, north: -Math.PI / 2, east: Math.PI }[arena.entrance.wall];
  const heading = headingOnPaper(transform, inward);
  const at = { x: middle.x - Math.cos(heading) * 2.4, y: middle.y - Math.sin(heading) * 2.4 };
  const [tip, left, , right] = arrowhead(at, heading, 3.8);
  return { at, ring: tip && left && right ? [tip, left, right, tip] : [] };
}

/** Half of the judge's sign, mm. */
const JUDGE = 1.5;

/** A hollow square where the judge is. */
export function judgeSign({ x, y }: PaperPoint): readonly PaperPoint[] {
  return [
    { x: x - JUDGE, y: y - JUDGE },
    { x: x + JUDGE, y: y - JUDGE },
    { x: x + JUDGE, y: y + JUDGE },
    { x: x - JUDGE, y: y + JUDGE },
    { x: x - JUDGE, y: y - JUDGE },
  ];
}
