/** Rows as columns of plain text, two spaces between; a number's column is set right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => [...(row[column] ?? '')].length)));
  const right = head.map((_, column) => rows.every((row) => /^[−-]?\d/.test(row[column] ?? '')));
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) => {
        const room = ' '.repeat((widths[column] ?? 0) - [...cell].length);
        return right[column] ? room + cell : cell + room;
      })
      .join('  ')
      .trimEnd();
  return `${all.map(line).join('\n')}\n`;
}
