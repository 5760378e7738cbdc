import { printAngle } from '../measure/angle.ts';
import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Param, Value } from './params.ts';

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

/** The same inside a sentence: a choice by its label. */
export function paramWords(param: Param, value: Value, unit: LengthUnit): string {
  return param.kind === 'choice'
    ? (param.options[value] ?? String(value)).toLowerCase()
    : paramText(param, value, unit);
}
