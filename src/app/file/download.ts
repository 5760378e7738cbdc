import type { Course } from '../../core/course/course.ts';
import { writeCourse } from '../../core/files/write.ts';

/** A course as a file. */
export function courseBlob(course: Course): Blob {
  return new Blob([writeCourse(course)], { type: 'application/json' });
}

/** Hands a file to the person as a download. */
export function saveDownload(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken hold of the file by then; a minute is generous.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
