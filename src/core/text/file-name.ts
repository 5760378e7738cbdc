/** File systems limit the length of a name, and an ending is still added: signs, and bytes of UTF-8 (255 on most disks). */
const LONGEST = 80;
const MOST_BYTES = 200;

/** How many bytes of UTF-8 a sign takes. */
function byteCount(sign: string): number {
  const code = sign.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

function shortened(text: string): string {
  let out = '';
  let bytes = 0;
  for (const sign of [...text].slice(0, LONGEST)) {
    bytes += byteCount(sign);
    if (bytes > MOST_BYTES) break;
    out += sign;
  }
  return out;
}

/** A title as a file name without its ending: letters and digits of any script, hyphens between; `course` where none is left. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Mark}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return shortened(plain).replace(/-+$/, '') || 'course';
}

/** The file of a course, and of one of its sheets by its id; the ending is without the dot. */
export function courseFileName(title: string): string {
  return `${fileName(title)}.course.json`;
}
export function sheetFileName(title: string, sheet: string, ending: string): string {
  return `${fileName(title)}-${sheet}.${ending}`;
}

/** The file of one page of a sheet; the only page has no number. */
export function pageFileName(
  title: string,
  sheet: string,
  { page, of, ending }: { readonly page: number; readonly of: number; readonly ending: string },
): string {
  return sheetFileName(title, of > 1 ? `${sheet}-${page}` : sheet, ending);
}
