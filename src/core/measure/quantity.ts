/**
 * measure/ holds quantities and how people write them. Inside the program every length is in metres, every
 * angle in radians counter-clockwise from +x, every time in seconds; feet and inches exist only in this folder.
 */

/** A length in metres. */
export type Metres = number & { readonly unit?: 'm' };
/** An angle in radians, counter-clockwise positive. */
export type Radians = number & { readonly unit?: 'rad' };
/** A duration in seconds. */
export type Seconds = number & { readonly unit?: 's' };

/** The unit in which a course is read and printed. */
export type LengthUnit = 'ft' | 'm';

/** One foot, exact by definition (international yard and pound agreement, 1959). */
export const FOOT: Metres = 0.3048;
/** One inch, exact. */
export const INCH: Metres = 0.0254;

/** So many feet as the exact decimal: `feet(3)` is 0.9144 to the last bit, where 3 × FOOT is not. Good to 0.1 µm. */
export function feet(count: number): Metres {
  return Math.round(count * 3_048_000) / 1e7;
}

/** So many inches as the exact decimal. */
/** The least whole number of inches that is no shorter. What arithmetic made a billionth of an inch longer is as long. */
export function wholeInches(length: Metres): Metres {
  return inches(Math.ceil(length / INCH - 1e-9));
}

export function inches(count: number): Metres {
  return Math.round(count * 254_000) / 1e7;
}

/** A text that was understood, or the reason why not; `note` says what was assumed. */
export type Reading<Quantity extends number> =
  | { readonly kind: 'read'; readonly value: Quantity; readonly note?: string }
  | { readonly kind: 'refused'; readonly why: string };
