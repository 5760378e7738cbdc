/** What every posted pattern says beneath the instructions, in plain words of our own. */
import type { Course } from '../core/course/course.ts';
import type { TextItem } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { rulebookInWords } from './title-block.ts';

export function cautions(course: Course): readonly TextItem[] {
  const says = [
    `Rule book in force: ${rulebookInWords(course)}. Where rules and sheet differ, the rules hold. The show’s officials and the judge decide.`,
    'Walk the course before the class if the show allows it. Where drawing and words do not agree, ask before you ride.',
    'Crew, before the first go: footing level and free of stones, poles secured against rolling, nothing sharp or loose. Put back what a horse has moved before the next one comes in.',
  ];
  const notes: readonly string[] = course.notes.trim() === '' ? [] : [course.notes.trim()];
  return [
    { kind: 'heading', text: 'Please note', size: SMALLEST_FONT_SIZE },
    ...[...notes, ...says].map((text): TextItem => ({ kind: 'paragraph', text, hang: '–', size: SMALLEST_FONT_SIZE })),
  ];
}
