import type { Command } from 'commander';
import {
  type CarryNames,
  carrySentence,
  carryStops,
  changeOverCautions,
  countedLoads,
  loadWords,
  stayWords,
  stopPlace,
  teamWords,
  truckLoads,
  truckWords,
} from '../core/change/carry-words.ts';
import type { Carry, ChangeOver, Crew, Stop } from '../core/change/change-over.ts';
import { crewOf } from '../core/change/crew.ts';
import { changeOver } from '../core/change/plan-change-over.ts';
import { arenaSizeWords, isSameSize } from '../core/course/arena-size.ts';
import { type Course, currentLayout, type Layout } from '../core/course/course.ts';
import { placedObstacle } from '../core/course/placed.ts';
import { printMinutes } from '../core/measure/duration.ts';
import { printLength } from '../core/measure/length.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { unknownWord } from './did-you-mean.ts';
import { BadInput, type Io, printJson } from './io.ts';

/** Both layouts with their courses, and who changes the one into the other. */
interface Asked {
  readonly from: Course;
  readonly to: Course;
  readonly names: CarryNames;
  readonly crew: Crew;
}

interface Options {
  readonly from?: string;
  readonly to?: string;
  readonly crew?: string;
  readonly json?: boolean;
}

/** The layout of that id or title, or the one that is shown. Throws BadInput where there is none. */
function layoutOf(course: Course, wanted: string | undefined): Layout {
  if (wanted === undefined) return currentLayout(course);
  const found = course.layouts.find(({ id, title }) => id === wanted || title === wanted);
  if (found !== undefined) return found;
  const known = course.layouts.map(({ id }) => id);
  throw new BadInput(unknownWord('layout', wanted, known));
}

function readPeople(text: string): number {
  if (/^[1-4]$/.test(text)) return Number(text);
  throw new BadInput(`--crew is "${text}"; a crew is of 1, 2, 3 or 4.`);
}

/** What is carried in one arena cannot be carried in another. */
function refuseOtherArena(from: Course, to: Course): void {
  if (isSameSize(from.arena, to.arena)) return;
  throw new BadInput(
    `The arenas differ: ${from.arena.title} is ${arenaSizeWords(from.arena, from.unit)}, ${to.arena.title} is ${arenaSizeWords(to.arena, from.unit)}. Two layouts of one arena would be right.`,
  );
}

async function asked(files: readonly string[], options: Options, io: Io): Promise<Asked> {
  const [first = '', second] = files;
  const from = await courseFrom(first, io);
  const to = second === undefined ? from : await courseFrom(second, io);
  if (second === undefined && options.from === undefined && options.to === undefined) {
    throw new BadInput('change wants two files, or one with --from and --to: the layouts in it.');
  }
  refuseOtherArena(from, to);
  const usual = crewOf(to.crew === undefined ? from : to);
  const crew = options.crew === undefined ? usual : { ...usual, people: readPeople(options.crew) };
  const names = { from: layoutOf(from, options.from), to: layoutOf(to, options.to), unit: from.unit };
  return { from, to, names, crew };
}

function printCarry(io: Io, carry: Carry, { names, from: { arena } }: Asked): void {
  io.out(`  ${carry.number}. ${carrySentence(carry, names)}\n`);
  const places = [
    carry.from.kind === 'truck' ? '' : `from ${stopPlace(carry.from, arena, names.unit)}`,
    carry.to.kind === 'truck' ? '' : `to ${stopPlace(carry.to, arena, names.unit)}`,
  ];
  io.out(`     ${places.filter((each) => each !== '').join('; ')}\n`);
}

function printPasses(io: Io, plan: ChangeOver, from: Asked): void {
  for (let pass = 1; pass <= plan.passes; pass += 1) {
    for (const [team, { people }] of plan.teams.entries()) {
      const carries = plan.carries.filter((each) => each.pass === pass && each.team === team);
      if (carries.length === 0) continue;
      io.out(`\nPass ${pass}, team ${team + 1}, ${teamWords(people)}\n`);
      for (const carry of carries) printCarry(io, carry, from);
    }
  }
}

function printChange(io: Io, plan: ChangeOver, from: Asked): void {
  const { names, crew } = from;
  const { unit } = names;
  const { out, back } = truckLoads(plan);
  io.out(`${from.from.title}, ${names.from.title}, into ${from.to.title}, ${names.to.title}\n`);
  if (plan.carries.length === 0) {
    io.out('The two lie the same on the ground: nothing is carried.\n');
    return;
  }
  const people = crew.people === 1 ? '1 person' : `${crew.people} people`;
  io.out(
    `${plan.carries.length} to carry, ${plan.stays.length} to leave; ${printLength(plan.metres, unit)} under loads, and no other choice of what goes where costs less (proven); about ${printMinutes(plan.seconds)} for ${people} (estimate).\n`,
  );
  io.out(`The truck stands ${truckWords(crew, from.from.arena, unit)}. Places are those of the middle of a thing.\n`);
  printPasses(io, plan, from);
  io.out(`\nFrom the truck: ${countedLoads(out, unit)}\nTo the truck: ${countedLoads(back, unit)}\n`);
  io.out(`Stays: ${stayWords(plan, names).join('; ') || 'nothing'}\n`);
  for (const [team, { walked, done }] of plan.teams.entries()) {
    io.out(`Team ${team + 1} walks ${printLength(walked, unit)} and is done after ${printMinutes(done)} (estimate).\n`);
  }
  io.out(`\n${changeOverCautions(plan).join('\n')}\n`);
}

function stopDocument(stop: Stop) {
  if (stop.kind !== 'ground') return stop;
  const { key, pose, held } = stop.load;
  return { kind: stop.kind, key, at: pose, held };
}

function changeDocument(plan: ChangeOver, { from, to, names }: Asked) {
  const { out, back } = truckLoads(plan);
  return {
    from: { course: from.title, layout: names.from.id },
    to: { course: to.title, layout: names.to.id },
    ...plan,
    stays: plan.stays.map((each) => ({ from: each.from.key, to: each.to.key, off: each.off })),
    carries: plan.carries.map(({ load, from: taken, to: put, ...rest }) => ({
      ...rest,
      thing: load.thing,
      type: load.type,
      words: loadWords(load, names.unit),
      stops: carryStops({ ...rest, load, from: taken, to: put }, names),
      from: stopDocument(taken),
      to: stopDocument(put),
    })),
    truck: { out: out.map(({ key }) => key), back: back.map(({ key }) => key) },
    cautions: changeOverCautions(plan),
  };
}

/** `change A B`, or `change FILE --from LAYOUT --to LAYOUT`: what is carried where to turn one layout into the next. */
export function changeCommand(io: Io): Command {
  return baseCommand('change', 'What a crew carries where to turn one layout into another.', io)
    .argument('<file>', 'The course that lies there (*.course.json).')
    .argument('[next]', 'The course that comes next; without it, --from and --to name layouts of the one file.')
    .option('--from <layout>', 'A layout of the first file; else the one that is shown.')
    .option('--to <layout>', 'A layout of the second file; else the one that is shown.')
    .option('--crew <people>', 'How many carry, 1 to 4; else as the course says, or 2.')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, next: string | undefined, options: Options) => {
      const wanted = await asked(next === undefined ? [file] : [file, next], options, io);
      const { names, crew } = wanted;
      const plan = changeOver(names.from.obstacles.map(placedObstacle), names.to.obstacles.map(placedObstacle), crew);
      if (options.json === true) return printJson(io, changeDocument(plan, wanted));
      printChange(io, plan, wanted);
    });
}
