/** The code on a pattern, by which a phone opens the course with its ride playing. */
import type { Course } from '../core/course/course.ts';
import { courseLink } from '../core/files/course-link.ts';
import { memoizeByIdentity } from '../core/memo/by-identity.ts';
import type { TextItem } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { qrCode } from './qr-code.ts';
import { chosenOf, type PageOptions, type SheetOption } from './sheet.ts';

/** Whether a sheet has the code. Without an address to begin with there is none in either case. */
export const CODE_OPTION: SheetOption = {
  id: 'code',
  title: 'Code for a phone',
  choices: [
    { id: 'yes', title: 'In the notes' },
    { id: 'no', title: 'None' },
  ],
};

const SAYS =
  'Scan this code with a phone to see the ride on the course. The course itself is in the code: nothing is sent to anybody.';
const TOO_LONG =
  'This course has no code for a phone: with all that is in it, the code would be too fine to read. Ask for the course as a file.';

/** A code is worked out once for a course: a page is laid out in many ways. */
const codeOf = memoizeByIdentity((course: Course, base: string) => qrCode(courseLink(course, base)));

/** What stands in the notes of a sheet: the code with its sentence; why there is none; or nothing where none is asked for. */
export function codeItems(course: Course, options: PageOptions): readonly TextItem[] {
  const { linkBase } = options;
  if (linkBase === undefined || chosenOf(CODE_OPTION, options) === 'no') return [];
  const code = codeOf(course, linkBase);
  const size = SMALLEST_FONT_SIZE;
  return code === undefined
    ? [{ kind: 'paragraph', text: TOO_LONG, hang: '–', size }]
    : [{ kind: 'code', text: SAYS, code, size }];
}
