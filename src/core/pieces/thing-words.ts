import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { uncapitalized } from '../text/sentence.ts';
import { completeValues, type Param, type Value, type Values } from './params.ts';
import type { PieceKind } from './piece.ts';

/** What is told of a thing beside its name and length: what is not usual, or also which of the usual choices it is. */
export type ThingDetail = 'unusual' | 'choices';

/** What a thing is called, in parts: `12'`, `pole`, and `plain`. */
export interface ThingParts {
  /** Absent: it is not known by its length. */
  readonly length?: string;
  readonly noun: string;
  readonly traits: readonly string[];
}

/** Values of one parameter are the same within this, metres or radians. */
const SAME = 1e-6;

function trait(param: Param, value: Value | undefined, unit: LengthUnit, detail: ThingDetail): readonly string[] {
  if (param.kind === 'choice') {
    const isTold = detail === 'choices' || value !== param.usual;
    return isTold ? [uncapitalized(param.options[String(value)] ?? String(value))] : [];
  }
  return typeof value === 'number' && Math.abs(value - param.usual) > SAME
    ? [`${uncapitalized(param.label)} ${printLength(value, unit)}`]
    : [];
}

/** What a thing of these values is called. How it is set up (its rigging) is left out. */
export function thingParts(kind: PieceKind, given: Values, unit: LengthUnit, detail: ThingDetail): ThingParts {
  const { params, handling, title, extent } = kind;
  const rigging = handling?.rigging ?? [];
  const values = completeValues(params, given);
  const isNamedByLength = extent === 'long' && params.length !== undefined;
  const traits = Object.entries(params).flatMap(([key, param]) =>
    rigging.includes(key) || (isNamedByLength && key === 'length') ? [] : trait(param, values[key], unit, detail),
  );
  const noun = uncapitalized(title);
  return isNamedByLength ? { length: printLength(kind.figure(values).length, unit), noun, traits } : { noun, traits };
}

/** "12' pole", "8' pole, plain", "marker": what a crew looks for on the ground or on the truck. */
export function thingWords(kind: PieceKind, values: Values, unit: LengthUnit, detail: ThingDetail = 'unusual'): string {
  const { length, noun, traits } = thingParts(kind, values, unit, detail);
  return [length === undefined ? noun : `${length} ${noun}`, ...traits].join(', ');
}
