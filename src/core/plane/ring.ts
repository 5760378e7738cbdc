import type { Point } from './point.ts';

/** A simple closed outline, counter-clockwise, the first point not repeated at the end. */
export type Ring = readonly Point[];

/** An axis-parallel box. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The rectangle of the given size about the origin, long side along x. */
export function rectangle(length: number, width: number): Ring {
  const x = length / 2;
  const y = width / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}
