import { Maximize, Minus, Plus, Ruler } from 'lucide-react';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { useView } from '../../view.ts';
import { useFurniture } from './use-furniture.ts';

export function ViewButtons() {
  const desk = useDesk();
  const view = useView();
  const { buttons } = useFurniture();
  const isMeasuring = useDeskState((state) => state.tape !== null);
  return (
    <fieldset className={`view-buttons is-${buttons}`}>
      <legend className="visually-hidden">View of the arena</legend>
      <button
        type="button"
        onClick={() => desk.measure()}
        aria-pressed={isMeasuring}
        aria-label="Measure"
        title="Measure between two things (T)"
      >
        <Ruler aria-hidden="true" />
        <span>Measure</span>
      </button>
      <button type="button" onClick={() => view.zoom(1 / 1.4)} aria-label="Zoom out" title="Zoom out (−)">
        <Minus aria-hidden="true" />
      </button>
      <button type="button" onClick={() => view.zoom(1.4)} aria-label="Zoom in" title="Zoom in (+)">
        <Plus aria-hidden="true" />
      </button>
      <button type="button" onClick={() => view.fit()} aria-label="Whole arena" title="Show the whole arena (0)">
        <Maximize aria-hidden="true" />
        <span>Whole arena</span>
      </button>
    </fieldset>
  );
}
