import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import type { Param, Value } from '../../core/pieces/params.ts';
import { capitalized } from '../../core/text/sentence.ts';

/** Fractions that people say in words of two numbers. */
const SIMPLE: readonly (readonly [number, string])[] = [
  [1 / 2, '1/2'],
  [1 / 3, '1/3'],
  [2 / 3, '2/3'],
  [1 / 4, '1/4'],
  [3 / 4, '3/4'],
];

/** A parameter's value as it stands in its field. */
export function paramText(param: Param, value: Value, unit: LengthUnit): string {
  if (typeof value === 'string') return value;
  switch (param.kind) {
    case 'length':
      return printLength(value, unit);
    case 'angle':
      return printAngle(value);
    case 'fraction':
      return SIMPLE.find(([each]) => Math.abs(each - value) < 1e-6)?.[1] ?? String(Math.round(value * 1000) / 1000);
    case 'count':
    case 'choice':
      return String(value);
  }
}

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
