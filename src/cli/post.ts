import type { Command } from 'commander';
import type { Course } from '../core/course/course.ts';
import { survey } from '../core/survey.ts';
import type { AskedSheet } from '../sheets/folder-plan.ts';
import type { ExportedFile, ExportFormat } from '../sheets/formats/format.ts';
import { EXPORT_FORMATS } from '../sheets/formats/formats.ts';
import { PAPERS, type PageOptions, type Sheet } from '../sheets/sheet.ts';
import { SHEETS } from '../sheets/sheets.ts';
import { staleWords, staleWordsWarning } from '../sheets/stale-words.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { unknownWord } from './did-you-mean.ts';
import { exportResources } from './export-resources.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { linkBaseFrom } from './link-base.ts';
import { writeFiles } from './write-files.ts';

/** As they are typed. */
interface PostOptions {
  readonly out: string;
  readonly sheets?: string;
  readonly sheet?: string;
  readonly paper: string;
  readonly scale?: string;
  readonly format?: string;
  readonly together?: boolean;
  readonly day?: boolean;
  readonly dpi: string;
  readonly linkBase?: string;
  readonly option?: readonly string[];
  readonly force?: boolean;
  readonly json?: boolean;
}

/** More dots in an inch than these no printer has. */
const MOST_DPI = 1200;

const SHEET_IDS = SHEETS.map(({ id }) => id);
const FORMAT_IDS = EXPORT_FORMATS.map(({ id }) => id);

/** What is listed with commas, each once and in its order. */
function listed(text: string): readonly string[] {
  const parts = text.split(',').map((part) => part.trim());
  return [...new Set(parts.filter((part) => part !== ''))];
}

function pageOptionsFrom({ paper: typed, scale: wanted, linkBase }: PostOptions): PageOptions {
  const paper = PAPERS.find((each) => each === typed.toLowerCase());
  if (paper === undefined) throw new BadInput(`--paper: ${unknownWord('paper', typed, PAPERS)}`);
  const link = linkBase === undefined ? {} : { linkBase: linkBaseFrom('--link-base', linkBase) };
  if (wanted === undefined) return { paper, orientation: 'fit', ...link };
  const scale = Number(wanted.replace(/^1:/, ''));
  if (!(scale > 0) || !Number.isFinite(scale)) {
    throw new BadInput(`--scale: "${wanted}" is not a scale. Write one such as 1:200 or 200.`);
  }
  return { paper, orientation: 'fit', scale, ...link };
}

function sheetsFrom({ sheets, sheet }: PostOptions): readonly Sheet[] {
  if (sheets !== undefined && sheet !== undefined) throw new BadInput('--sheets and --sheet are the same: give one.');
  const flag = sheet === undefined ? '--sheets' : '--sheet';
  const ids = listed(sheets ?? sheet ?? SHEET_IDS[0] ?? '');
  if (ids.length === 0) throw new BadInput(`${flag} names no sheet. There are: ${SHEET_IDS.join(', ')}.`);
  if (ids.includes('all')) return SHEETS;
  return ids.map((id) => {
    const found = SHEETS.find((each) => each.id === id);
    if (found === undefined) throw new BadInput(`${flag}: ${unknownWord('sheet', id, SHEET_IDS)}`);
    return found;
  });
}

/** The formats by their ids; with --together or --day those that bind into a file of the same kind. */
function formatsFrom({ format: typed, together, day }: PostOptions): readonly ExportFormat[] {
  const ids = listed(typed ?? FORMAT_IDS[0] ?? '');
  if (ids.length === 0) throw new BadInput(`--format names no format. There are: ${FORMAT_IDS.join(', ')}.`);
  const binds = day === true ? 'day' : together === true ? 'class' : undefined;
  const flag = day === true ? '--day' : '--together';
  const found = ids.map((id) => {
    const format = EXPORT_FORMATS.find((each) => each.id === id);
    if (format === undefined) throw new BadInput(`--format: ${unknownWord('format', id, FORMAT_IDS)}`);
    // What is about the course, and what binds already, stays as it is.
    if (binds === undefined || format.about === 'course' || format.binds === binds) return format;
    const bound = EXPORT_FORMATS.find((each) => each.binds === binds && each.ending === format.ending);
    if (bound === undefined) throw new BadInput(`${flag}: ${format.title} cannot bind sheets into one file.`);
    return bound;
  });
  return [...new Set(found)];
}

