import { readFile, writeFile } from 'node:fs/promises';
import type { Command } from 'commander';
import type { Course, Draw, Entry } from '../core/course/course.ts';
import { changeEntry, orderEntries, replaceEntries, startClass } from '../core/course/edit-entries.ts';
import { writeCourse } from '../core/files/write.ts';
import { drawOrder } from '../core/go/draw-order.ts';
import { drawnWords, drawWords } from '../core/go/draw-words.ts';
import { GO_CAUTION, type GoTimes, goTimesOf, goTimeWords, listOf } from '../core/go/go-times.ts';
import { readEntries, readingWords } from '../core/go/read-entries.ts';
import { sharedNumbers } from '../core/go/shared-numbers.ts';
import { usualBetween } from '../core/go/usual-between.ts';
import { printDuration, printMinutes } from '../core/measure/duration.ts';
import { readTimeOfDay } from '../core/measure/time-of-day.ts';
import { type Survey, survey } from '../core/survey.ts';
import { andList, counted } from '../core/text/sentence.ts';
import { baseCommand } from './command.ts';
import { courseFrom, systemErrorWords } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';

interface Options {
  readonly entries?: string;
  readonly draw?: string;
  readonly between?: string;
  readonly starts?: string;
  readonly late?: readonly string[];
  readonly scratch?: readonly string[];
  readonly save?: string;
  readonly json?: boolean;
}

const LARGEST_SEED = 4_294_967_295;

function whole(flag: string, text: string, most: number): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isInteger(value) || value < 0 || value > most) {
    throw new BadInput(`${flag} ${text}: a whole number from 0 to ${most} would be right.`);
  }
  return value;
}

/** The course with the entries of a table. What could not be read is told on stderr; without one entry it is refused. */
async function withEntries(course: Course, path: string, io: Io): Promise<Course> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw new BadInput(systemErrorWords(error, path));
  }
  const reading = readEntries(text);
  for (const { line, why } of reading.refused) io.err(`${path}, line ${line}: ${why}\n`);
  for (const note of reading.notes) io.err(`${path}: ${note}\n`);
  if (reading.entries.length === 0) throw new BadInput(`${path} has no entry that could be read.`);
  if (reading.refused.length > 0) io.err(`${path}: ${readingWords(reading)}\n`);
  return replaceEntries(course, reading.entries);
}

/** The one entry that wears a number. */
function entryWith(course: Course, flag: string, number: string): Entry {
  const { list } = course.class;
  if (list === undefined) {
    throw new BadInput(`${flag}: only the number of entries is known. Give the list with --entries.`);
  }
  const found = list.filter((each) => each.number.toUpperCase() === number.trim().toUpperCase());
  const [only, ...more] = found;
  if (only === undefined) throw new BadInput(`${flag}: nobody has the number ${number}.`);
  if (more.length > 0) {
    throw new BadInput(`${flag}: ${found.length} entries have the number ${number}; each must have its own.`);
  }
  return only;
}

function withLateness(course: Course, text: string): Course {
  const [, minutes = '', number = ''] = /^(\d+(?:\.\d+)?)@(.+)$/.exec(text) ?? [];
  if (number === '') throw new BadInput(`--late ${text}: write minutes and a number, such as 5@112.`);
  if (Number(minutes) > 1440) throw new BadInput(`--late ${text}: ${minutes} min are more than a day.`);
  return changeEntry(course, entryWith(course, '--late', number).id, { late: Number(minutes) * 60 });
}

function drawn(course: Course, options: Options): { course: Course; says: string } {
  const { draw, between } = options;
  if (draw === undefined) {
    if (between !== undefined) throw new BadInput('--between wants --draw: it is about the draw.');
    const known = course.class.drawn;
    return { course, says: known === undefined ? '' : drawWords(known) };
  }
  const { list } = course.class;
  if (list === undefined) throw new BadInput('--draw: there is no list to draw from. Give it with --entries.');
  const by: Draw = {
    seed: whole('--draw', draw, LARGEST_SEED),
    between: between === undefined ? usualBetween(survey(course)) : whole('--between', between, 500),
  };
  const order = drawOrder(list, by);
  return {
    course: orderEntries(course, order.order, { drawn: { seed: by.seed, between: order.between ?? 0 } }),
    says: drawnWords(by, order),
  };
}

