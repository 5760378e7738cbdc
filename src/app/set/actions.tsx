import { Copy, FlipHorizontal2, RotateCcw, RotateCw, Trash2 } from 'lucide-react';
import { setWords } from '../../words/set.ts';
import { terms } from '../../words/terms.ts';
import { useDesk } from '../desk-context.tsx';

const STEP = Math.PI / 12;

/** What can be done to all that is chosen. */
export function Actions() {
  const desk = useDesk();
  return (
    <fieldset className="actions">
      <legend className="visually-hidden">{setWords.whatDoWith}</legend>
      <button type="button" onClick={() => desk.turn(STEP)} title={setWords.turnLeftBy15}>
        <RotateCcw aria-hidden="true" />
        {setWords.turnLeft}
      </button>
      <button type="button" onClick={() => desk.turn(-STEP)} title={setWords.turnRightBy15}>
        <RotateCw aria-hidden="true" />
        {setWords.turnRight}
      </button>
      <button type="button" onClick={() => desk.mirror()} title={setWords.makeMirrorImage}>
        <FlipHorizontal2 aria-hidden="true" />
        {setWords.mirror}
      </button>
      <button type="button" onClick={() => desk.duplicate()} title={setWords.duplicateBeside}>
        <Copy aria-hidden="true" />
        {terms.duplicate}
      </button>
      <button type="button" className="danger" onClick={() => desk.erase()} title={setWords.deleteIt}>
        <Trash2 aria-hidden="true" />
        {terms.delete}
      </button>
    </fieldset>
  );
}
