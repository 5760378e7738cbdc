import { Copy, FlipHorizontal2, RotateCcw, RotateCw, Trash2 } from 'lucide-react';
import { useDesk } from '../desk-context.tsx';

const STEP = Math.PI / 12;

/** What can be done to all that is chosen. */
export function Actions() {
  const desk = useDesk();
  return (
    <fieldset className="actions">
      <legend className="visually-hidden">What to do with it</legend>
      <button type="button" onClick={() => desk.turn(STEP)} title="Turn left by 15°">
        <RotateCcw aria-hidden="true" />
        Turn left
      </button>
      <button type="button" onClick={() => desk.turn(-STEP)} title="Turn right by 15°">
        <RotateCw aria-hidden="true" />
        Turn right
      </button>
      <button type="button" onClick={() => desk.mirror()} title="Make it its mirror image">
        <FlipHorizontal2 aria-hidden="true" />
        Mirror
      </button>
      <button type="button" onClick={() => desk.duplicate()} title="Set a copy beside it">
        <Copy aria-hidden="true" />
        Duplicate
      </button>
      <button type="button" className="danger" onClick={() => desk.erase()} title="Take it out of the arena">
        <Trash2 aria-hidden="true" />
        Delete
      </button>
    </fieldset>
  );
}