/** `SHEET.OPTION=CHOICE`, each of them as the sheets have it. */
function choicesFrom(options: readonly string[], sheets: readonly Sheet[]): ReadonlyMap<Sheet, Record<string, string>> {
  const chosen = new Map<Sheet, Record<string, string>>();
  for (const typed of options) {
    const [, sheetId, optionId, choice] = /^([^.=]+)\.([^=]+)=(.*)$/.exec(typed) ?? [];
    if (sheetId === undefined || optionId === undefined || choice === undefined) {
      throw new BadInput(`--option: "${typed}" is no option. Write it as SHEET.OPTION=CHOICE.`);
    }
    const ids = sheets.map(({ id }) => id);
    const sheet = sheets.find(({ id }) => id === sheetId);
    if (sheet === undefined) throw new BadInput(`--option: ${unknownWord('sheet asked for', sheetId, ids)}`);
    const known = sheet.options ?? [];
    if (known.length === 0) throw new BadInput(`--option: ${sheet.title} has no options.`);
    const option = known.find(({ id }) => id === optionId);
    if (option === undefined) {
      const names = known.map(({ id }) => id);
      throw new BadInput(`--option: ${unknownWord(`option of ${sheetId}`, optionId, names)}`);
    }
    const choices = option.choices.map(({ id }) => id);
    if (!choices.includes(choice)) {
      throw new BadInput(`--option: ${unknownWord(`choice of ${sheetId}.${optionId}`, choice, choices)}`);
    }
    chosen.set(sheet, { ...chosen.get(sheet), [optionId]: choice });
  }
  return chosen;
}

function dpiFrom({ dpi: typed }: PostOptions): number {
  const dpi = Number(typed);
  if (Number.isFinite(dpi) && dpi >= 1 && dpi <= MOST_DPI) return dpi;
  throw new BadInput(`--dpi: "${typed}" is not from 1 to ${MOST_DPI} dots in an inch.`);
}

interface WrittenFile {
  readonly format: ExportFormat;
  readonly file: ExportedFile;
}

/** Every file of every format, before any is put on the disk. */
async function filesOf(
  course: Course,
  { sheets, formats, dpi }: { sheets: readonly AskedSheet[]; formats: readonly ExportFormat[]; dpi: number },
): Promise<readonly WrittenFile[]> {
  const [first, ...rest] = sheets;
  if (first === undefined) throw new Error('post: a sheet was asked for');
  const resources = exportResources();
  const written: WrittenFile[] = [];
  for (const format of formats) {
    const made = await format.write({ course, sheets: [first, ...rest], dpi }, resources, { step() {} });
    if ('kind' in made) throw new BadInput(`${made.why} Nothing was written.`);
    written.push(...made.map((file) => ({ format, file })));
  }
  return written;
}

/** `post FILE --out DIR`: sheets for people, or the course, as files. */
export function postCommand(io: Io): Command {
  return baseCommand('post', 'Write sheets for people, or the course itself, as files.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .requiredOption('--out <folder>', 'Where the files go; the folder is made when it is not there.')
    .option('--sheets <ids>', `Which sheets, with commas: ${SHEET_IDS.join(', ')}; or all. Usual: ${SHEET_IDS[0]}.`)
    .option('--sheet <id>', 'The same for one sheet.')
    .option('--paper <paper>', 'letter, a4 or legal.', 'letter')
    .option('--scale <scale>', 'A scale such as 1:200; refused with the nearest when it does not fit.')
    .option('--format <ids>', `What is written, with commas: ${FORMAT_IDS.join(', ')}. Usual: ${FORMAT_IDS[0]}.`)
    .option('--together', 'Bind the sheets into one file with contents, bookmarks and page numbers.')
    .option('--day', 'The same for every class of the day, with the timetable and the change-overs.')
    .option('--link-base <url>', 'Where Polewright is served: the pattern gets a code that opens the course there.')
    .option('--dpi <dots>', 'Dots in an inch, for a picture of dots.', '150')
    .option(
      '--option <choice>',
      'A choice of a sheet, as SHEET.OPTION=CHOICE; may be given again.',
      (each: string, before: readonly string[] = []) => [...before, each],
    )
    .option('--force', 'Write over files that are there already.')
    .option('--json', 'One JSON document about what was written.')
    .action(async (file: string, options: PostOptions) => {
      const sheets = sheetsFrom(options);
      const formats = formatsFrom(options);
      const page = pageOptionsFrom(options);
      const chosen = choicesFrom(options.option ?? [], sheets);
      const dpi = dpiFrom(options);
      const course = await courseFrom(file, io);
      const asked = sheets.map((sheet): AskedSheet => {
        const own = chosen.get(sheet);
        return { sheet, options: own === undefined ? page : { ...page, chosen: own } };
      });
      const written = await filesOf(course, { sheets: asked, formats, dpi });
      const over = options.force === true;
      const paths = await writeFiles(
        options.out,
        written.map((each) => each.file),
        { over },
      );
      const stale = staleWordsWarning(staleWords(survey(course)));
      const notices = [
        ...(stale === '' ? [] : [stale]),
        ...new Set(written.flatMap((each) => each.file.notices ?? [])),
      ];
      for (const notice of notices) io.err(`${notice}\n`);
      if (options.json !== true) return io.out(paths.map((path) => `${path}\n`).join(''));
      printJson(io, {
        course: course.title,
        sheets: sheets.map(({ id }) => id),
        files: written.map(({ format, file: { type, bytes, pages, scale } }, i) => ({
          file: paths[i],
          format: format.id,
          type,
          bytes: bytes.length,
          pages: pages ?? null,
          scale: scale ?? null,
        })),
        notices,
      });
    });
}
