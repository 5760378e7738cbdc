import { WandSparkles } from 'lucide-react';
import { useState } from 'react';
import { applySafeRemedies, type Fix, type SafeFixes } from '../../core/checks/results/safe-fixes.ts';
import { checkWords } from '../../words/check.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { openFindings } from './visible-findings.ts';

/** Long enough for the browser to say that work is under way. */
const SOON_MS = 30;

/** Applies every fix that is safe, in one step, and lists what it did. */
export function FixAll({ done }: { done(): void }) {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const open = useDeskState(openFindings);
  const [isBusy, setBusy] = useState(false);
  const [fixed, setFixed] = useState<SafeFixes | undefined>();
  const fix = () => {
    if (isBusy) return;
    setBusy(true);
    setTimeout(() => {
      const outcome = applySafeRemedies(desk.state().course);
      if (outcome.did.length > 0) desk.edit(checkWords.fixAllSafe, () => outcome.course);
      setFixed(outcome);
      setBusy(false);
      done();
    }, SOON_MS);
  };
  // The list is shown for as long as the course is what the fixes made of it.
  const report = fixed?.course === course ? fixed : undefined;
  if (open.length === 0 && report === undefined) return null;
  return (
    <div className="fix-all">
      <button type="button" className="button" aria-disabled={isBusy} onClick={fix}>
        <WandSparkles aria-hidden="true" />
        {isBusy ? checkWords.tryingEveryFix : checkWords.fixAllSafe}
      </button>
      <div role="status" className="fix-all-report">
        {report !== undefined && <FixReport did={report.did} left={open.length} />}
      </div>
    </div>
  );
}

function FixReport({ did, left }: { readonly did: readonly Fix[]; readonly left: number }) {
  if (did.length === 0) {
    return <p>{checkWords.nothingMendedNoFix}</p>;
  }
  return (
    <>
      <p>
        <strong>{checkWords.made(terms.fixes(did.length))}</strong>
        {checkWords.stillOpen(terms.findings(left))}
      </p>
      <ol className="did">
        {did.map((fix) => (
          <li key={fix.finding}>
            {fix.did}
            <small>{checkWords.fixFor(fix.said)}</small>
          </li>
        ))}
      </ol>
    </>
  );
}
