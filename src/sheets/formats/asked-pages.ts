import type { Course } from '../../core/course/course.ts';
import { survey } from '../../core/survey.ts';
import type { AskedSheet } from '../folder-plan.ts';
import type { Pages, TooBig } from '../sheet.ts';

/** A sheet of a course as it was asked for. Where it does not fit, the reason names it: others may have been asked for as well. */
export function askedPages(course: Course, { sheet, options }: AskedSheet): Pages | TooBig {
  const pages = sheet.draw(survey(course), options);
  return pages.kind === 'too-big' ? { ...pages, why: `${sheet.title}: ${pages.why}` } : pages;
}
