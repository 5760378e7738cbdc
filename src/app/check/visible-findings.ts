import type { Finding } from '../../core/checks/check.ts';
import { closerFindingsOf } from '../../core/checks/checks.ts';
import { unwaivedFindings } from '../../core/checks/results/waived.ts';
import type { DeskState } from '../../desk/desk.ts';

const opened = new WeakMap<readonly Finding[], readonly Finding[]>();

/** The findings that nobody has waived: the same list for the same findings. */
function open(findings: readonly Finding[]): readonly Finding[] {
  const known = opened.get(findings);
  if (known !== undefined) return known;
  const own = unwaivedFindings(findings);
  opened.set(findings, own);
  return own;
}

/** What is shown: at Check all that is found, with a closer look while nothing is dragged; elsewhere what is open. */
export function lookedAt({ stage, gesture, survey, findings }: DeskState): readonly Finding[] {
  if (stage !== 'check') return open(findings);
  return gesture === null ? closerFindingsOf(survey) : findings;
}

/** What is open of what is shown. */
export function openAt(state: DeskState): readonly Finding[] {
  return open(lookedAt(state));
}

/** How many open findings ask for something to be done: notes do not. */
export function countToMend({ findings }: DeskState): number {
  return open(findings).filter(({ weight }) => weight !== 'note').length;
}
