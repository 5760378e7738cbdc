/** What verbs say about findings: how one is printed, and which weight fails a run. */
import type { Finding, Weight } from '../core/checks/check.ts';
import { unwaivedFindings } from '../core/checks/results/waived.ts';
import { RULEBOOKS, rulebookById } from '../core/checks/rulebooks/rulebooks.ts';
import { unknownWord } from './did-you-mean.ts';
import { BadInput, type Io } from './io.ts';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];

export const FAIL_ON_HELP = 'Exit 1 on findings of this weight or above that are not waived: must, should or note.';

/** The weight that a person typed after --fail-on. Throws BadInput for another word. */
export function readFailOn(text: string): Weight {
  const weight = WEIGHTS.find((each) => each === text);
  if (weight === undefined) throw new BadInput(`--fail-on: ${unknownWord('weight', text, WEIGHTS)}`);
  return weight;
}

/** The id of a rule book that a person typed. Throws BadInput where there is none. */
export function readBookId(id: string): string {
  const known = RULEBOOKS.map((book) => book.id);
  if (rulebookById(id) === undefined) throw new BadInput(unknownWord('rule book', id, known));
  return id;
}

/** Whether a finding that nobody has waived is as heavy as that. */
export function failsOn(findings: readonly Finding[], least: Weight): boolean {
  return unwaivedFindings(findings).some(({ weight }) => WEIGHTS.indexOf(weight) <= WEIGHTS.indexOf(least));
}

/** "2 musts, 1 should, 0 notes". */
export function countWords(findings: readonly Finding[]): string {
  const counts = WEIGHTS.map((weight) => {
    const count = findings.filter((finding) => finding.weight === weight).length;
    return count === 1 ? `1 ${weight}` : `${count} ${weight === 'note' ? 'notes' : `${weight}s`}`;
  });
  return counts.join(', ');
}

export function printFinding(io: Io, finding: Finding): void {
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
