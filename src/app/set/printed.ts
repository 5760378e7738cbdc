import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { capitalized } from '../../core/text/sentence.ts';

/** `lineRadius` as `Line radius`. */
export function spelled(key: string): string {
  const words = key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
  return capitalized(words);
}

/** A fact that a kind reports about itself; the kind of quantity follows from its name. */
export function printedFact(key: string, value: number, unit: LengthUnit): string {
  if (/angle|turn/i.test(key)) return printAngle(value);
  if (/count|poles|landings/i.test(key)) return String(Math.round(value));
  return printLength(value, unit);
}
