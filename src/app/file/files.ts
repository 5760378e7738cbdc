import { fileOpen, fileSave } from 'browser-fs-access';
import type { Course } from '../../core/course/course.ts';
import { type CourseReading, readCourse } from '../../core/files/read.ts';
import { courseFileName } from '../../core/text/file-name.ts';
import { fileWords } from '../../words/file.ts';
import { courseBlob } from './download.ts';

const KIND = { mimeTypes: ['application/json'], extensions: ['.json'], description: fileWords.course };

/** Lets the person choose a file and reads it; null when they changed their mind. */
export async function openFile(): Promise<CourseReading | null> {
  try {
    const file = await fileOpen(KIND);
    return readCourse(await file.text());
  } catch (failure) {
    if (isCancelled(failure)) return null;
    return { kind: 'refused', why: fileWords.fileCouldNotRead(reasonOf(failure)) };
  }
}

/** Saves the course where the person wants it; says what came of it, null when they changed their mind. */
export async function saveFile(course: Course): Promise<string | null> {
  const name = courseFileName(course.title);
  try {
    await fileSave(courseBlob(course), { ...KIND, fileName: name });
    return fileWords.savedAs(name);
  } catch (failure) {
    return isCancelled(failure) ? null : fileWords.fileCouldNotSaved(reasonOf(failure));
  }
}

function isCancelled(failure: unknown): boolean {
  return failure instanceof DOMException && failure.name === 'AbortError';
}

function reasonOf(failure: unknown): string {
  return failure instanceof Error ? failure.message : String(failure);
}
