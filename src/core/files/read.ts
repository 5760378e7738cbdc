/**
 * files/ turns a course into the text of a file and back. What is read is either a whole course or a refusal with its
 * reasons; a mend loses nothing and is told.
 */
import { type Course, FORMAT, VERSION } from '../course/course.ts';
import { courseSchema } from '../course/schema.ts';
import { parsedJson } from './json.ts';
import { foundWords, isGroup } from './json-path.ts';
import { MIGRATIONS, migrated } from './migrations.ts';
import { mended } from './repairs.ts';
import { faultsOf } from './schema-errors.ts';
import { nonsense } from './semantic-validation.ts';

export type CourseReading =
  | { readonly kind: 'read'; readonly course: Course; readonly mends: readonly string[] }
  | { readonly kind: 'refused'; readonly why: string };

/** Signs. A day's courses take some hundred thousand; more is not a course file. */
const LONGEST = 20_000_000;
/** More faults than this help nobody. */
const TOLD = 3;

function refused(why: string): CourseReading {
  return { kind: 'refused', why };
}

function told(faults: readonly string[]): CourseReading {
  const more = faults.length - TOLD;
  return refused([...faults.slice(0, TOLD), ...(more > 0 ? [`And ${more} more of the kind.`] : [])].join(' '));
}

/** Reads the text of a course file. Never throws, whatever the text. */
export function readCourse(text: string): CourseReading {
  // Some editors put a byte order mark before the text.
  const bare = text.replace(/^\uFEFF/, '');
  if (bare.trim() === '') return refused('The file is empty.');
  if (bare.length > LONGEST) {
    return refused(`The file is ${bare.length} signs long; ${LONGEST} is the most that a course file may be.`);
  }
  const parsed = parsedJson(bare);
  return parsed.kind === 'refused' ? parsed : readFile(parsed.value);
}

function readFile(file: unknown): CourseReading {
  if (!isGroup(file)) return refused(`The file is JSON, but no course: it holds ${foundWords(file)}.`);
  const { format, version } = file;
  if (format === undefined) {
    return refused(`The file is JSON, but no course: it has no "format"; a course says "${FORMAT}" there.`);
  }
  if (format !== FORMAT) return refused(`The file is of the format ${foundWords(format)}; a course says "${FORMAT}".`);
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return refused(
      `The version of the file is ${foundWords(version)}; a whole number such as ${VERSION} would be right.`,
    );
  }
  if (version > VERSION) {
    return refused(
      `The file has version ${version}, and this program reads up to version ${VERSION}. Open it with a newer Polewright.`,
    );
  }
  const current = migrated(file, version, { to: VERSION, steps: MIGRATIONS });
  if (current.kind === 'refused') return current;
  const checked = courseSchema.safeParse(current.value);
  if (!checked.success) return told(faultsOf(current.value, checked.error.issues));
  const faults = nonsense(checked.data);
  if (faults.length > 0) return told(faults);
  const { course, mends } = mended(checked.data);
  return { kind: 'read', course, mends: [...current.mends, ...mends] };
}
