import { useEffect, useState } from 'react';
import { appWords } from '../words/app.ts';
import { terms } from '../words/terms.ts';
import { openFindings } from './check/visible-findings.ts';
import { useDeskState } from './desk-context.tsx';

/** Long enough for a drag to end before its findings are read out. */
const REST_MS = 600;

/** What happened last and what is found, read out to those who do not see it. */
export function LiveRegion() {
  const said = useDeskState((state) => state.said);
  const guide = useDeskState((state) => state.guides[0]?.says ?? '');
  const findings = useDeskState(openFindings);
  const gesture = useDeskState((state) => state.gesture);
  const [announced, setAnnounced] = useState('');
  useEffect(() => {
    if (gesture !== null) return;
    const first = findings[0];
    const rest = setTimeout(() => {
      setAnnounced(
        first === undefined
          ? appWords.noFindings
          : appWords.findingsAndFirst(terms.findings(findings.length), first.says),
      );
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [findings, gesture]);
  return (
    <div className="visually-hidden">
      <p role="status" aria-live="polite" data-said>
        {said}
      </p>
      <p aria-live="polite">{guide}</p>
      <p aria-live="polite">{announced}</p>
    </div>
  );
}
