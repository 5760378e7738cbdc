import { useEffect, useId, useRef } from 'react';
import type { Conflict } from '../../../core/course/conflict.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';

/** What was asked for and cannot be: the smallest set that stands against it, and what may be dropped. */
export function ConflictDialog() {
  const conflict = useDeskState((state) => state.pendingConflict);
  return conflict === null ? null : <OpenConflictDialog clashes={conflict.conflicts} />;
}

function OpenConflictDialog({ clashes }: { readonly clashes: readonly Conflict[] }) {
  const desk = useDesk();
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const leave = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    // The way that changes nothing is the one under the finger.
    leave.current?.focus();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className="dialog conflict-dialog" aria-labelledby={id} onCancel={() => desk.resolve()}>
      <h2 id={id}>That cannot all hold</h2>
      <p>Nothing has moved. Drop one of these and the rest goes on, or leave everything as it was.</p>
      {clashes.map((clash) => (
        <ConflictResolutions key={clash.members.map(({ key }) => key).join(' ')} clash={clash} />
      ))}
      <div className="dialog-end">
        <button ref={leave} type="button" className="button primary" onClick={() => desk.resolve()}>
          Leave it as it was
        </button>
      </div>
    </dialog>
  );
}

/** One set that cannot hold together: what it says, and a button for each way out. */
export function ConflictResolutions({ clash }: { readonly clash: Conflict }) {
  const desk = useDesk();
  return (
    <>
      <p className="conflict-message">{clash.says}</p>
      <ul className="conflict-resolutions">
        {clash.resolutions.map((offer) => (
          <li key={`${offer.does} ${offer.key}`}>
            <button type="button" className="button" onClick={() => desk.resolve(offer)}>
              {offer.says}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
