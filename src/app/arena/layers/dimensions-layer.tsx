import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { useTapes } from '../overlays/use-dimensions.ts';
import { inkKept, inkMeasured, inkPegs, inkTapeEnd } from '../painters/kept-mark.ts';
import { Inked, useLooks } from './layers.tsx';

/** The tapes of what is kept, the pegs of what is fixed, and the tape in the hand. */
export function TapesLayer() {
  const looks = useLooks();
  const camera = useViewState((state) => state.camera);
  const survey = useDeskState((state) => state.survey);
  const stage = useDeskState((state) => state.stage);
  const measuring = useDeskState((state) => state.measuring);
  const measured = useDeskState((state) => state.measured);
  const { kept, labels } = useTapes();
  return (
    <Inked
      draw={(context) => {
        if (stage === 'set') inkPegs(context, survey, { camera, looks });
        inkKept(context, kept, { camera, looks, labels });
        if (measured !== null) inkMeasured(context, measured, { camera, looks });
        const from = measured === null ? (measuring?.from ?? null) : null;
        if (from === null) return;
        const piece = from.on === 'piece' ? survey.pieces.find((each) => each.key === from.key) : undefined;
        const along = from.on === 'piece' ? (from.at - 0.5) * (piece?.figure.length ?? 0) : 0;
        const at =
          from.on !== 'piece'
            ? from.at
            : piece === undefined
              ? undefined
              : {
                  x: piece.pose.x + along * Math.cos(piece.pose.angle),
                  y: piece.pose.y + along * Math.sin(piece.pose.angle),
                };
        if (at !== undefined) inkTapeEnd(context, at, { camera, looks });
      }}
    />
  );
}
