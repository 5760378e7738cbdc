/** The numbers of a link: rounded to what nobody measures, so that it stays short. */
import type { Pose } from '../../plane/pose.ts';

/** Digits after the point: a hundredth of a millimetre, and a ten-thousandth of a degree. */
const LENGTH_DIGITS = 5;
const DEGREE_DIGITS = 4;
/** Of numbers whose unit nobody looks at: micrometres and microradians. */
const OTHER_DIGITS = 6;

/** x and y in metres, and the angle in degrees: most obstacles lie at whole ones. */
export type PackedPose = [x: number, y: number, degrees: number];

/** Adding 0 turns −0 into 0. */
function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}

export function packedPose({ x, y, angle }: Pose): PackedPose {
  return [rounded(x, LENGTH_DIGITS), rounded(y, LENGTH_DIGITS), rounded((angle * 180) / Math.PI, DEGREE_DIGITS)];
}

export function unpackedPose([x, y, degrees]: Readonly<PackedPose>): Pose {
  return { x, y, angle: (degrees * Math.PI) / 180 };
}

/** A value of JSON with all of its numbers rounded. */
export function roundedNumbers(value: unknown): unknown {
  if (typeof value === 'number') return rounded(value, OTHER_DIGITS);
  if (Array.isArray(value)) return value.map(roundedNumbers);
  return typeof value === 'object' && value !== null ? roundedFields(value) : value;
}

/** An object with all of its numbers rounded, without fields that are undefined. */
export function roundedFields(value: object): Record<string, unknown> {
  const fields = Object.entries(value).filter(([, item]) => item !== undefined);
  return Object.fromEntries(fields.map(([key, item]) => [key, roundedNumbers(item)]));
}
