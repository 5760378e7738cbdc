import { X } from 'lucide-react';
import { useDesk, useDeskState } from '../../desk-context.tsx';

/** What could be kept of what just happened. Leaving it alone does nothing. */
export function Offer() {
  const desk = useDesk();
  const offer = useDeskState((state) => state.offer);
  const isBusy = useDeskState((state) => state.gesture !== null);
  if (offer === null || isBusy) return null;
  return (
    <p className="offer" role="status">
      <span>{offer.says}?</span>
      <button type="button" className="offer-keep" onClick={() => desk.keep()} title="Keep it from now on (K)">
        Keep it <kbd>K</kbd>
      </button>
      <button type="button" className="offer-pass" onClick={() => desk.pass()} aria-label="Do not keep it">
        <X aria-hidden="true" />
      </button>
    </p>
  );
}
