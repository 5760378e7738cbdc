import { printAngle } from '../../measure/angle.ts';
import { printDuration } from '../../measure/duration.ts';
import { printLength } from '../../measure/length.ts';
import type { LengthUnit } from '../../measure/quantity.ts';
import type { Band, Limit, Quantity } from '../check.ts';
import { bandOf, isPractice } from '../rulebooks/rulebooks.ts';

/** How findings tell values and limits, in one place, so that the same value reads alike in every sentence. */

/** A value of the given quantity, SI, as a person in the course's unit says it. */
export function valueWords(quantity: Quantity, value: number, unit: LengthUnit): string {
  switch (quantity) {
    case 'length':
      return printLength(value, unit);
    case 'angle':
      return printAngle(value);
    case 'time':
      return printDuration(value);
    case 'count':
      return String(value);
  }
}

function quantityOf(limit: Limit): Quantity {
  if (limit.unit === 'count') return 'count';
  if (limit.unit === 'degree') return 'angle';
  return limit.unit === 's' ? 'time' : 'length';
}

/** A book printed in the other system is quoted in its own unit: a rounded value would look like the rule. */
function ownUnitWords(limit: Limit, unit: LengthUnit): string {
  const metric = limit.unit === 'cm' || limit.unit === 'm';
  const imperial = limit.unit === 'in' || limit.unit === 'ft';
  if (limit.house !== undefined || (unit === 'ft' ? !metric : !imperial)) return '';
  const ends = [limit.least, limit.most].filter((end) => end !== undefined);
  return ` (${ends.join(' to ')} ${limit.unit} in the book)`;
}

/** "3' to 3' 6" or a whole multiple", "at least 2' 6"", "at most 10°". */
export function bandWords(limit: Limit, unit: LengthUnit): string {
  const { least, most, multiples }: Band = bandOf(limit);
  const print = (value: number): string => valueWords(quantityOf(limit), value, unit);
  const own = ownUnitWords(limit, unit);
  if (least !== undefined && most !== undefined) {
    const ends = least === most ? print(least) : `${print(least)} to ${print(most)}`;
    return `${ends}${own}${multiples ? ' or a whole multiple' : ''}`;
  }
  if (least !== undefined) return `at least ${print(least)}${own}`;
  return `at most ${print(most ?? 0)}${own}`;
}

/** The measured value; printed more finely where rounding would make it look like the limit that it misses. */
export function measuredWords(limit: Limit, value: number, unit: LengthUnit): string {
  const quantity = quantityOf(limit);
  const printed = valueWords(quantity, value, unit);
  if (quantity !== 'length') return printed;
  const { least, most } = bandOf(limit);
  if (least !== undefined && value < least && printed === printLength(least, unit)) return `just under ${printed}`;
  if (most !== undefined && value > most && printed === printLength(most, unit)) return `just over ${printed}`;
  return printed;
}

/** Whose limit it is: the book's, the show's or practice's. */
export function askerWords(limit: Limit): string {
  if (limit.house !== undefined) return 'the house rule asks for';
  return isPractice(limit) || limit.grade === 'E' ? 'good practice asks for' : 'the book asks for';
}
