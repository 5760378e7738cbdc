/** Obstacles that a designer keeps: one as text and back, checked as strictly as a course. */
import { blankCourse } from '../course/blank.ts';
import { addObstacle } from '../course/edit-obstacles.ts';
import { SHELF_FORMAT, SHELF_VERSION, type ShelfItem, shelfItemSchema } from '../course/shelf-item.ts';
import { parsedJson } from './json.ts';
import { isJsonObject, jsonValueWords } from './json-path.ts';
import { schemaErrors } from './schema-errors.ts';
import { semanticErrors } from './semantic-validation.ts';

export type ShelfReading =
  | { readonly kind: 'read'; readonly item: ShelfItem }
  | { readonly kind: 'refused'; readonly why: string };

function rejection(why: string): ShelfReading {
  return { kind: 'refused', why };
}

/** A kept obstacle as text; equal items have equal bytes when their fields are in the same order. */
export function writeShelfItem({ id, title, obstacle }: ShelfItem): string {
  return `${JSON.stringify({ format: SHELF_FORMAT, version: SHELF_VERSION, id, title, obstacle }, undefined, 2)}\n`;
}

/** Reads the text of a kept obstacle. Never throws, whatever the text. */
export function readShelfItem(text: string): ShelfReading {
  const parsed = parsedJson(text.replace(/^\uFEFF/, ''));
  if (parsed.kind === 'refused') return parsed;
  if (!isJsonObject(parsed.value))
    return rejection(`This is no kept obstacle: it holds ${jsonValueWords(parsed.value)}.`);
  const { format, version } = parsed.value;
  if (format !== SHELF_FORMAT) {
    return rejection(`The format is ${jsonValueWords(format)}; a kept obstacle says "${SHELF_FORMAT}".`);
  }
  if (version !== SHELF_VERSION) {
    return rejection(
      `The version of the obstacle is ${jsonValueWords(version)}; this program reads version ${SHELF_VERSION}.`,
    );
  }
  const checked = shelfItemSchema.safeParse(parsed.value);
  if (!checked.success) return rejection(schemaErrors(parsed.value, checked.error.issues).slice(0, 3).join(' '));
  const { id, title, obstacle } = checked.data;
  // Whether it makes sense is asked as of an obstacle in a course.
  const [error] = semanticErrors(addObstacle(blankCourse(), obstacle));
  return error === undefined ? { kind: 'read', item: { id, title, obstacle } } : rejection(error);
}
