/** What a spreadsheet takes for the beginning of a formula; tab and return are skipped by some before they look. */
const FORMULA = /^[=+\-@\t\r]/;
/** A number alone is never a formula. */
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/**
 * A text as the cell of a table that spreadsheets open: one that would be taken for a formula gets an apostrophe before it, which
 * spreadsheets take for "this is text". Numbers stay.
 */
export function safeCell(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}
