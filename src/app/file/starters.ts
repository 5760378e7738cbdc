import { type CourseReading, readCourse } from '../../core/files/read.ts';

const FILES = import.meta.glob<string>('../../../seeds/*.course.json', { query: '?raw', import: 'default' });

/** A course to start from, read when it is chosen. */
export interface Starter {
  readonly name: string;
  readonly title: string;
  read(): Promise<CourseReading>;
}

/** All seeds, by file name. */
export const STARTERS: readonly Starter[] = Object.entries(FILES)
  .map(([path, text]) => {
    const name = path.replace(/^.*\//, '').replace('.course.json', '');
    const words = name.replace(/^\d+-/, '').replaceAll('-', ' ');
    return {
      name,
      title: words.charAt(0).toUpperCase() + words.slice(1),
      read: async () => readCourse(await text()),
    };
  })
  .sort((a, b) => a.name.localeCompare(b.name));
