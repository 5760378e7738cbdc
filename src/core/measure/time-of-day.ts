import type { Reading, Seconds } from './quantity.ts';

const MINUTE = 60;
const HOUR = 3600;
const DAY: Seconds = 24 * HOUR;
const EXAMPLE = 'a time of day such as 8:30, 1:15 pm or 13:15';

/** A time of day, seconds from midnight, to the nearest minute: `8:30 am`, `1:05 pm`; after midnight with `next day`. */
export function printTimeOfDay(time: Seconds): string {
  if (!Number.isFinite(time) || time < 0) return '–';
  const minutes = Math.round(time / MINUTE);
  const hours = Math.floor(minutes / 60) % 24;
  const half = hours < 12 ? 'am' : 'pm';
  const clock = `${hours % 12 === 0 ? 12 : hours % 12}:${String(minutes % 60).padStart(2, '0')} ${half}`;
  return minutes * MINUTE >= DAY ? `${clock}, next day` : clock;
}

/** Reads `8`, `8:30`, `8.30`, `8:30 am`, `1 pm`, `13:15`, `noon`; without am or pm the hours go up to 23. */
export function readTimeOfDay(text: string): Reading<Seconds> {
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (plain === 'noon') return { kind: 'read', value: 12 * HOUR };
  const found = /^(\d{1,2})(?:[:.h](\d{2}))? ?(am|pm|a\.m\.|p\.m\.)?$/.exec(plain);
  if (found === null) return { kind: 'refused', why: `"${text.trim()}" is not a time of day. Write ${EXAMPLE}.` };
  const [hours, minutes, half] = [Number(found[1]), Number(found[2] ?? 0), found[3]?.charAt(0)];
  if (minutes > 59) return { kind: 'refused', why: `${minutes} minutes are more than an hour. Write ${EXAMPLE}.` };
  if (half === undefined) {
    if (hours > 23) return { kind: 'refused', why: `A day has no hour ${hours}. Write ${EXAMPLE}.` };
    return { kind: 'read', value: hours * HOUR + minutes * MINUTE };
  }
  if (hours < 1 || hours > 12) return { kind: 'refused', why: `There is no ${hours} ${half}m. Write ${EXAMPLE}.` };
  return { kind: 'read', value: ((hours % 12) + (half === 'p' ? 12 : 0)) * HOUR + minutes * MINUTE };
}
