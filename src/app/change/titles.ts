import { type Course, LONGEST_NAME } from '../../core/course/course.ts';
import { andList } from '../../core/text/sentence.ts';
import type { Refusal } from '../../desk/input.ts';
import { changeWords } from '../../words/change.ts';

/** Why a text cannot be the name of a layout; undefined when it can. */
export function titleRefusal(text: string): Refusal {
  const title = text.trim();
  if (title === '') return changeWords.nameMissing;
  if (title.length <= LONGEST_NAME) return undefined;
  return changeWords.nameTooLong(title.length, LONGEST_NAME);
}

/** Titles of the classes of the day that ride a layout, in running order. */
export function classesOf({ day }: Course, layout: string): readonly string[] {
  return (day?.classes ?? []).filter((each) => each.layout === layout).map(({ title }) => title);
}

/** What a layout that classes ride takes with it. */
export function classesWords(classes: readonly string[]): string {
  const names = andList(classes.map((title) => `“${title}”`));
  return classes.length === 1 ? changeWords.classGoesWithIt(names) : changeWords.classesGoWithIt(names);
}
