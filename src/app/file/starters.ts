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

/** Few of them, from small to large, for where there is no room for all. */
export const FEW_STARTERS: readonly string[] = ['home-six-poles', 'larkhollow-novice', 'larkhollow-open'];

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
