import type { Command } from 'commander';
import { tradeTitle } from '../core/course/obstacle-title.ts';
import { printDuration } from '../core/measure/duration.ts';
import { printLength } from '../core/measure/length.ts';
import { PRINT_WORDS } from '../core/ride/hoof-print.ts';
import type { LeadNote } from '../core/ride/line.ts';
import { linePlaces } from '../core/ride/line-places.ts';
import { type Survey, survey } from '../core/survey.ts';
import { printNotesOf, printsOf } from '../core/survey-prints.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { type Io, printJson } from './io.ts';
import { table } from './table.ts';

interface LegDocument {
  readonly number: number;
  readonly leg: string;
  readonly obstacle: string;
  readonly title: string;
  readonly passage: string;
  readonly way: string;
  readonly approach: string;
  readonly gait: string;
  readonly lead: string | null;
  readonly length: number;
  readonly seconds: number;
}

function legDocuments({ layout, line }: Survey): LegDocument[] {
  return layout.ride.legs.map((leg, i) => {
    const obstacle = layout.obstacles.find(({ id }) => id === leg.obstacle);
    const passage = obstacle?.passages.find(({ id }) => id === leg.passage);
    return {
      number: i + 1,
      leg: leg.id,
      obstacle: leg.obstacle,
      title: obstacle === undefined ? leg.obstacle : (obstacle.name ?? tradeTitle(obstacle, layout)),
      passage: leg.passage,
      way: passage?.title ?? '',
      approach: leg.approach,
      gait: leg.gait,
      lead: leg.lead ?? null,
      length: line.elements.filter((element) => element.leg === i).reduce((sum, { length }) => sum + length, 0),
      seconds: line.clock.legs[i] ?? 0,
    };
  });
}

type LengthPrinter = (metres: number) => string;

/** Legs with what each takes in a go and in the class. */
function legRows(surveyed: Survey, length: LengthPrinter): string[][] {
  return legDocuments(surveyed).map((leg) => [
    String(leg.number),
    leg.title,
    leg.way,
    leg.approach,
    leg.lead === null ? leg.gait : `${leg.gait}, ${leg.lead} lead`,
    length(leg.length),
    printDuration(leg.seconds),
    printDuration(surveyed.classClock.legs[leg.number - 1]?.class ?? 0),
  ]);
}

function gapRows({ line }: Survey, length: LengthPrinter): string[][] {
  return line.gaps.map(({ leg, keys, gait, taped, ridden, landings }) => [
    String(leg + 1),
    keys.join(' to '),
    gait,
    length(taped),
    length(ridden),
    String(landings.count),
    length(landings.each),
    landings.fits ? 'fits' : `does not fit; ${landings.nearest.map(length).join(' or ')} would`,
  ]);
}

function leadSentence(note: LeadNote, length: LengthPrinter): string {
  const number = note.leg + 1;
  switch (note.kind) {
    case 'wrong-lead':
      return `Number ${number}: ${note.lead} lead on a bend to the ${note.bend} of ${length(note.radius)}, the wrong one.`;
    case 'counter-lope':
      return `Number ${number}: a counter-lope, ${note.lead} lead on a bend to the ${note.bend} of ${length(note.radius)}.`;
    case 'change': {
      const room = `${length(note.room)} for it; it wants ${length(note.wants)}`;
      const how = note.how === undefined ? 'a change' : `a ${note.how} change`;
      return `Number ${number}: ${how} of lead, ${note.before} to ${note.after}, at ${length(note.place)}, with ${room}.`;
    }
    case 'open':
      return `Number ${number}: the lead of the lope is open; no bend gives one and none is chosen.`;
  }
}

