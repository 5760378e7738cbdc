import { useIsLow } from '../breakpoint.ts';
import { useRememberedSwitch } from '../remembered.ts';

/** The strip can be folded to its head, which leaves the arena the room. */
export interface StripFold {
  readonly isFolded: boolean;
  fold(next: boolean): void;
}

/** In a low window it is folded until it is asked for; a low and a high window each remember their own. */
export function useStripFold(): StripFold {
  const isLow = useIsLow();
  const [isFolded, fold] = useRememberedSwitch(isLow ? 'strip-folded-low' : 'strip-folded', isLow);
  return { isFolded, fold };
}
