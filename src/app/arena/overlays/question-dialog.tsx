import { arenaWords } from '../../../words/arena.ts';
import { terms } from '../../../words/terms.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { ChoiceDialog } from '../../dialog.tsx';

/** A change that would lose something set by hand: what, and the choice to go on or to leave everything as it was. */
export function QuestionDialog() {
  const desk = useDesk();
  const question = useDeskState((state) => state.pendingQuestion);
  if (question === null) return null;
  const goOn = (
    <button type="button" className="button" onClick={() => desk.answer(true)}>
      {question.yes}
    </button>
  );
  return (
    <ChoiceDialog title={arenaWords.somethingWouldLost} leave={() => desk.answer(false)} actions={goOn}>
      <p>
        {question.says} {terms.nothingHasChanged}
      </p>
    </ChoiceDialog>
  );
}
