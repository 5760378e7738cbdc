import { plainText, readAmount, unreadable } from './amount.ts';
import type { Radians, Reading } from './quantity.ts';

const EXAMPLE = 'an angle such as 45° or -22.5 deg';
const DEGREE: Radians = Math.PI / 180;
/** A larger angle is a slip: nothing is turned ten times round. */
const MOST: Radians = 20 * Math.PI;

const UNITS: Readonly<Record<string, Radians>> = {
  '°': DEGREE,
  deg: DEGREE,
  degree: DEGREE,
  degrees: DEGREE,
  rad: 1,
  radian: 1,
  radians: 1,
  turn: 2 * Math.PI,
  turns: 2 * Math.PI,
};

/** Reads `45`, `45°`, `22.5 deg`, `1.57 rad`, `1/4 turn`, `-90`, counter-clockwise positive; a bare number is degrees. */
export function readAngle(text: string): Reading<Radians> {
  const unread = unreadable(text, EXAMPLE);
  if (unread !== undefined) return { kind: 'refused', why: unread };
  const plain = plainText(text).replace(/º/g, '°');
  const sign = plain.startsWith('-') ? -1 : 1;
  const found = readAmount(plain.replace(/^[+-] ?/, ''));
  if (found.kind === 'refused') return found;
  if (found.kind === 'none') return { kind: 'refused', why: `"${text.trim()}" is not an angle. Write ${EXAMPLE}.` };
  const word = found.rest.trim().replace(/\.$/, '');
  const unit = word === '' ? DEGREE : UNITS[word];
  if (unit === undefined) {
    return { kind: 'refused', why: `"${word}" after ${found.text} is not a unit of angle. Write °, deg, rad or turn.` };
  }
  const size = found.value * unit;
  if (size > MOST) return { kind: 'refused', why: `${text.trim()} is more than ten turns. Write less than 3600°.` };
  const value = sign * size + 0;
  return word === '' ? { kind: 'read', value, note: `${found.text} was read as degrees.` } : { kind: 'read', value };
}

/** Degrees to the nearest tenth: `45°`, `22.5°`, `−90°`. What is not finite is a dash. */
export function printAngle(angle: Radians): string {
  if (!Number.isFinite(angle)) return '–';
  const tenths = Math.round(Math.abs(angle / DEGREE) * 10);
  return `${angle < 0 && tenths > 0 ? '−' : ''}${tenths / 10}°`;
}
