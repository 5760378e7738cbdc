import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { useDimensions } from '../overlays/use-dimensions.ts';
import { paintKept, paintPins, paintTapeEnd, paintTapeReading } from '../painters/kept-mark.ts';
import { PaintedLayer } from './painted-layer.tsx';
import { useTheme } from './use-theme.ts';

/** The dimensions of constraints, the pegs of fixed pieces, and the tape. */
export function DimensionsLayer() {
  const theme = useTheme();
  const camera = useViewState((state) => state.camera);
  const survey = useDeskState((state) => state.survey);
  const stage = useDeskState((state) => state.stage);
  const measuring = useDeskState((state) => state.tape);
  const measured = useDeskState((state) => state.tapeReading);
  const { kept, labels } = useDimensions();
  return (
    <PaintedLayer
      draw={(context) => {
        if (stage === 'set') paintPins(context, survey, { camera, theme });
        paintKept(context, kept, { camera, theme, labels });
        if (measured !== null) paintTapeReading(context, measured, { camera, theme });
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
        if (at !== undefined) paintTapeEnd(context, at, { camera, theme });
      }}
    />
  );
}
