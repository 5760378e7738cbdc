import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { readTyped } from '../../core/measure/typed.ts';
import type { ChoiceParam, Param, Value } from '../../core/pieces/params.ts';
import { messages } from '../../words/desk.ts';

/** A typed parameter that was understood, or the sentence that says why not. */
export type ParamReading =
  | { readonly kind: 'read'; readonly value: Value; readonly note?: string }
  | { readonly kind: 'refused'; readonly why: string };

/** Tolerance at the ends of a band, so that a bound typed in inches is not rejected for a rounding error. */
const SLACK = 1e-9;

/** A value as people read it. */
export function printValue(value: Value, param: Param, unit: LengthUnit): string {
  if (param.kind === 'choice') return param.options[String(value)] ?? String(value);
  const number = Number(value);
  switch (param.kind) {
    case 'length':
      return printLength(number, unit);
    case 'angle':
      return printAngle(number);
    case 'count':
      return String(Math.round(number));
    case 'fraction':
      return printFraction(number);
  }
}

/** Thirds and quarters as people say them, the rest as a decimal. */
function printFraction(value: number): string {
  for (const parts of [2, 3, 4]) {
    const top = Math.round(value * parts);
    if (top > 0 && top < parts && Math.abs(value - top / parts) < 1e-3) return `${top}/${parts}`;
  }
  return String(Math.round(value * 1000) / 1000);
}

function readChoice(text: string, param: ChoiceParam): ParamReading {
  const asked = text.trim().toLowerCase();
  const found = Object.entries(param.options).find(
    ([id, title]) => id.toLowerCase() === asked || title.toLowerCase() === asked,
  );
  if (found !== undefined) return { kind: 'read', value: found[0] };
  return { kind: 'refused', why: messages.notChoice(param.label, text, Object.values(param.options)) };
}

/** Reads what a person typed for a parameter, inside its bounds. */
export function readValue(text: string, param: Param, unit: LengthUnit): ParamReading {
  if (param.kind === 'choice') return readChoice(text, param);
  const typed = readTyped(param.kind, text, unit);
  if (typed.kind === 'refused') return typed;
  const value = Number(typed.value);
  if (value >= param.least - SLACK && value <= param.most + SLACK) return typed;
  const [asked, least, most] = [value, param.least, param.most].map((each) => printValue(each, param, unit));
  return { kind: 'refused', why: messages.outOfBand(param.label, asked ?? '', least ?? '', most ?? '') };
}