/** What a rider has to know beside the gaps: leads, transitions without room, hooves on poles, ways that do not exist. */
function remarks(surveyed: Survey, length: LengthPrinter): string[] {
  const { line } = surveyed;
  const tight = line.transitions.filter(({ fits }) => !fits);
  const met = printNotesOf(surveyed).filter(({ kind }) => kind === 'meets');
  return [
    ...line.breaks.map(({ leg, why }) => `No line to or over number ${leg + 1}: ${why}`),
    ...line.leadNotes.map((note) => leadSentence(note, length)),
    ...tight.map(
      ({ leg, before, after, length: wants, room }) =>
        `Number ${leg + 1}: ${before} to ${after} wants ${length(wants)} and has ${length(room)}.`,
    ),
    ...met.map(
      ({ key, likelihood, print: { leg, gait, foot } }) =>
        `Number ${leg + 1}: ${PRINT_WORDS[gait]} the ${FEET[foot]} comes down on ${key}, ${Math.round(100 * likelihood)} times in 100.`,
    ),
  ];
}

const FEET = { LH: 'left hind', LF: 'left fore', RH: 'right hind', RF: 'right fore' } as const;

function classWords({ classClock, layout }: Survey): string {
  const { entries, whole, allotted, over, shorten, drags } = classClock;
  const dragged = drags === 0 ? '' : `, ${drags} ${drags === 1 ? 'drag' : 'drags'}`;
  const all = `The class: ${entries} ${entries === 1 ? 'entry' : 'entries'}${dragged}, ${printDuration(whole)}`;
  if (allotted === null) return `${all}.`;
  if (over === 0) return `${all} of ${printDuration(allotted)}.`;
  const [first] = shorten;
  const title = layout.obstacles.find(({ id }) => id === first?.obstacle)?.name ?? first?.obstacle ?? '';
  const by = `${printDuration(over)} over ${printDuration(allotted)}`;
  if (first === undefined) return `${all}, ${by}.`;
  const enough = first.enough ? '' : ', which it has not to give';
  return `${all}, ${by}. To shorten first: number ${first.leg + 1} (${title}), by ${printDuration(first.by)} a go${enough}.`;
}

function printRide(io: Io, surveyed: Survey): void {
  const { course, line } = surveyed;
  const length: LengthPrinter = (metres) => printLength(metres, course.unit);
  io.out(`${course.title}: ${length(line.length)}, ${printDuration(line.clock.go)}\n`);
  io.out(`${classWords(surveyed)}\n\n`);
  const head = ['no', 'obstacle', 'way', 'come to at', 'gait', 'line', 'time', 'in the class'];
  io.out(table(head, legRows(surveyed, length)));
  const gaps = gapRows(surveyed, length);
  if (gaps.length > 0) {
    io.out(`\n${table(['no', 'gap', 'gait', 'taped', 'ridden', 'landings', 'each', ''], gaps)}`);
  }
  const shown = line.shown
    .filter(({ total }) => total > 0)
    .map(({ gait, total, longest, between }) => [
      gait,
      ...[total, longest.to - longest.from, between.to - between.from].map(length),
    ]);
  if (shown.length > 0) io.out(`\n${table(['gait', 'in all', 'longest', 'between obstacles'], shown)}`);
  const places = linePlaces(line).map(({ at, words }) => [length(at), words.join(', ')]);
  if (places.length > 0) io.out(`\n${table(['at', 'the gait or the lead changes'], places)}`);
  const notes = remarks(surveyed, length);
  if (notes.length > 0) io.out(`\n${notes.join('\n')}\n`);
}

/** `ride FILE`: the line of travel with its gaps, landings, prints and times. */
export function rideCommand(io: Io): Command {
  return baseCommand('ride', 'The line of travel of a course: legs, gaps, landings, leads, prints, times.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: { json?: boolean }) => {
      const surveyed = survey(await courseFrom(file, io));
      const { course, layout, line, horse, classClock } = surveyed;
      if (options.json !== true) return printRide(io, surveyed);
      printJson(io, {
        course: course.title,
        layout: layout.id,
        horse: horse.id,
        length: line.length,
        seconds: line.clock.go,
        legs: legDocuments(surveyed),
        elements: line.elements,
        crossings: line.crossings,
        gaps: line.gaps,
        transitions: line.transitions,
        leads: line.leads,
        leadNotes: line.leadNotes,
        shown: line.shown,
        prints: printsOf(surveyed),
        printNotes: printNotesOf(surveyed),
        class: classClock,
        breaks: line.breaks,
      });
    });
}
