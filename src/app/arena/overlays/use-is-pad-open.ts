import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { PICK_RADIUS, usePickRadius } from '../input/pick-radius.ts';

/** Whether the nudge pad is shown: as its button was pressed; until then, where a finger works and something is chosen. */
export function useIsPadOpen(): boolean {
  const isCoarse = usePickRadius() === PICK_RADIUS.finger;
  const pad = useViewState((state) => state.pad);
  const hasChosen = useDeskState((state) => state.chosen.length > 0);
  return pad ?? (isCoarse && hasChosen);
}
