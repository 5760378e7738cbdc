import { useDeskState } from '../desk-context.tsx';
import { useComparedState } from './compared.ts';

/** The thing whose origin is shown: the one that is pointed at, otherwise the one that is chosen. */
export function useFocusedKey(): string | null {
  const focused = useComparedState((state) => state.focused);
  const chosen = useDeskState((state) => state.chosen[0]);
  if (focused !== null) return focused;
  // A bend or the start of the line is no thing that lies in two layouts.
  return chosen === undefined || chosen.includes(':') ? null : chosen;
}
