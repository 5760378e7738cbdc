import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Command } from 'commander';
import type { Finding } from '../core/checks/check.ts';
import { findingsOf } from '../core/checks/checks.ts';
import { piecesWords, pieceWords } from '../core/checks/findings/thing-words.ts';
import { type FiledReading, readGroundReadings } from '../core/files/ground-readings.ts';
import { writeCourse } from '../core/files/write.ts';
import { printLength } from '../core/measure/length.ts';
import { type AdjustedReading, isOpen } from '../core/setout/built/adjust.ts';
import { type AsBuilt, asBuiltOf } from '../core/setout/built/as-built.ts';
import { outsideBand } from '../core/setout/built/as-built-gaps.ts';
import {
  endsOff,
  errorWords,
  observableWords,
  offWords,
  tapeWords,
  valueWords,
} from '../core/setout/built/as-built-words.ts';
import { setOutCrewOf } from '../core/setout/crew.ts';
import { setOutOf } from '../core/setout/plan-setout.ts';
import { type Survey, survey } from '../core/survey.ts';
import { capitalized, numberList } from '../core/text/sentence.ts';
import { findingDocument } from './check-compare.ts';
import { baseCommand } from './command.ts';
import { courseFrom, systemErrorWords } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';
import { countWords, FAIL_ON_HELP, failsOn, printFinding, readFailOn } from './verdict.ts';

type Letters = ReadonlyMap<string, readonly [string, string]>;

/** What was asked: the plan, the readings with their lines, and what they come to. */
interface Asked {
  readonly planned: Survey;
  readonly letters: Letters;
  readonly filed: readonly FiledReading[];
  readonly built: AsBuilt;
  /** Findings that the plan has not got. */
  readonly fresh: readonly Finding[];
}

const MOST_FAULTS = 12;

async function textOf(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw new BadInput(systemErrorWords(error, path));
  }
}

/** The ends as the set-out letters them, and the pieces that it lays first: they are held. */
function setOutNames(planned: Survey): { readonly letters: Letters; readonly held: readonly string[] } {
  const { parts } = setOutOf(planned);
  const letters = new Map(parts.flatMap((part) => [...part.letters]));
  return { letters, held: parts.map(({ steps }) => steps[0].piece) };
}

/** The readings of a file. Throws BadInput with the lines that are wrong. */
async function readingsFrom(path: string, planned: Survey, letters: Letters, io: Io): Promise<readonly FiledReading[]> {
  const crew = setOutCrewOf(planned.course);
  const found = readGroundReadings(await textOf(path), { survey: planned, letters, crew });
  if (found.kind === 'read') {
    for (const { line, note } of found.readings) if (note !== undefined) io.err(`${path}, line ${line}: ${note}\n`);
    return found.readings;
  }
  const told = found.faults.slice(0, MOST_FAULTS).map(({ line, why }) => `${path}, line ${line}: ${why}`);
  const more = found.faults.length - told.length;
  throw new BadInput([...told, ...(more > 0 ? [`… and ${more} more.`] : [])].join('\n'));
}

function lines(filed: readonly FiledReading[], places: readonly number[]): string {
  return numberList(places.map((i) => filed[i]?.line ?? 0));
}

function printReadings(io: Io, { planned, letters, filed, built }: Asked): void {
  const { unit } = planned.course;
  const { adjustment } = built;
  const made = (place: number): string => {
    const { reading, expected } = adjustment.readings[place] as AdjustedReading;
    return `${observableWords(planned, reading, letters)} reads ${valueWords(reading, reading.read, unit)}; the others make it ${valueWords(reading, expected, unit)}`;
  };
  for (const i of adjustment.wrong) {
    io.out(`Line ${lines(filed, [i])} is likely wrong and was left out: ${made(i)}.\n`);
  }
  for (const places of adjustment.undecided) {
    const [first = 0] = places;
    io.out(
      `One of lines ${lines(filed, places)} is likely wrong, and the others do not tell which: tape them again. By the drawing it is line ${lines(filed, [first])}, which was left out: ${made(first)}.\n`,
    );
  }
  const loose = adjustment.readings.flatMap(({ standing }, i) => (standing === 'not-controlled' ? [i] : []));
  if (loose.length > 0) {
    io.out(
      `Not controlled, so that an error would not show; tape something more between these pieces: line${loose.length === 1 ? '' : 's'} ${lines(filed, loose)}.\n`,
    );
  }
  if (adjustment.wrong.length + adjustment.undecided.length === 0 && loose.length < filed.length) {
    io.out(`No reading is suspected (|w| up to ${adjustment.critical.toFixed(1)}).\n`);
  }
}

