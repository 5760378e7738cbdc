import type { Finding } from '../../core/checks/check.ts';
import { unwaivedFindings } from '../../core/checks/results/waived.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { DeskState } from '../../desk/desk.ts';

/** The findings that nobody has waived: the same list for the same findings. */
const withoutWaived = memoizeByIdentity((findings: readonly Finding[]): readonly Finding[] => {
  const own = unwaivedFindings(findings);
  return own;
});

/** What is shown: at Check all that is found, with a closer look while nothing is dragged; elsewhere what is open. */
export function visibleFindings(state: DeskState): readonly Finding[] {
  return state.stage === 'check' ? state.closerFindings : withoutWaived(state.findings);
}

/** What is open of what is shown. */
export function openFindings(state: DeskState): readonly Finding[] {
  return withoutWaived(visibleFindings(state));
}

/** How many open findings ask for something to be done: notes do not. */
export function countToFix({ findings }: DeskState): number {
  return withoutWaived(findings).filter(({ weight }) => weight !== 'note').length;
}
