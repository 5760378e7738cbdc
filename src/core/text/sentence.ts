/** text/ has the small parts of sentences and names that every module writes. It knows no unit and no course. */

/** The text with its first letter large. */
export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The text with its first letter small, to stand inside a sentence. What stands for a shape, as in back-through L, stays. */
export function uncapitalized(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** "a, b and c". */
export function andList(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
