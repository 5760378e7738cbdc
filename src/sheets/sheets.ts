import { designersCopy } from './copy.ts';
import { gateSheet } from './gate.ts';
import { orderOfGo } from './go.ts';
import { judge } from './judge.ts';
import { pattern } from './pattern.ts';
import { ringCard } from './ring.ts';
import { scribe } from './scribe.ts';
import { setUp } from './setout.ts';
import type { Sheet } from './sheet.ts';
import { truckList } from './truck.ts';

/** Every page that can be printed, in the order in which they are offered. */
export const SHEETS: readonly Sheet[] = [
  pattern,
  judge,
  scribe,
  orderOfGo,
  gateSheet,
  setUp,
  ringCard,
  truckList,
  designersCopy,
];

/** The sheet with this id; the pattern where there is none. */
export function sheetById(id: string): Sheet {
  return SHEETS.find((sheet) => sheet.id === id) ?? pattern;
}