function printPieces(io: Io, { planned, letters, built }: Asked): void {
  const { unit } = planned.course;
  const rows = [...built.adjustment.pieces.values()].map((piece) => {
    const off = endsOff(planned, piece).map((each) => offWords(each, unit));
    const [a, b] = letters.get(piece.key) ?? ['A', 'B'];
    const isHeld = built.adjustment.groups.some(
      ({ pieces, isTiedToWalls }) => pieces[0] === piece.key && !isTiedToWalls,
    );
    const where = off.length === 1 ? [off[0] as string, ''] : [`${a} ${off[0]}`, `${b} ${off[1]}`];
    const { along, across } = piece.error;
    const sure = isHeld
      ? ['held', 'held']
      : [along, across].map((sigma) => (isOpen(sigma) ? 'open' : errorWords(sigma, unit)));
    return [piece.key, ...where, ...sure];
  });
  io.out(`\nOff the drawing, by the readings\n${table(['piece', 'end', 'end', 'sure along', 'and across'], rows)}`);
  if (rows.some((row) => row.includes('open'))) io.out('What is open no reading tells; it is taken as drawn.\n');
}

function printGaps(io: Io, { planned, built }: Asked): void {
  const { unit } = planned.course;
  if (built.gaps.length === 0) return;
  const rows = built.gaps.map(({ keys, gait, plan, built: now, sigma, band }) => {
    const out = outsideBand(band, now, unit);
    const off = out === 0 ? 'in its band' : `${tapeWords(out, unit)} ${now < band.least ? 'short' : 'long'}`;
    const verdict = sigma === undefined ? 'one pole not taped' : off;
    const print = (value: number) => printLength(value, unit);
    const of = `${print(band.least)} to ${print(band.most)}`;
    return [
      keys.join(' to '),
      gait ?? 'held',
      print(plan),
      print(now),
      sigma === undefined ? 'open' : errorWords(sigma, unit),
      of,
      verdict,
    ];
  });
  io.out(`\n${table(['gap', 'gait', 'plan', 'as built', 'as sure as', 'band', 'so it is'], rows)}`);
}

function printMends(io: Io, { built }: Asked): void {
  const { moves, isFewest, unreached } = built.mends;
  if (moves.length === 0 && unreached.length === 0) {
    io.out('\nEvery gap that was taped lies in its band: nothing has to be moved.\n');
    return;
  }
  if (moves.length > 0) {
    const which = isFewest ? 'The fewest moves' : 'Moves (fewer may do: too many poles to try all)';
    io.out(`\n${which} that bring these gaps into their bands, tried on a copy:\n`);
    for (const [i, { says }] of moves.entries()) io.out(`  ${i + 1}. ${says}\n`);
  }
  for (const { why, nearest } of unreached) {
    io.out(`\n${capitalized(why)}\n`);
    for (const { says } of nearest) io.out(`  Nearest: ${says}\n`);
  }
}

function printAsBuilt(io: Io, asked: Asked): void {
  const { planned, filed, built, fresh } = asked;
  const { pieces, groups } = built.adjustment;
  const count = filed.length === 1 ? '1 reading' : `${filed.length} readings`;
  io.out(`${planned.course.title}, ${planned.layout.title}: ${pieces.size} pieces by ${count}\n`);
  for (const { pieces: own, isTiedToWalls } of groups) {
    const from = isTiedToWalls ? 'from the walls' : `from ${pieceWords(planned, own[0])}, which lies as drawn`;
    io.out(`${capitalized(piecesWords(planned, own))}: ${from}.\n`);
  }
  printReadings(io, asked);
  printPieces(io, asked);
  printGaps(io, asked);
  const standing = built.findings.length - fresh.length;
  io.out(`\nAs built, the checks find beside what they find on the plan (${standing}): ${countWords(fresh)}\n`);
  for (const finding of fresh) printFinding(io, { ...finding, remedies: [] });
  printMends(io, asked);
}

