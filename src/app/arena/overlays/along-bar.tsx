import { handWords } from '../../../words/hand.ts';
import { useDesk, useDeskState, useLiveDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { screenOf } from '../camera.ts';

/** What moves along with the one piece that is chosen, and the switch that moves just this piece. */
export function AlongBar() {
  const desk = useDesk();
  const along = useDeskState((state) => state.along);
  const isAlone = useDeskState((state) => state.isAlone);
  const isAgain = useDeskState((state) => state.canRedoAlone);
  const isBusy = useDeskState((state) => state.gesture !== null);
  if (isBusy || (along === null && !isAlone)) return null;
  return (
    <p className="suggestion-bar along-bar">
      <span>{isAlone ? handWords.movesAlone : along}</span>
      <button
        type="button"
        className="suggestion-keep"
        aria-pressed={isAlone}
        aria-keyshortcuts="J"
        onClick={() => desk.toggleAlone()}
      >
        {isAgain && !isAlone ? handWords.againAlone : handWords.justThisPiece} <kbd>J</kbd>
      </button>
    </p>
  );
}

/** The same beside the piece while it is dragged. */
export function AlongLabel() {
  const isDragging = useLiveDeskState((state) => state.gesture !== null);
  const says = useLiveDeskState((state) => (state.gesture === null ? null : state.along));
  const key = useLiveDeskState((state) => state.chosen[0]);
  const pose = useLiveDeskState((state) =>
    state.gesture === null || state.along === null
      ? undefined
      : state.survey.pieces.find((piece) => piece.key === key)?.pose,
  );
  const camera = useViewState((state) => state.camera);
  const { width, height } = useViewState((state) => state.size);
  if (!isDragging || says === null || pose === undefined) return null;
  const at = screenOf(camera, pose);
  const x = Math.max(8, Math.min(width - 308, at.x + 24));
  const y = Math.max(8, Math.min(height - 60, at.y + 24));
  return (
    <p className="along-label" style={{ transform: `translate(${x}px, ${y}px)` }} aria-hidden="true">
      {says} <kbd>J</kbd> {handWords.justThisPiece.toLowerCase()}
    </p>
  );
}
