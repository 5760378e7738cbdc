import type { Reading, Seconds } from './quantity.ts';

const DAY: Seconds = 86_400;
const EXAMPLE = 'a time such as 8:30, 14:05 or 2:05 pm';

/** Seconds of the day as `08:05`; the day after goes on past 24. To the nearest minute. What is not finite is a dash. */
export function printTimeOfDay(seconds: Seconds): string {
  if (!Number.isFinite(seconds) || seconds < 0) return '–';
  const minutes = Math.round(seconds / 60);
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

/** Reads `8`, `8:30`, `8.30`, `14:05`, `2:05 pm` as seconds of the day. */
export function readTimeOfDay(text: string): Reading<Seconds> {
  const refused = { kind: 'refused', why: `"${text.trim()}" is not a time of the day. Write ${EXAMPLE}.` } as const;
  const [, hours, minutes = '0', half] =
    /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:([ap])\.?(?:m\.?)?)?$/.exec(text.trim().toLowerCase()) ?? [];
  if (hours === undefined || Number(minutes) > 59) return refused;
  const hour = Number(hours);
  if (half !== undefined && (hour < 1 || hour > 12)) return refused;
  const inDay = half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  const value = inDay * 3600 + Number(minutes) * 60;
  return value > DAY ? refused : { kind: 'read', value };
}