async function asked(course: Course, options: Options, io: Io): Promise<{ course: Course; says: string }> {
  const listed = options.entries === undefined ? course : await withEntries(course, options.entries, io);
  let now = listed;
  if (options.starts !== undefined) {
    const starts = readTimeOfDay(options.starts);
    if (starts.kind === 'refused') throw new BadInput(`--starts: ${starts.why}`);
    now = startClass(now, starts.value);
  }
  for (const number of options.scratch ?? []) {
    now = changeEntry(now, entryWith(now, '--scratch', number).id, { scratched: true });
  }
  for (const text of options.late ?? []) now = withLateness(now, text);
  return drawn(now, options);
}

function rows(times: GoTimes): readonly (readonly string[])[] {
  return times.rows.map((row) => {
    const when = goTimeWords(times, row.from);
    if (row.kind === 'drag') return [when, '', '', 'The ground is dragged', printMinutes(row.to - row.from), ''];
    if (row.kind === 'break') return [when, '', '', row.title, printMinutes(row.to - row.from), ''];
    const { number, rider, horse, late } = row.entry;
    return [when, String(row.turn), number, rider, horse, late === undefined ? '' : printMinutes(late)];
  });
}

function printGo(io: Io, of: Survey, says: string): void {
  const times = goTimesOf(of);
  const { course, classClock } = of;
  const title = course.class.title === '' ? course.title : course.class.title;
  const count = counted(classClock.entries, 'entry', 'entries');
  io.out(`${title}: ${count}, ${printDuration(times.to - times.from)}, ${printDuration(classClock.go)} a go\n\n`);
  io.out(table(['about when', 'go', 'number', 'rider', 'horse', 'late'], rows(times)));
  if (times.scratched.length > 0) {
    const names = times.scratched.map(({ number, rider }) => (number === '' ? rider : number));
    io.out(`\nScratched: ${andList(names)}.\n`);
  }
  for (const { number, at } of sharedNumbers(listOf(course.class))) {
    io.out(`\nNumber ${number} is worn by ${at.length} entries; each must have its own.\n`);
  }
  if (says !== '') io.out(`\n${says}\n`);
  if (times.counts === 'from-start')
    io.out('\nNo start is known: times count from the first go. Give it with --starts.\n');
  io.out(`\n${GO_CAUTION}\n`);
}

function goDocument({ course, classClock }: Survey, times: GoTimes) {
  return {
    course: course.title,
    class: course.class.title,
    drawn: course.class.drawn ?? null,
    go: classClock.go,
    ...times,
    caution: GO_CAUTION,
  };
}

/** Writes the course; a file that is there is kept unless it is the course's own. */
async function save(path: string, from: string, course: Course): Promise<void> {
  try {
    await writeFile(path, writeCourse(course), { flag: path === from ? 'w' : 'wx' });
  } catch (error) {
    const isThere = error instanceof Error && 'code' in error && error.code === 'EEXIST';
    if (isThere) throw new BadInput(`--save: ${path} is there already. Name another file.`);
    throw new BadInput(`--save: ${systemErrorWords(error, path)}`);
  }
}

const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

/** `go FILE`: who rides the class in which order, and about when. */
export function goCommand(io: Io): Command {
  return baseCommand('go', 'Who rides the class in which order, and about when.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option(
      '--entries <table>',
      'Who rides: a table of number, rider and horse (CSV), in place of the list in the file.',
    )
    .option('--draw <seed>', 'Draw the order; the same number draws the same order again.')
    .option('--between <goes>', 'Goes of others between two goes of one rider; usual: as many as give a rider’s rest.')
    .option('--starts <time>', 'When the first go begins, such as 9:30 or 1:15 pm.')
    .option(
      '--late <minutes@number>',
      'Minutes late at an entry, such as 5@112: it and all after it. May be repeated.',
      each,
    )
    .option('--scratch <number>', 'An entry that does not ride. May be repeated.', each)
    .option('--save <file>', 'Write the course with this list, order and start.')
    .option('--json', 'One JSON document in SI units; times are seconds, of the day where a start is known.')
    .action(async (file: string, options: Options) => {
      const { course, says } = await asked(await courseFrom(file, io), options, io);
      const of = survey(course);
      if (listOf(course.class).length === 0) {
        throw new BadInput(`${file} has no entries. Give them with --entries, or write "entries" into its class.`);
      }
      if (options.save !== undefined) await save(options.save, file, course);
      if (options.json === true) return printJson(io, goDocument(of, goTimesOf(of)));
      printGo(io, of, says);
    });
}
