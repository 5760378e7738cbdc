import type { Command } from 'commander';
import { crewOf } from '../core/change/crew.ts';
import type { DayOrder } from '../core/change/day-order.ts';
import { type DaySavings, daySavings } from '../core/change/day-savings.ts';
import { brokenWords, DAY_CAUTION, DAY_PARTS, savesWords, untakenWords, waitWords } from '../core/change/day-words.ts';
import { crewChange } from '../core/change/layout-change-over.ts';
import type { Course, Day } from '../core/course/course.ts';
import { dayEntryCount } from '../core/course/day-class.ts';
import { printMinutes } from '../core/measure/duration.ts';
import { printTimeOfDay } from '../core/measure/time-of-day.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';

/** A crew is at most so many. */
const LARGEST_CREW = 4;

function rows(course: Course, day: Day, { times }: DayOrder): string[][] {
  const title = (id: string): string => course.layouts.find((layout) => layout.id === id)?.title ?? id;
  const classes = times.classes.map(({ id, layout, from, to, change }) => {
    const of = day.classes.find((each) => each.id === id);
    const cells = [
      of?.title ?? id,
      title(layout),
      of?.judge ?? '',
      String(of === undefined ? 0 : dayEntryCount(course, of)),
      change.to > change.from ? printMinutes(change.to - change.from) : 'none',
    ];
    return { from, cells: [printTimeOfDay(from), printTimeOfDay(to), ...cells] };
  });
  const breaks = times.breaks.map(({ id, from, to }) => {
    const words = day.breaks.find((each) => each.id === id)?.title ?? id;
    return { from, cells: [printTimeOfDay(from), printTimeOfDay(to), words, '', '', '', ''] };
  });
  return [...classes, ...breaks].sort((a, b) => a.from - b.from).map(({ cells }) => cells);
}

function printOrder(io: Io, course: Course, day: Day, order: DayOrder): void {
  const { times } = order;
  const down = printMinutes(times.takingDown.to - times.takingDown.from);
  io.out(table(['from', 'to', 'class', 'layout', 'judge', 'entries', 'change-over before'], rows(course, day, order)));
  io.out(
    `Setting out begins at ${printTimeOfDay(times.starts)}; taken down in ${down}, by ${printTimeOfDay(times.finish)}.\n`,
  );
  for (const rule of times.broken) io.out(`NOT KEPT  ${brokenWords(day, rule)}\n`);
  for (const wait of times.waits) io.out(`${waitWords(day, wait)}\n`);
  for (const words of untakenWords(day, times)) io.out(`${words}\n`);
}

function printDay(io: Io, course: Course, day: Day, { given, best, total, parts, savings }: DaySavings): void {
  io.out(`${course.title}: ${day.classes.length} classes in ${printMinutes(total)}\n\n`);
  printOrder(io, course, day, given);
  const shares = DAY_PARTS.filter(([part]) => parts[part] > 0).map(([part, title]) => [
    title,
    printMinutes(parts[part]),
    `${Math.round((100 * parts[part]) / Math.max(total, 1))} %`,
  ]);
  io.out(`\n${table(['what takes the time', '', 'of the day'], shares)}`);
  const order = savings.find(({ kind }) => kind === 'order');
  const known = best.proven ? 'No other order is better.' : 'The best that was found; another may be better.';
  if (order === undefined) io.out(`\nThe classes stand in the best order. ${known}\n`);
  else {
    io.out(`\nThe better order ends ${savesWords(order.saves)}. ${known}\n`);
    printOrder(io, course, day, best);
  }
  const others = savings.filter((each) => each !== order);
  if (others.length > 0) {
    io.out('\nBeside the best order, each by itself:\n');
    for (const { says, saves } of others) io.out(`  ${savesWords(saves)}: ${says}\n`);
  }
  io.out(`\n${DAY_CAUTION}\n`);
}

function orderDocument({ times, cost, proven }: DayOrder) {
  return { ...times, cost, proven };
}

function dayDocument(course: Course, day: Day, { given, best, total, parts, savings }: DaySavings) {
  return {
    course: course.title,
    crew: crewOf(course),
    classes: day.classes,
    given: orderDocument(given),
    best: orderDocument(best),
    total,
    parts,
    savings: savings.map(({ kind, says, saves }) => ({ kind, says, saves })),
    caution: DAY_CAUTION,
  };
}

/** `day FILE`: the timetable of a day, the better order, and where time can be saved. */
export function dayCommand(io: Io): Command {
  return baseCommand('day', 'The timetable of a day’s classes, a better order, and where time can be saved.', io)
    .argument('<file>', 'A course file (*.course.json) with a day.')
    .option('--json', 'One JSON document in SI units; times are seconds of the day.')
    .action(async (file: string, options: { json?: boolean }) => {
      const course = await courseFrom(file, io);
      const { day } = course;
      if (day === undefined || day.classes.length === 0) {
        throw new BadInput(
          `${file} has no classes of a day. Plan it in the stage Change, or write "day" into the file: "starts", "classes" and "breaks".`,
        );
      }
      const { people } = crewOf(course);
      const more = people < LARGEST_CREW ? { people: people + 1, change: crewChange(course, people + 1) } : undefined;
      const savings = daySavings(course, { crew: crewChange(course), ...(more === undefined ? {} : { more }) });
      if (savings === undefined) throw new Error('day: a course with a day has a timetable');
      if (options.json === true) return printJson(io, dayDocument(course, day, savings));
      printDay(io, course, day, savings);
    });
}
