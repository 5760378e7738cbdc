import { useEffect, useRef, useState } from 'react';
import type { Finding } from '../core/checks/check.ts';
import { counted } from '../core/text/sentence.ts';
import { byEarWords } from '../words/by-ear.ts';
import { openFindings } from './check/visible-findings.ts';
import { useDeskState } from './desk-context.tsx';
import { useViewState } from './view.ts';

/** Long enough for a drag to end before its findings are read out. */
const REST_MS = 600;

/** What happened last and what is found, read out to those who do not see it. */
export function LiveRegion() {
  const said = useDeskState((state) => state.said);
  const guide = useDeskState((state) => state.guides[0]?.says ?? '');
  const told = useViewState((state) => state.told);
  const announced = useAnnouncedFindings();
  return (
    <div className="visually-hidden">
      <p role="status" aria-live="polite" data-said>
        {said}
      </p>
      <p aria-live="polite">{guide}</p>
      <p aria-live="polite" data-told>
        {told}
      </p>
      <p aria-live="polite" data-found>
        {announced}
      </p>
    </div>
  );
}

/** What came to the findings and what went, once things rest; nothing while they stay as they are. */
function useAnnouncedFindings(): string {
  const findings = useDeskState(openFindings);
  const isChecked = useDeskState((state) => state.isChecked);
  const stage = useDeskState((state) => state.stage);
  const gesture = useDeskState((state) => state.gesture);
  const [announced, setAnnounced] = useState('');
  const last = useRef<{ readonly stage: string; readonly findings: readonly Finding[] } | null>(null);
  useEffect(() => {
    if (gesture !== null || !isChecked) return;
    const rest = setTimeout(() => {
      const before = last.current;
      last.current = { stage, findings };
      // Another stage looks closer: what it finds in addition has not come about just now.
      const says = before?.stage === stage ? changesOf(before.findings, findings) : foundWords(findings);
      if (says !== '') setAnnounced(says);
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [findings, gesture, isChecked, stage]);
  return announced;
}

function foundWords(findings: readonly Finding[]): string {
  const [first] = findings;
  return first === undefined
    ? byEarWords.noFindings
    : byEarWords.found(counted(findings.length, 'finding'), first.says);
}

/** Findings that are worded otherwise than before have come anew: what they measure is another. */
function changesOf(before: readonly Finding[], now: readonly Finding[]): string {
  const known = new Set(before.map(({ says }) => says));
  const [first, ...others] = now.filter(({ says }) => !known.has(says));
  const count = counted(now.length, 'finding');
  if (first !== undefined) return byEarWords.newFindings(others.length + 1, first.says, count);
  if (now.length === 0 && before.length > 0) return byEarWords.noFindings;
  return now.length < before.length ? byEarWords.fewer(before.length - now.length, count) : '';
}
