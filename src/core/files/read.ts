/**
 * files/ turns a course into the text of a file and back. Reading gives a whole course, or a rejection with its
 * reasons; a repair loses nothing and is reported.
 */
import { type Course, FORMAT, VERSION } from '../course/course.ts';
import { courseSchema } from '../course/schema.ts';
import { parsedJson } from './json.ts';
import { isJsonObject, jsonValueWords } from './json-path.ts';
import { MIGRATIONS, migrate } from './migrations.ts';
import { repair } from './repairs.ts';
import { schemaErrors } from './schema-errors.ts';
import { semanticErrors } from './semantic-validation.ts';

export type CourseReading =
  | { readonly kind: 'read'; readonly course: Course; readonly repairs: readonly string[] }
  | { readonly kind: 'refused'; readonly why: string };

/** Signs. A day's courses take some hundred thousand; more is not a course file. */
const LONGEST = 20_000_000;
/** More errors than this help nobody. */
const MOST_ERRORS = 3;

function rejection(why: string): CourseReading {
  return { kind: 'refused', why };
}

function rejectionListing(errors: readonly string[]): CourseReading {
  const more = errors.length - MOST_ERRORS;
  return rejection([...errors.slice(0, MOST_ERRORS), ...(more > 0 ? [`And ${more} more of the kind.`] : [])].join(' '));
}

/** Reads the text of a course file. Never throws, whatever the text. */
export function readCourse(text: string): CourseReading {
  // Some editors put a byte order mark before the text.
  const bare = text.replace(/^\uFEFF/, '');
  if (bare.trim() === '') return rejection('The file is empty.');
  if (bare.length > LONGEST) {
    return rejection(`The file is ${bare.length} signs long; ${LONGEST} is the most that a course file may be.`);
  }
  const parsed = parsedJson(bare);
  return parsed.kind === 'refused' ? parsed : readFile(parsed.value);
}

function readFile(file: unknown): CourseReading {
  if (!isJsonObject(file)) return rejection(`The file is JSON, but no course: it holds ${jsonValueWords(file)}.`);
  const { format, version } = file;
  if (format === undefined) {
    return rejection(`The file is JSON, but no course: it has no "format"; a course says "${FORMAT}" there.`);
  }
  if (format !== FORMAT)
    return rejection(`The file is of the format ${jsonValueWords(format)}; a course says "${FORMAT}".`);
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return rejection(
      `The version of the file is ${jsonValueWords(version)}; a whole number such as ${VERSION} would be right.`,
    );
  }
  if (version > VERSION) {
    return rejection(
      `The file has version ${version}, and this program reads up to version ${VERSION}. Open it with a newer Polewright.`,
    );
  }
  const current = migrate(file, version, { to: VERSION, steps: MIGRATIONS });
  if (current.kind === 'refused') return current;
  const checked = courseSchema.safeParse(current.value);
  if (!checked.success) return rejectionListing(schemaErrors(current.value, checked.error.issues));
  const errors = semanticErrors(checked.data);
  if (errors.length > 0) return rejectionListing(errors);
  const { course, repairs } = repair(checked.data);
  return { kind: 'read', course, repairs: [...current.repairs, ...repairs] };
}
