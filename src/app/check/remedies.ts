import { useEffect, useReducer } from 'react';
import type { Finding, Remedy } from '../../core/checks/check.ts';

/** Between two trials the browser can draw and handle input. */
const BREATH_MS = 8;

const tried = new WeakMap<Finding, readonly Remedy[]>();
const waiting = new Set<() => void>();
let isDue = false;

function next(): void {
  isDue = false;
  const [job] = waiting;
  if (job === undefined) return;
  waiting.delete(job);
  job();
  due();
}

function due(): void {
  if (isDue || waiting.size === 0) return;
  isDue = true;
  setTimeout(next, BREATH_MS);
}

/**
 * The fixes of a finding, tried one finding after another so that nothing waits for them; undefined until its turn has
 * come.
 */
export function useRemedies(finding: Finding): readonly Remedy[] | undefined {
  const [, again] = useReducer((turn: number) => turn + 1, 0);
  useEffect(() => {
    if (tried.has(finding)) return;
    const job = () => {
      tried.set(finding, finding.remedies);
      again();
    };
    waiting.add(job);
    due();
    return () => void waiting.delete(job);
  }, [finding]);
  return tried.get(finding);
}
