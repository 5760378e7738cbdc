import { blankCourse } from '../../core/course/blank.ts';
import type { Course } from '../../core/course/course.ts';
import { type CourseReading, readCourse } from '../../core/files/read.ts';
import { capitalized } from '../../core/text/sentence.ts';

const FILES = import.meta.glob<string>('../../../seeds/starters/*.course.json', { query: '?raw', import: 'default' });

/** A course to start from, read when it is chosen. */
export interface Starter {
  readonly name: string;
  /** From the file's name, for as long as the file is not read. */
  readonly title: string;
  read(): Promise<CourseReading>;
}

/** The starter that a first visit opens. */
const FIRST = 'larkhollow-novice';

/** Few of them, from small to large, for where there is no room for all. */
export const FEW_STARTERS: readonly string[] = ['home-six-poles', FIRST, 'larkhollow-open'];

/** All starters, by file name. */
export const STARTERS: readonly Starter[] = Object.entries(FILES)
  .map(([path, text]) => {
    const name = path.replace(/^.*\//, '').replace('.course.json', '');
    const words = name.replace(/^\d+-/, '').replaceAll('-', ' ');
    return {
      name,
      title: capitalized(words),
      read: async () => readCourse(await text()),
    };
  })
  .sort((a, b) => a.name.localeCompare(b.name));

/** The course for a first visit; an empty arena where the starter is missing or does not read. */
export async function firstCourse(): Promise<Course> {
  const reading = await STARTERS.find((each) => each.name === FIRST)?.read();
  return reading?.kind === 'read' ? reading.course : blankCourse();
}
