import type { Command } from 'commander';
import type { Finding, Weight } from '../core/checks/check.ts';
import { closerFindingsOf, silentLimits } from '../core/checks/checks.ts';
import { sweepsOf } from '../core/checks/geometry/sweep.ts';
import { bookComparison } from '../core/checks/results/compared.ts';
import { applySafeRemedies } from '../core/checks/results/safe-fixes.ts';
import { unwaivedFindings } from '../core/checks/results/waived.ts';
import { RULEBOOKS, rulebookById } from '../core/checks/rulebooks/rulebooks.ts';
import { type Survey, survey } from '../core/survey.ts';
import { comparisonDocument, findingDocument, printComparison } from './check-compare.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { type Io, printJson } from './io.ts';
import { countWords, FAIL_ON_HELP, failsOn, printFinding, readBookId, readFailOn } from './verdict.ts';

const CAUTION = 'The rule book in force, the show’s officials and the judge decide; this only helps you to look.';

function printCheck(io: Io, surveyed: Survey, findings: readonly Finding[]): void {
  const { course } = surveyed;
  const book = rulebookById(course.rulebook.id);
  const open = unwaivedFindings(findings);
  const waived = findings.length - open.length;
  const more = waived > 0 ? `, ${waived} waived` : '';
  io.out(`${course.title}, by ${book?.title ?? 'no rule book'}: ${countWords(open)}${more}\n`);
  for (const [name, { reason }] of Object.entries(course.rulebook.house)) io.out(`House rule for ${name}: ${reason}\n`);
  for (const finding of findings) printFinding(io, finding);
  const quiet = silentLimits(surveyed).length;
  if (quiet > 0)
    io.out(`\nOn ${quiet === 1 ? '1 limit' : `${quiet} limits`} this book does not say (--json lists them).\n`);
  io.out(`${CAUTION}\n`);
}

function checkDocument(surveyed: Survey, findings: readonly Finding[], failOn: Weight) {
  const { course, layout } = surveyed;
  const { did, left } = applySafeRemedies(course);
  return {
    course: course.title,
    layout: layout.id,
    rulebook: course.rulebook.id,
    level: course.class.level,
    failOn,
    findings: findings.map(findingDocument),
    silent: silentLimits(surveyed).map(({ check, limit }) => ({ check: check.id, limit })),
    sweeps: sweepsOf(surveyed).map(({ leg, obstacle, move, clear, at, key, base }) => {
      return { leg, obstacle, move, clear, at, key, base };
    }),
    fixAll: { did, left },
    caution: CAUTION,
  };
}

interface Options {
  readonly rulebook?: string;
  readonly compare?: string;
  readonly failOn: string;
  readonly json?: boolean;
}

/** `check FILE`: the findings under the course's rule book or another. `reportFailure` is told whether the run fails. */
export function checkCommand(io: Io, reportFailure: (fails: boolean) => void): Command {
  return baseCommand('check', 'What is wrong with a course under its rule book.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option('--rulebook <id>', `Another rule book: ${RULEBOOKS.map((book) => book.id).join(', ')}.`)
    .option('--compare <id>', 'What a second rule book says otherwise.')
    .option('--fail-on <weight>', FAIL_ON_HELP, 'must')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: Options) => {
      const least = readFailOn(options.failOn);
      const id = options.rulebook === undefined ? undefined : readBookId(options.rulebook);
      const second = options.compare === undefined ? undefined : readBookId(options.compare);
      const read = await courseFrom(file, io);
      const course = id === undefined ? read : { ...read, rulebook: { ...read.rulebook, id } };
      const surveyed = survey(course);
      const findings = closerFindingsOf(surveyed);
      reportFailure(failsOn(findings, least));
      const other = second === undefined ? undefined : bookComparison(course, readBookId(course.rulebook.id), second);
      if (options.json === true) {
        const whole = checkDocument(surveyed, findings, least);
        return printJson(io, other === undefined ? whole : { ...whole, compared: comparisonDocument(other) });
      }
      printCheck(io, surveyed, findings);
      if (other !== undefined) printComparison(io, other, course.unit);
    });
}
