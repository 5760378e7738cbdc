import { readFile } from 'node:fs/promises';
import type { Course } from '../core/course/course.ts';
import { readCourse } from '../core/files/read.ts';
import { BadInput, type Io } from './io.ts';

/** The error of the operating system in plain words. */
export function systemErrorWords(error: unknown, path: string): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
      return `There is no file ${path}.`;
    case 'EISDIR':
      return `${path} is a folder, not a file.`;
    case 'EACCES':
    case 'EPERM':
      return `${path} may not be opened: the system does not allow it.`;
    case 'ENOTDIR':
      return `${path} goes through a file as if it were a folder.`;
    case 'EEXIST':
      return `${path} is a file, not a folder.`;
    case 'EROFS':
      return `${path} is on a disk that is read-only.`;
    case 'ENOSPC':
      return `There is no room left on the disk for ${path}.`;
    default:
      return `${path} could not be used: ${error instanceof Error ? error.message : String(error)}.`;
  }
}

/** The course in a file. Throws BadInput with the reason; repairs are printed on stderr. */
export async function courseFrom(path: string, io: Io): Promise<Course> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (error) {
    throw new BadInput(systemErrorWords(error, path));
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new BadInput(`${path} is not a course: it is not text (UTF-8).`);
  }
  const reading = readCourse(text);
  if (reading.kind === 'refused') throw new BadInput(`${path}: ${reading.why}`);
  for (const repair of reading.repairs) io.err(`${path}, repaired: ${repair}\n`);
  return reading.course;
}
