import type { CourseReading } from '../core/files/read.ts';

/**
 * What reads courses is fetched with the first text: a first visit has nothing to read before its arena can be used.
 * Rejects where it cannot be fetched, and is fetched anew the next time.
 */
export async function fetchReader(): Promise<(text: string) => CourseReading> {
  try {
    const { readCourse } = await import('../core/files/read.ts');
    return readCourse;
  } catch (failure) {
    throw new DOMException(`the reader of courses could not be fetched: ${failure}`, 'NetworkError');
  }
}

export async function readCourseText(text: string): Promise<CourseReading> {
  const readCourse = await fetchReader();
  return readCourse(text);
}
