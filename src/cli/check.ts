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
import { unknownWord } from './did-you-mean.ts';
import { BadInput, type Io, printJson } from './io.ts';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];
const CAUTION = 'The rule book in force, the show’s officials and the judge decide; this only helps you to look.';

function printFinding(io: Io, finding: Finding): void {
  const number = finding.leg === undefined ? '' : `${finding.leg + 1}: `;
  const waived = finding.waived === undefined ? '' : ', waived';
  io.out(`\n${finding.weight.toUpperCase()}${waived}  ${number}${finding.says}\n`);
  if (finding.waived !== undefined) {
    io.out(`  Waived: ${finding.waived}\n`);
    return;
  }
  io.out(`  Why: ${finding.because}\n  Source: ${finding.source}\n`);
  for (const { says, safe } of finding.remedies) io.out(`  Fix${safe === true ? '' : ' (look first)'}: ${says}\n`);
}

function printCheck(io: Io, surveyed: Survey, findings: readonly Finding[]): void {
  const { course } = surveyed;
  const book = rulebookById(course.rulebook.id);
  const open = unwaivedFindings(findings);
  const counts = WEIGHTS.map((weight) => {
    const count = open.filter((finding) => finding.weight === weight).length;
    return count === 1 ? `1 ${weight}` : `${count} ${weight === 'note' ? 'notes' : `${weight}s`}`;
  });
  const waived = findings.length - open.length;
  const more = waived > 0 ? [...counts, `${waived} waived`] : counts;
  io.out(`${course.title}, by ${book?.title ?? 'no rule book'}: ${more.join(', ')}\n`);
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

/** The weight under which a finding does not fail the run. */
function failOn(text: string): Weight {
  const weight = WEIGHTS.find((each) => each === text);
  if (weight === undefined) throw new BadInput(`--fail-on: ${unknownWord('weight', text, WEIGHTS)}`);
  return weight;
}

function bookId(id: string): string {
  const known = RULEBOOKS.map((book) => book.id);
  if (!known.includes(id)) throw new BadInput(unknownWord('rule book', id, known));
  return id;
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
    .option(
      '--fail-on <weight>',
      'Exit 1 on findings of this weight or above that are not waived: must, should or note.',
      'must',
    )
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: Options) => {
      const least = failOn(options.failOn);
      const id = options.rulebook === undefined ? undefined : bookId(options.rulebook);
      const second = options.compare === undefined ? undefined : bookId(options.compare);
      const read = await courseFrom(file, io);
      const course = id === undefined ? read : { ...read, rulebook: { ...read.rulebook, id } };
      const surveyed = survey(course);
      const findings = closerFindingsOf(surveyed);
      reportFailure(unwaivedFindings(findings).some(({ weight }) => WEIGHTS.indexOf(weight) <= WEIGHTS.indexOf(least)));
      const other = second === undefined ? undefined : bookComparison(course, bookId(course.rulebook.id), second);
      if (options.json === true) {
        const whole = checkDocument(surveyed, findings, least);
        return printJson(io, other === undefined ? whole : { ...whole, compared: comparisonDocument(other) });
      }
      printCheck(io, surveyed, findings);
      if (other !== undefined) printComparison(io, other, course.unit);
    });
}
