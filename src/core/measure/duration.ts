import type { Seconds } from './quantity.ts';

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

function two(value: number): string {
  return String(value).padStart(2, '0');
}
