import type { Course } from '../../core/course/course.ts';
import type { CourseReading } from '../../core/files/read.ts';
import type { SavedCourse } from '../../storage/library.ts';
import type { CompanionLink } from './companion-door.ts';
import { drawingPrint } from './drawing-print.ts';

/** Where the drawing of a link is. */
export type FoundDrawing =
  /** It is open, shown or as another layout: the course shows it here. */
  | { readonly kind: 'open'; readonly course: Course }
  | { readonly kind: 'kept'; readonly slot: string; readonly title: string }
  | { readonly kind: 'missing' };

/** The course with the layout shown that is the link's drawing; undefined where none is. */
function layoutOfLink(course: Course, { drawing }: Pick<CompanionLink, 'drawing'>): Course | undefined {
  const shown = course.layouts.map(({ id }): Course => (id === course.current ? course : { ...course, current: id }));
  // The shown one first: a branch that nobody has changed yet has the same print.
  shown.sort((a, b) => Number(b === course) - Number(a === course));
  return shown.find((each) => drawingPrint(each) === drawing);
}

/** The courses that this browser keeps. */
interface Kept {
  slot(): string;
  courses(): Promise<readonly SavedCourse[]>;
  read(slot: string): Promise<CourseReading>;
}

/** Looks for the drawing of a link in the open course, then in those that the browser keeps. */
export async function findDrawing(
  link: Pick<CompanionLink, 'drawing'>,
  open: Course,
  kept: Kept,
): Promise<FoundDrawing> {
  const course = layoutOfLink(open, link);
  if (course !== undefined) return { kind: 'open', course };
  for (const { slot, title } of await kept.courses()) {
    if (slot === kept.slot()) continue;
    const reading = await kept.read(slot);
    if (reading.kind === 'read' && layoutOfLink(reading.course, link) !== undefined)
      return { kind: 'kept', slot, title };
  }
  return { kind: 'missing' };
}
