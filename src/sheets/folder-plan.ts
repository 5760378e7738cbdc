/** What is in a folder: the sheets of a class, or of every class of a day with its timetable and the change-overs between. */

import { givenOrder } from '../core/change/day-order.ts';
import { classEntryOf, dayProblem } from '../core/change/day-problem.ts';
import type { ClassTimes, DayTimes } from '../core/change/day-times.ts';
import { crewChange, layoutChangeOver } from '../core/change/layout-change-over.ts';
import { layoutById, layoutSurvey } from '../core/change/layout-survey.ts';
import type { ClassEntry, Course, Day } from '../core/course/course.ts';
import { printTimeOfDay } from '../core/measure/time-of-day.ts';
import { type Survey, survey } from '../core/survey.ts';
import { counted } from '../core/text/sentence.ts';
import { changeOverPages } from './change-over.ts';
import { dayPages } from './day.ts';
import type { FolderCover } from './folder.ts';
import type { PageOptions, Pages, Sheet, TooBig } from './sheet.ts';
import { arenaInWords, classHead, displayTitle } from './title-block.ts';

/** A sheet, and how it is to be drawn. */
export interface AskedSheet {
  readonly sheet: Sheet;
  readonly options: PageOptions;
}

/** A chapter of a folder before it is drawn. */
export interface PlannedChapter {
  readonly title: string;
  readonly content: (() => Pages | TooBig) | readonly [PlannedChapter, ...PlannedChapter[]];
}

/** A folder before it is drawn: each chapter can be drawn by itself, because all of them together take a while. */
export interface PlannedFolder {
  readonly cover: FolderCover;
  readonly chapters: readonly [PlannedChapter, ...PlannedChapter[]];
}

type Asked = readonly [AskedSheet, ...AskedSheet[]];

function drawnChapter({ sheet, options }: AskedSheet, of: () => Survey): PlannedChapter {
  return { title: sheet.title, content: () => sheet.draw(of(), options) };
}

/** The folder of the class of a course: the sheets in the order in which they are asked for. */
export function classFolder(course: Course, asked: Asked): PlannedFolder {
  const [first, ...rest] = asked;
  const chapter = (each: AskedSheet): PlannedChapter => drawnChapter(each, () => survey(course));
  return {
    cover: {
      head: classHead(course),
      paper: first.options.paper,
      title: `Folder: ${displayTitle(course)}`,
    },
    chapters: [chapter(first), ...rest.map(chapter)],
  };
}

/** The change-over to a class where something has to be carried for it. */
function changeChapters(course: Course, from: string, to: string, asked: Asked): readonly PlannedChapter[] {
  if (from === to) return [];
  const [before, after] = [from, to].map((id) => layoutById(course, id).title);
  const ends = { from, to };
  const { paper } = asked[0].options;
  return [
    {
      title: `Change-over: ${before} to ${after}`,
      content: () => {
        const plan = layoutChangeOver(course, ends);
        return changeOverPages(course, { ...ends, plan, options: { paper, orientation: 'fit' } });
      },
    },
  ];
}

/** The sheets of one class of a day; those about the layout alone where it lies for the first time. */
function classChapter(
  { course, day, asked }: { readonly course: Course; readonly day: Day; readonly asked: Asked },
  times: readonly ClassTimes[],
  index: number,
): readonly PlannedChapter[] {
  const { id, layout, from } = times[index] ?? {};
  const of = day.classes.find((each) => each.id === id);
  if (of === undefined || layout === undefined || from === undefined) return [];
  const isNew = times.findIndex((each) => each.layout === layout) === index;
  const before = times[index - 1]?.layout ?? layout;
  // In a folder of the day a class begins when the timetable says.
  const entry: ClassEntry = { ...classEntryOf(of, course), starts: from };
  const own = asked
    .filter(({ sheet }) => sheet.wholeDay === undefined && (isNew || sheet.perLayout !== true))
    .map((each) => drawnChapter(each, () => layoutSurvey(course, layout, entry)));
  const [first, ...rest] = [...changeChapters(course, before, layout, asked), ...own];
  if (first === undefined) return [];
  const title = `${index + 1}. ${of.title}, ${printTimeOfDay(from)}`;
  return [{ title, content: [first, ...rest] }];
}

function dayCover(course: Course, times: DayTimes, paper: FolderCover['paper']): FolderCover {
  const { show, date } = course.class;
  return {
    head: {
      show,
      date,
      name: 'Folder of the day',
      facts: [
        ['Course', course.title],
        ['Arena', arenaInWords(course)],
        ['Classes', String(times.classes.length)],
        ['Setting out begins', printTimeOfDay(times.starts)],
        ['All is taken down by', printTimeOfDay(times.finish)],
      ],
    },
    paper,
    title: `Folder of the day: ${counted(times.classes.length, 'class', 'classes')}, ${course.title}`,
  };
}

/** The folder of a course's day in running order; undefined where it has no classes of a day. */
export function dayFolder(course: Course, asked: Asked): PlannedFolder | undefined {
  const problem = dayProblem(course, crewChange(course));
  if (problem === undefined || problem.tasks.length === 0) return undefined;
  const { day } = problem;
  const { times } = givenOrder(problem);
  const { paper } = asked[0].options;
  const timetable: PlannedChapter = {
    title: 'Timetable of the day',
    content: () => dayPages(course, { paper, times }),
  };
  const ofDay = asked.flatMap(({ sheet, options }): readonly PlannedChapter[] => {
    if (sheet.wholeDay === undefined) return [];
    const chosen = { ...options.chosen, ...sheet.wholeDay };
    return [drawnChapter({ sheet, options: { ...options, chosen } }, () => survey(course))];
  });
  const classes = times.classes.flatMap((_, i) => classChapter({ course, day, asked }, times.classes, i));
  return { cover: dayCover(course, times, paper), chapters: [timetable, ...ofDay, ...classes] };
}
