import { plainText, readAmount, unreadable } from './amount.ts';
import type { Reading } from './quantity.ts';

/** Reads a whole number, 0 or more: `5`. */
export function readCount(text: string): Reading<number> {
  const unread = unreadable(text, 'a whole number such as 5');
  if (unread !== undefined) return { kind: 'refused', why: unread };
  const found = readAmount(plainText(text));
  if (found.kind === 'refused') return found;
  if (found.kind === 'none' || found.rest.trim() !== '' || !found.whole) {
    return { kind: 'refused', why: `${text.trim()} is not a whole number. Write one such as 5.` };
  }
  if (found.value > Number.MAX_SAFE_INTEGER) return { kind: 'refused', why: `${text.trim()} is too large to count.` };
  return { kind: 'read', value: found.value };
}

/** Reads a share of a whole, 0 … 1: `2/3`, `0.67`, `67 %`, `½`. */
export function readFraction(text: string): Reading<number> {
  const example = 'a share such as 2/3, 0.67 or 67 %';
  const unread = unreadable(text, example);
  if (unread !== undefined) return { kind: 'refused', why: unread };
  const found = readAmount(plainText(text));
  if (found.kind === 'refused') return found;
  const percent = found.kind === 'amount' && /^ ?(%|percent|per cent)$/.test(found.rest);
  if (found.kind === 'none' || (!percent && found.rest.trim() !== '')) {
    return { kind: 'refused', why: `${text.trim()} is not a share of a whole. Write ${example}.` };
  }
  const value = percent ? found.value / 100 : found.value;
  if (value > 1) {
    const right = percent ? '100 % or less' : `${found.value} % if percent is meant, or 1 or less`;
    return { kind: 'refused', why: `${text.trim()} is more than the whole. Write ${right}.` };
  }
  return { kind: 'read', value };
}
