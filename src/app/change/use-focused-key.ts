import { useDeskState } from '../desk-context.tsx';
import { type ComparedState, useComparedState } from './compared.ts';

/** The key of the thing whose origin is shown: of the one that is pointed at, otherwise of the one that is chosen. */
export function focusedKey({ focused }: Pick<ComparedState, 'focused'>, [chosen]: readonly string[]): string | null {
  if (focused !== null) return focused;
  // A bend or the start of the line is no thing that lies in two layouts.
  return chosen === undefined || chosen.includes(':') ? null : chosen;
}

export function useFocusedKey(): string | null {
  const compared = useComparedState((state) => state);
  const chosen = useDeskState((state) => state.chosen);
  return focusedKey(compared, chosen);
}
