import { X } from 'lucide-react';
import { arenaWords } from '../../../words/arena.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';

/** The last suggested constraint. Ignoring it does nothing. */
export function SuggestionBar() {
  const desk = useDesk();
  const suggestion = useDeskState((state) => state.suggestion);
  const isBusy = useDeskState((state) => state.gesture !== null);
  if (suggestion === null || isBusy) return null;
  return (
    <p className="suggestion-bar" role="status">
      <span>{suggestion.says}?</span>
      <button type="button" className="suggestion-keep" onClick={() => desk.keep()} title={arenaWords.keepFromNowOn}>
        {arenaWords.keepIt} <kbd>{arenaWords.k}</kbd>
      </button>
      <button
        type="button"
        className="suggestion-dismiss"
        onClick={() => desk.dismiss()}
        aria-label={arenaWords.doNotKeep}
      >
        <X aria-hidden="true" />
      </button>
    </p>
  );
}
