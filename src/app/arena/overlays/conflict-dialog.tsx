import type { Conflict } from '../../../core/course/conflict.ts';
import { arenaWords } from '../../../words/arena.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { ChoiceDialog } from '../../dialog.tsx';

/** A conflict: what was asked for, the smallest set of constraints against it, and what may be dropped. */
export function ConflictDialog() {
  const desk = useDesk();
  const pending = useDeskState((state) => state.pendingConflict);
  if (pending === null) return null;
  return (
    <ChoiceDialog title={arenaWords.cannotAllHold} leave={() => desk.resolve()}>
      <p>{arenaWords.nothingMovedDropOne}</p>
      {pending.conflicts.map((conflict) => (
        <ConflictResolutions key={conflict.members.map(({ key }) => key).join(' ')} conflict={conflict} />
      ))}
    </ChoiceDialog>
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
