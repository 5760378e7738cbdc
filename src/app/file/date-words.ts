/** A time in the person's own calendar; `saved` in milliseconds since 1970. */
export function savedAtWords(saved: number): string {
  return new Date(saved).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
