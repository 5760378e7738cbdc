import { useRef } from 'react';
import type { Survey } from '../../core/survey.ts';
import { useDeskState } from '../desk-context.tsx';

/** The survey when nothing is dragged; during a drag the last such one: what takes long waits for the end of it. */
export function useRestingSurvey(): Survey {
  const now = useDeskState((state) => (state.gesture === null ? state.survey : null));
  const first = useDeskState((state) => state.survey);
  const resting = useRef<Survey | null>(null);
  if (now !== null) resting.current = now;
  return resting.current ?? first;
}
