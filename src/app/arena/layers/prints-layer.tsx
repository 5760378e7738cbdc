import { printNotesOf, printsOf } from '../../../core/survey.ts';
import { useDeskState } from '../../desk-context.tsx';
import { usePlayerState } from '../../ride/player-context.tsx';
import { useViewState } from '../../view.ts';
import { inkPrints } from '../painters/paint-prints.ts';
import { Inked, useLooks } from './layers.tsx';

/** The hoof prints, when somebody wants to see them. They are worked out at rest: a drag does not wait for them. */
export function PrintsLayer() {
  const looks = useLooks();
  const { camera, size } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const isHeld = useDeskState((state) => state.gesture !== null);
  const isRide = useDeskState((state) => state.stage === 'ride');
  const isWanted = usePlayerState((state) => state.hasPrints);
  if (!isWanted || !isRide || isHeld) return null;
  return (
    <Inked
      draw={(context) => {
        const hoof = survey.horse.hoof.value;
        inkPrints(context, { prints: printsOf(survey), notes: printNotesOf(survey), hoof }, { camera, looks, size });
      }}
    />
  );
}
