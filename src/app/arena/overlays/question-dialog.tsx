import { useEffect, useId, useRef } from 'react';
import { useDesk, useDeskState } from '../../desk-context.tsx';

/** A change that would lose something set by hand: what, and the choice to go on or to leave everything as it was. */
export function QuestionDialog() {
  const question = useDeskState((state) => state.pendingQuestion);
  return question === null ? null : <OpenQuestionDialog says={question.says} yes={question.yes} />;
}

function OpenQuestionDialog({ says, yes }: { readonly says: string; readonly yes: string }) {
  const desk = useDesk();
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const leave = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    // The button that changes nothing has the focus.
    leave.current?.focus();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className="dialog conflict-dialog" aria-labelledby={id} onCancel={() => desk.answer(false)}>
      <h2 id={id}>Something would be lost</h2>
      <p>{says} Nothing has changed yet.</p>
      <div className="dialog-end">
        <button type="button" className="button" onClick={() => desk.answer(true)}>
          {yes}
        </button>
        <button ref={leave} type="button" className="button primary" onClick={() => desk.answer(false)}>
          Leave it as it was
        </button>
      </div>
    </dialog>
  );
}
