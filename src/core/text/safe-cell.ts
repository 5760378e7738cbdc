/** What spreadsheets take for the beginning of a formula, also in its wide form, after blanks that some of them leave out. */
const FORMULA = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/;
/** A number is only a number, whatever its sign. */
const NUMBER = /^\s*[+-]?\d+(?:[.,]\d+)?\s*$/;

/**
 * A text as a cell of a table that spreadsheets open. One that they would work out as a formula gets an apostrophe before it,
 * as a person types it to say "this is text"; all others are left as they are.
 */
export function safeCell(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/** The text of a cell that `safeCell` may have written. */
export function plainCell(cell: string): string {
  const text = cell.slice(1);
  return cell !== text && safeCell(text) === cell ? text : cell;
}
