import type { Reading, Seconds } from './quantity.ts';

const MINUTE = 60;
const HOUR = 3600;

/** To the nearest second: `38 s`, `4 min 05 s`; from an hour on to the nearest minute: `1 h 02 min`. Else a dash. */
export function printDuration(duration: Seconds): string {
  if (!Number.isFinite(duration) || duration < 0) return '–';
  const seconds = Math.round(duration);
  if (seconds < MINUTE) return `${seconds} s`;
  if (seconds < HOUR) return `${Math.floor(seconds / MINUTE)} min ${two(seconds % MINUTE)} s`;
  const minutes = Math.round(seconds / MINUTE);
  return `${Math.floor(minutes / 60)} h ${two(minutes % 60)} min`;
}

/** To the nearest minute, for what is estimated: `13 min`, `1 h 02 min`; `under a minute`. What is not finite is a dash. */
export function printMinutes(duration: Seconds): string {
  if (!Number.isFinite(duration) || duration < 0) return '–';
  if (duration >= HOUR - MINUTE / 2) return printDuration(Math.max(HOUR, duration));
  return duration < MINUTE / 2 ? 'under a minute' : `${Math.round(duration / MINUTE)} min`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

const UNITS: Readonly<Record<string, Seconds>> = {
  s: 1,
  sec: 1,
  second: 1,
  seconds: 1,
  min: MINUTE,
  minute: MINUTE,
  minutes: MINUTE,
  h: HOUR,
  hour: HOUR,
  hours: HOUR,
};
const EXAMPLE = 'a time such as 30 s, 1 min 30 s, 1:30 h or 2 h';
/** A day: no class takes longer. */
const MOST: Seconds = 24 * HOUR;

/**
 * Parts of a duration, each with its unit. A number alone is in the bare unit; one after minutes or hours in the next
 * smaller unit, as people say it. Undefined where a part is not one.
 */
function sumOfParts(text: string, bare: Seconds): Seconds | undefined {
  const clock = /^(\d+):([0-5]\d) ?(h|min)?$/.exec(text);
  if (clock !== null) {
    // `1:30` is minutes and seconds everywhere, unless hours are said.
    const unit = clock[3] === 'h' ? HOUR : MINUTE;
    return Number(clock[1]) * unit + Number(clock[2]) * (unit / 60);
  }
  let total: Seconds = 0;
  let rest = text;
  let next: Seconds | undefined = bare;
  while (rest !== '') {
    const part = /^(\d+(?:[.,]\d+)?) ?([a-z]*)\.? ?/.exec(rest);
    const unit: Seconds | undefined = part?.[2] === '' ? next : UNITS[part?.[2] ?? ''];
    if (part === null || unit === undefined) return undefined;
    total += Number(part[1]?.replace(',', '.')) * unit;
    next = part[2] === '' || unit === 1 ? undefined : unit / 60;
    rest = rest.slice(part[0].length);
  }
  return total;
}

/** Reads `30 s`, `1 min 30 s`, `2 h`, `1:30`; a bare number is in the unit that is usual for the field. */
export function readDuration(text: string, bare: 's' | 'min'): Reading<Seconds> {
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ');
  const value = plain === '' ? undefined : sumOfParts(plain, bare === 's' ? 1 : MINUTE);
  if (value === undefined) return { kind: 'refused', why: `"${text.trim()}" is not a time. Write ${EXAMPLE}.` };
  if (value > MOST) return { kind: 'refused', why: `${text.trim()} is more than a day. Write 24 h or less.` };
  return { kind: 'read', value };
}
