import * as z from 'zod/mini';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { LONGEST_NAME } from './course.ts';
import { SCHEMA_PARTS } from './schema.ts';

/** An obstacle that a designer keeps for other courses, with its pieces, what holds them and the ways to ride it. */
export interface ShelfItem {
  readonly id: string;
  readonly title: string;
  readonly obstacle: Obstacle;
}

/** What the text of a kept obstacle says it is. */
export const SHELF_FORMAT = 'polewright-obstacle';
export const SHELF_VERSION = 1;

export const shelfItemSchema = z.strictObject({
  format: z.literal(SHELF_FORMAT),
  version: z.literal(SHELF_VERSION),
  id: SCHEMA_PARTS.id,
  title: z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME)),
  obstacle: SCHEMA_PARTS.obstacle,
});
