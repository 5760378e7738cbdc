import { readAngle } from './angle.ts';
import { readCount, readFraction } from './count.ts';
import { readDuration } from './duration.ts';
import { readLength } from './length.ts';
import type { LengthUnit, Reading } from './quantity.ts';

/** What a field holds: it says how its text is read. */
export type TypedKind = 'length' | 'angle' | 'count' | 'fraction' | 'time';

/** Reads what was typed into a field, SI. A bare length is in the given unit, a bare time in seconds. */
export function readTyped(kind: TypedKind, text: string, unit: LengthUnit): Reading<number> {
  switch (kind) {
    case 'length':
      return readLength(text, unit);
    case 'angle':
      return readAngle(text);
    case 'count':
      return readCount(text);
    case 'fraction':
      return readFraction(text);
    case 'time':
      return readDuration(text, 's');
  }
}
