import { pattern } from './pattern.ts';
import type { Sheet } from './sheet.ts';

/** Every page that can be printed, in the order in which they are offered. */
export const SHEETS: readonly Sheet[] = [pattern];
