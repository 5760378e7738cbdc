import { FOOT, INCH, type Metres } from '../measure/quantity.ts';
import type { Infeasible } from './obstacle.ts';

/** A length for a refusal, where no course and so no unit is known: `2 ft 8 in (0.81 m)`, to the nearest quarter inch. */
export function lengthWords(length: Metres): string {
  const quarters = Math.round((Math.abs(length) / INCH) * 4);
  const feet = Math.floor(quarters / 48);
  const inches = quarters / 4 - feet * 12;
  const parts = [...(feet === 0 ? [] : [`${feet} ft`]), ...(inches === 0 && feet > 0 ? [] : [`${inches} in`])];
  return `${length < 0 ? '−' : ''}${parts.join(' ')} (${length.toFixed(2).replace('-', '−')} m)`;
}

/** A radius or another length that nobody tapes: `6.8 ft (2.07 m)`. */
export function roughLength(length: Metres): string {
  return `${Number((length / FOOT).toFixed(1))} ft (${length.toFixed(2)} m)`;
}

/** The same within a bracket: `(10 ft, 3.05 m)`. */
export function bracketedLength(length: Metres): string {
  return `(${Number((length / FOOT).toFixed(1))} ft, ${length.toFixed(2)} m)`;
}

export function infeasible(
  why: string,
  nearest: Infeasible['nearest'],
  facts: Readonly<Record<string, number>> = {},
): Infeasible {
  return { kind: 'infeasible', why, facts, ...(nearest === undefined ? {} : { nearest }) };
}
