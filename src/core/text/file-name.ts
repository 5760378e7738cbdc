/** File systems limit the length of a name, and an ending is still added, signs. */
const LONGEST = 80;

/** A title as a file name without its ending: letters and digits of any script, hyphens between; `course` where none is left. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Mark}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return [...plain].slice(0, LONGEST).join('').replace(/-+$/, '') || 'course';
}

/** The file of a course, and of one of its sheets by its id; the ending is without the dot. */
export function courseFileName(title: string): string {
  return `${fileName(title)}.course.json`;
}
export function sheetFileName(title: string, sheet: string, ending: string): string {
  return `${fileName(title)}-${sheet}.${ending}`;
}

/** The file of a score card, and of its table. */
export function scoreFileName(title: string, ending: 'csv' | 'json'): string {
  return `${fileName(title)}-score.${ending}`;
}
