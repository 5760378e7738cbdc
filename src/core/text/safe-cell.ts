/** What a spreadsheet takes for the beginning of a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/** A text that a spreadsheet takes as a text: what would begin a formula has an apostrophe before it. */
export function safeCell(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

/** The text of a cell that `safeCell` wrote. */
export function plainCell(text: string): string {
  return text.startsWith("'") && FORMULA.test(text.slice(1)) ? text.slice(1) : text;
}
