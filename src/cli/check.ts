import type { Command } from 'commander';
import type { Finding, Weight } from '../core/checks/check.ts';
import { findingsOf, silent } from '../core/checks/checks.ts';
import { RULEBOOKS, rulebookById } from '../core/checks/rulebooks.ts';
import { type Survey, survey } from '../core/survey.ts';
import { courseFrom } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { unknownWord } from './spelling.ts';
import { verb } from './verb.ts';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];

function told({ remedies, ...finding }: Finding) {
  return { ...finding, remedies: remedies.map(({ says }) => says) };
}

function printPlain(io: Io, surveyed: Survey, findings: readonly Finding[]): void {
  const book = rulebookById(surveyed.course.rulebook.id);
  const counts = WEIGHTS.map((weight) => {
    const count = findings.filter((finding) => finding.weight === weight).length;
    return count === 1 ? `1 ${weight}` : `${count} ${weight === 'note' ? 'notes' : `${weight}s`}`;
  });
  io.out(`${surveyed.course.title}, by ${book?.title ?? 'no rule book'}: ${counts.join(', ')}\n`);
  for (const finding of findings) {
    const number = finding.leg === undefined ? '' : `${finding.leg + 1}: `;
    io.out(`\n${finding.weight.toUpperCase()}  ${number}${finding.says}\n`);
    io.out(`  Why: ${finding.because}\n  Source: ${finding.source}\n`);
    for (const { says } of finding.remedies) io.out(`  Fix: ${says}\n`);
  }
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

/** `check FILE`: the findings under the course's rule book or another. `found` is told whether the run fails. */
export function checkVerb(io: Io, found: (fails: boolean) => void): Command {
  return verb('check', 'What is wrong with a course under its rule book.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option('--rulebook <id>', `Another rule book: ${RULEBOOKS.map((book) => book.id).join(', ')}.`)
    .option('--fail-on <weight>', 'Exit 1 on findings of this weight or above: must, should or note.', 'must')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: { rulebook?: string; failOn: string; json?: boolean }) => {
      const least = failOn(options.failOn);
      const id = options.rulebook === undefined ? undefined : bookId(options.rulebook);
      const read = await courseFrom(file, io);
      const course = id === undefined ? read : { ...read, rulebook: { ...read.rulebook, id } };
      const surveyed = survey(course);
      const findings = findingsOf(surveyed);
      found(findings.some(({ weight }) => WEIGHTS.indexOf(weight) <= WEIGHTS.indexOf(least)));
      if (options.json !== true) return printPlain(io, surveyed, findings);
      printJson(io, {
        course: course.title,
        layout: surveyed.layout.id,
        rulebook: course.rulebook.id,
        failOn: least,
        findings: findings.map(told),
        silent: silent(surveyed).map(({ check, limit }) => ({ check: check.id, limit })),
      });
    });
}
