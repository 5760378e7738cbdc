import { printNotesOf, printsOf } from '../../../core/survey.ts';
import { useDeskState } from '../../desk-context.tsx';
import { usePlayerState } from '../../ride/player-context.tsx';
import { useViewState } from '../../view.ts';
import { paintPrints } from '../painters/paint-prints.ts';
import { PaintedLayer } from './painted-layer.tsx';
import { useTheme } from './use-theme.ts';

/** The hoof prints, when they are wanted. They are worked out at rest and not during a drag. */
export function PrintsLayer() {
  const theme = useTheme();
  const { camera, size } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const isHeld = useDeskState((state) => state.gesture !== null);
  const isRide = useDeskState((state) => state.stage === 'ride');
  const isWanted = usePlayerState((state) => state.hasPrints);
  if (!isWanted || !isRide || isHeld) return null;
  return (
    <PaintedLayer
      draw={(context) => {
        const hoof = survey.horse.hoof.value;
        paintPrints(context, { prints: printsOf(survey), notes: printNotesOf(survey), hoof }, { camera, theme, size });
      }}
    />
  );
}
