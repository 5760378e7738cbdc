/** A moment as the person's own calendar and clock have it; `saved` in milliseconds since 1970. */
export function savedAtWords(saved: number): string {
  return new Date(saved).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
