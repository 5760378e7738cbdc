/** Where the ground lies on the paper: a scale, the datum corner's place, and whether the arena is turned a quarter. */
import type { Mark } from '../core/plane/mark.ts';
import type { Point } from '../core/plane/point.ts';
import { type Pose, toWorld } from '../core/plane/pose.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';

export type PaperPoint = Point<'paper'>;

export interface PaperTransform {
  /** Denominator: 200 for 1:200. */
  readonly scale: number;
  /** Paper position of the datum corner, mm. */
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** Millimetres on paper for a metre on the ground. */
export function perMetre(transform: PaperTransform): number {
  return 1000 / transform.scale;
}

export function onPaper(transform: PaperTransform, ground: Point): PaperPoint {
  const k = perMetre(transform);
  return transform.turned
    ? { x: transform.x - ground.y * k, y: transform.y - ground.x * k }
    : { x: transform.x + ground.x * k, y: transform.y - ground.y * k };
}

/** Heading on the page, radians, clockwise from the right because y runs down. */
export function headingOnPaper(transform: PaperTransform, angle: number): number {
  return -(transform.turned ? angle + Math.PI / 2 : angle);
}

/** A mark of a thing that lies at `pose`, on the paper; none for words that would be too small to read. */
export function markOnPaper(transform: PaperTransform, pose: Pose, mark: Mark): Mark<'paper'> | undefined {
  const k = perMetre(transform);
  const at = (local: Point): PaperPoint => onPaper(transform, toWorld(pose, local));
  switch (mark.kind) {
    case 'line': {
      const width = mark.width === undefined ? {} : { width: mark.width * k };
      const dash = mark.dash === undefined ? {} : { dash: mark.dash.map((each) => each * k) };
      return { kind: 'line', ink: mark.ink, points: mark.points.map(at), ...width, ...dash };
    }
    case 'area':
      return { kind: 'area', ink: mark.ink, ring: mark.ring.map(at) };
    case 'disc':
      return { ...mark, at: at(mark.at), radius: mark.radius * k };
    case 'words':
      return mark.size * k < SMALLEST_FONT_SIZE ? undefined : { ...mark, at: at(mark.at), size: mark.size * k };
  }
}
