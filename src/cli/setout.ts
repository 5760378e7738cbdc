import type { Command } from 'commander';
import type { CrewChoice } from '../core/course/course.ts';
import { DEFAULT_CREW } from '../core/course/course.ts';
import { printLength, readLength } from '../core/measure/length.ts';
import { setOutCrewOf } from '../core/setout/crew.ts';
import { planSetOut } from '../core/setout/plan-setout.ts';
import type { GapError, SetOut } from '../core/setout/setout.ts';
import { setOutDocument } from '../core/setout/setout-document.ts';
import { USUAL_TAPE } from '../core/setout/tape-errors.ts';
import { walkWords } from '../core/setout/words/reading-words.ts';
import {
  gapPlaceWords,
  partNames,
  partTitle,
  SET_OUT_CAUTION,
  stepSentences,
  toolWords,
} from '../core/setout/words/setout-words.ts';
import { type Survey, survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';

interface Options {
  readonly crew?: string;
  readonly tapes?: string;
  readonly tape?: string;
  readonly marked?: string;
  readonly square?: string;
  readonly json?: boolean;
}

/** The shortest and the longest tape, metres: as a course file allows. */
const TAPE = { least: 3, most: 100 } as const;

function whole<Count extends number>(flag: string, text: string, allowed: readonly Count[]): Count {
  const found = allowed.find((each) => String(each) === text.trim());
  if (found === undefined) throw new BadInput(`${flag} ${text}: it takes ${allowed[0]} to ${allowed.at(-1)}.`);
  return found;
}

function oneOf<Word extends string>(flag: string, text: string, allowed: readonly Word[]): Word {
  const found = allowed.find((each) => each === text);
  if (found === undefined) throw new BadInput(`${flag} ${text}: it takes ${allowed.join(' or ')}.`);
  return found;
}

function crewChoice({ crew, tapes, tape, marked, square }: Options, before: CrewChoice, unit: 'ft' | 'm'): CrewChoice {
  const marks = marked === undefined ? before.marked : oneOf('--marked', marked, ['ft', 'm'] as const);
  const long = tape === undefined ? undefined : readLength(tape, marks ?? unit);
  if (long?.kind === 'refused') throw new BadInput(`--tape ${tape}: ${long.why}`);
  if (long !== undefined && (long.value < TAPE.least || long.value > TAPE.most)) {
    throw new BadInput(`--tape ${tape}: a tape is between ${TAPE.least} m and ${TAPE.most} m long.`);
  }
  return {
    ...before,
    ...(crew === undefined ? {} : { people: whole('--crew', crew, [1, 2, 3, 4] as const) }),
    ...(tapes === undefined ? {} : { tapes: whole('--tapes', tapes, [1, 2, 3] as const) }),
    ...(long === undefined ? {} : { tape: long.value }),
    ...(marks === undefined ? {} : { marked: marks }),
    ...(square === undefined
      ? {}
      : {
          rightAngle: oneOf('--square', square, ['3-4-5', 'board'] as const) === 'board' ? 'board' : 'three-four-five',
        }),
  };
}

function gapRow(of: Survey, plan: SetOut, gap: GapError): readonly string[] {
  const part = plan.parts.find(({ steps }) => steps.some(({ piece }) => piece === gap.keys[0]));
  if (part === undefined) throw new Error(`set-out: no part lays ${gap.keys[0]}`);
  const { marked } = plan.crew;
  return [
    gapPlaceWords(partNames(of, plan, part), gap),
    printLength(gap.plan, marked),
    printLength(gap.rounded, marked),
    printLength(gap.sigma, marked),
  ];
}

function printPlan(io: Io, of: Survey, plan: SetOut): void {
  const { parts, gaps, crew, worstGap, walked } = plan;
  io.out(`${of.course.title}, ${of.layout.title}: set out in ${parts.length} parts\n`);
  for (const tool of toolWords(of, plan)) io.out(`  ${tool}\n`);
  for (const [i, part] of parts.entries()) {
    const names = partNames(of, plan, part);
    io.out(`\n${i + 1}. ${capitalized(partTitle(names))}\n`);
    for (const step of part.steps) {
      const [first, ...others] = stepSentences(names, step);
      io.out(`  ${`${step.number}.`.padEnd(4)}${first}\n`);
      for (const sentence of others) io.out(`      ${sentence}\n`);
    }
  }
  const ridden = gaps.filter(({ isRidden }) => isRidden);
  if (ridden.length > 0) {
    const rows = ridden.map((gap) => gapRow(of, plan, gap));
    io.out(`\n${table(['gap on the line', 'as drawn', 'by these readings', 'standard error'], rows)}`);
    io.out(`\nThe worst gap has a standard error of ${printLength(worstGap, crew.marked)}; `);
  } else io.out('\nNo gap is ridden; ');
  io.out(`${walkWords(walked, crew.marked)} are walked from the way in.\n\n${SET_OUT_CAUTION}\n`);
}

/** `setout FILE`: the taped steps by which a crew lays the current layout, and how far off its gaps can come to be. */
export function setOutCommand(io: Io): Command {
  return baseCommand('setout', 'The taped steps by which a crew sets the layout out, and how sure its gaps are.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option('--crew <people>', 'How many people set out: 1 to 4.')
    .option('--tapes <count>', 'How many tapes there are: 1 to 3.')
    .option('--tape <length>', 'How long each tape is, like 50ft or 30m.')
    .option('--marked <unit>', 'What the tapes are marked in: ft or m.')
    .option('--square <how>', 'How a right angle is made: 3-4-5 or board.')
    .option('--json', 'One JSON document in SI units; its schema is assets/schema/setout.schema.json.')
    .action(async (file: string, options: Options) => {
      const course = await courseFrom(file, io);
      const crew = crewChoice(options, course.crew ?? DEFAULT_CREW, course.unit);
      const of = survey({ ...course, crew });
      if (of.pieces.length === 0) throw new BadInput(`${file} has nothing to set out: its layout is empty.`);
      const plan = planSetOut(of, setOutCrewOf(of.course));
      if (options.json === true) return printJson(io, setOutDocument(of, plan, USUAL_TAPE.byEye.value));
      printPlan(io, of, plan);
    });
}