function asBuiltDocument({ planned, letters, filed, built, fresh }: Asked) {
  const { adjustment, gaps, mends, findings } = built;
  const { unit } = planned.course;
  return {
    course: planned.course.title,
    layout: planned.layout.id,
    readings: adjustment.readings.map(({ reading, ...rest }, i) => ({
      line: filed[i]?.line ?? 0,
      ...reading,
      ...rest,
    })),
    wrong: adjustment.wrong.map((i) => filed[i]?.line ?? 0),
    undecided: adjustment.undecided.map((places) => places.map((i) => filed[i]?.line ?? 0)),
    critical: adjustment.critical,
    groups: adjustment.groups.map(({ pieces, isTiedToWalls, sum, redundancy }) => {
      return { pieces, isTiedToWalls, sum, redundancy };
    }),
    pieces: [...adjustment.pieces.values()].map((piece) => ({
      ...piece,
      ends: letters.get(piece.key) ?? [],
      off: endsOff(planned, piece),
    })),
    gaps: gaps.map((gap) => ({ ...gap, outside: outsideBand(gap.band, gap.built, unit) })),
    findings: findings.map((finding) => ({ ...findingDocument(finding), isNew: fresh.includes(finding) })),
    moves: mends.moves,
    isFewest: mends.isFewest,
    unreached: mends.unreached,
  };
}

interface Options {
  readonly readings: string;
  readonly level: string;
  readonly failOn: string;
  readonly save?: string;
  readonly json?: boolean;
}

function levelFrom(text: string): number {
  const level = Number(text);
  if (level > 0 && level < 1) return level;
  throw new BadInput(`--level: "${text}" is not a chance. Write one between 0 and 1, such as 0.05.`);
}

async function save(path: string, { built }: Asked): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, writeCourse(built.course));
  } catch (error) {
    throw new BadInput(`The course as built could not be written. ${systemErrorWords(error, path)}`);
  }
}

/** `asbuilt FILE --readings FILE`: where the poles lie by a tape, and what to move. `reportFailure` is told whether it fails. */
export function asBuiltCommand(io: Io, reportFailure: (fails: boolean) => void): Command {
  return baseCommand('asbuilt', 'Where the poles lie by what a tape reads, and the fewest moves that mend it.', io)
    .argument('<file>', 'The course as it was drawn (*.course.json).')
    .requiredOption('--readings <file>', 'What the tape reads: JSON, or a table with kind, from, to, reads, sure.')
    .option('--level <chance>', 'The chance that a reading is suspected where all are good.', '0.05')
    .option('--save <file>', 'Write the course with the layout as built as one more.')
    .option('--fail-on <weight>', FAIL_ON_HELP, 'must')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: Options) => {
      const least = readFailOn(options.failOn);
      const level = levelFrom(options.level);
      const planned = survey(await courseFrom(file, io));
      const { letters, held } = setOutNames(planned);
      const filed = await readingsFrom(options.readings, planned, letters, io);
      const built = asBuiltOf(
        planned,
        filed.map(({ reading }) => reading),
        { level, letters, held },
      );
      const known = new Set(findingsOf(planned).flatMap(({ id, members = [] }) => [id, ...members]));
      const fresh = built.findings.filter(
        ({ id, members = [] }) => !known.has(id) && !members.some((each) => known.has(each)),
      );
      const asked: Asked = { planned, letters, filed, built, fresh };
      reportFailure(failsOn(fresh, least));
      if (options.save !== undefined) await save(options.save, asked);
      if (options.json === true) return printJson(io, asBuiltDocument(asked));
      printAsBuilt(io, asked);
      if (options.save !== undefined) io.out(`\nKept in ${options.save}: ${currentTitle(asked)}.\n`);
    });
}

function currentTitle({ built: { course } }: Asked): string {
  return course.layouts.find(({ id }) => id === course.current)?.title ?? '';
}
