import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { TOUCH } from '../plane/point.ts';
import type { Arena } from './course.ts';

/** The two sides of an arena, the long one first: `200' by 100'`. */
export function arenaSizeWords({ length, width }: Arena, unit: LengthUnit): string {
  return `${printLength(length, unit)} by ${printLength(width, unit)}`;
}

/** Whether two arenas have the same sides. */
export function isSameSize(a: Arena, b: Arena): boolean {
  return Math.abs(a.length - b.length) < TOUCH && Math.abs(a.width - b.width) < TOUCH;
}
