import { useEffect, useId, useRef } from 'react';
import type { Conflict } from '../../../core/course/conflict.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';

/** A conflict: what was asked for, the smallest set of constraints against it, and what may be dropped. */
export function ConflictDialog() {
  const conflict = useDeskState((state) => state.pendingConflict);
  return conflict === null ? null : <OpenConflictDialog conflicts={conflict.conflicts} />;
}

function OpenConflictDialog({ conflicts }: { readonly conflicts: readonly Conflict[] }) {
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
    <dialog ref={dialog} className="dialog conflict-dialog" aria-labelledby={id} onCancel={() => desk.resolve()}>
      <h2 id={id}>That cannot all hold</h2>
      <p>Nothing has moved. Drop one of these and the rest goes on, or leave everything as it was.</p>
      {conflicts.map((conflict) => (
        <ConflictResolutions key={conflict.members.map(({ key }) => key).join(' ')} conflict={conflict} />
      ))}
      <div className="dialog-end">
        <button ref={leave} type="button" className="button primary" onClick={() => desk.resolve()}>
          Leave it as it was
        </button>
      </div>
    </dialog>
  );
}

/** One conflict: its constraints, and a button for each resolution. */
export function ConflictResolutions({ conflict }: { readonly conflict: Conflict }) {
  const desk = useDesk();
  return (
    <>
      <p className="conflict-message">{conflict.says}</p>
      <ul className="conflict-resolutions">
        {conflict.resolutions.map((resolution) => (
          <li key={`${resolution.does} ${resolution.key}`}>
            <button type="button" className="button" onClick={() => desk.resolve(resolution)}>
              {resolution.says}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
