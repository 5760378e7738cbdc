import { X } from 'lucide-react';
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
      <button type="button" className="suggestion-keep" onClick={() => desk.keep()} title="Keep it from now on (K)">
        Keep it <kbd>K</kbd>
      </button>
      <button type="button" className="suggestion-dismiss" onClick={() => desk.dismiss()} aria-label="Do not keep it">
        <X aria-hidden="true" />
      </button>
    </p>
  );
}
