import { Magnet, Maximize, Minus, Move, Plus, Ruler } from 'lucide-react';
import { arenaWords } from '../../../words/arena.ts';
import { handWords } from '../../../words/hand.ts';
import { terms } from '../../../words/terms.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { useView } from '../../view.ts';
import { useFurniture } from './use-furniture.ts';
import { useIsPadOpen } from './use-is-pad-open.ts';

export function ViewButtons() {
  const desk = useDesk();
  const view = useView();
  const { buttons } = useFurniture();
  const snaps = useDeskState((state) => state.snaps);
  const isPadOpen = useIsPadOpen();
  const isMeasuring = useDeskState((state) => state.tape !== null);
  return (
    <fieldset className={`view-buttons is-${buttons}`}>
      <legend className="visually-hidden">{arenaWords.viewArena}</legend>
      <button
        type="button"
        onClick={() => desk.measure()}
        aria-pressed={isMeasuring}
        aria-label={terms.measure}
        title={arenaWords.measureBetweenTwoThings}
      >
        <Ruler aria-hidden="true" />
        <span>{terms.measure}</span>
      </button>
      <button
        type="button"
        onClick={() => desk.toggleSnaps()}
        aria-pressed={snaps}
        aria-label={handWords.snap}
        title={handWords.snapTitle}
      >
        <Magnet aria-hidden="true" />
        <span>{handWords.snap}</span>
      </button>
      <button
        type="button"
        onClick={() => view.showPad(!isPadOpen)}
        aria-pressed={isPadOpen}
        aria-label={handWords.openPad}
        title={handWords.openPad}
      >
        <Move aria-hidden="true" />
      </button>
      <button
        type="button"
        onClick={() => view.zoom(1 / 1.4)}
        aria-label={arenaWords.zoomOut}
        title={arenaWords.zoomOutKey}
      >
        <Minus aria-hidden="true" />
      </button>
      <button type="button" onClick={() => view.zoom(1.4)} aria-label={arenaWords.zoomIn} title={arenaWords.zoomInKey}>
        <Plus aria-hidden="true" />
      </button>
      <button
        type="button"
        onClick={() => view.fit()}
        aria-label={arenaWords.wholeArena}
        title={arenaWords.showWholeArena0}
      >
        <Maximize aria-hidden="true" />
        <span>{arenaWords.wholeArena}</span>
      </button>
    </fieldset>
  );
}
