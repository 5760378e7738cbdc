import type { Held } from '../constraints/constraint.ts';
import { holdOf } from '../constraints/grip.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import type { Arena, Layout } from './course.ts';
import { heldNow, holdingSentence, holdingsOf, piecesOf, printedValue } from './resolved-constraints.ts';

/** A constraint with a number, as a little tape on the ground that can be read and typed over. */
export interface Tape {
  /** The constraint: `obstacle/constraint`, or the layout's own id. */
  readonly key: string;
  readonly kind: string;
  readonly unit: 'm' | 'rad';
  readonly from: Point;
  readonly to: Point;
  /** What it holds, or measures now when it only measures. Metres or radians. */
  readonly value: number;
  readonly printed: string;
  /** False: it only measures. */
  readonly holds: boolean;
  readonly says: string;
}

function ends(held: readonly Held[]): readonly [Point, Point] {
  const [first, second] = held.map((each): Point => {
    const { x, y } = holdOf(each);
    return { x, y };
  });
  const from = first ?? { x: 0, y: 0 };
  return [from, second ?? from];
}

const known = new WeakMap<
  Layout,
  { readonly arena: Arena; readonly unit: LengthUnit; readonly tapes: readonly Tape[] }
>();

/** The tapes of all constraints with a number, in the order of the file; the same list for the same layout. */
export function tapes(layout: Layout, arena: Arena, unit: LengthUnit): readonly Tape[] {
  const before = known.get(layout);
  if (before?.arena === arena && before.unit === unit) return before.tapes;
  const pieces = piecesOf(layout);
  const made = holdingsOf(layout).flatMap((holding): Tape[] => {
    const { key, kind, constraint } = holding;
    const held = heldNow(holding, arena, pieces);
    if (kind.unit === 'none' || held === undefined) return [];
    const { hold, side = 1 } = constraint;
    const value = hold ?? kind.measure(held, side);
    const [from, to] = kind.tape?.(held, side) ?? ends(held);
    const says = holdingSentence({ ...holding, constraint: { ...constraint, hold: value } }, layout, unit);
    const printed = printedValue(kind, value, unit);
    return [{ key, kind: kind.id, unit: kind.unit, from, to, value, printed, holds: hold !== undefined, says }];
  });
  known.set(layout, { arena, unit, tapes: made });
  return made;
}
