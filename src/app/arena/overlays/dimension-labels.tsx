import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { arenaWords } from '../../../words/arena.ts';
import { useDesk, useLiveDeskState } from '../../desk-context.tsx';
import { focusPane } from '../../panes.ts';
import { useViewState } from '../../view.ts';
import { type DimensionLabel, LABEL_HEIGHT } from './dimension-places.ts';
import { useDimensions } from './use-dimensions.ts';

/** The widest that the reason under a field gets, pixels. */
const BUBBLE = 250;

/** Focuses the first number of a constraint; false when none is shown. */
export function focusDimensions(): boolean {
  const first = document.querySelector<HTMLElement>('.dimension-label button');
  first?.focus();
  return first !== null;
}

/** The numbers on the dimensions of the selection. One that is pressed becomes a field in its place. */
export function DimensionLabels() {
  const { labels } = useDimensions();
  const isBusy = useLiveDeskState((state) => state.gesture !== null);
  const [open, setOpen] = useState<string | null>(null);
  if (labels.length === 0) return null;
  return (
    <ul className={isBusy ? 'dimension-labels is-busy' : 'dimension-labels'} aria-label={arenaWords.whatKeptWhatChosen}>
      {labels.map((label) => {
        const key = label.keys.join(' ');
        return (
          <li
            key={key}
            className={label.kept.holds ? 'dimension-label' : 'dimension-label is-loose'}
            style={{ left: label.at.x, top: label.at.y, height: LABEL_HEIGHT }}
            data-kept={key}
          >
            {open === key && !isBusy ? (
              <LabelField label={label} close={() => setOpen(null)} />
            ) : (
              <LabelButton label={label} press={() => setOpen(key)} />
            )}
          </li>
        );
      })}
    </ul>
  );
}

function LabelButton({ label, press }: { readonly label: DimensionLabel; press(): void }) {
  const name = arenaWords.typeAnother(label.kept.name, label.text, label.kept.holds ? '' : arenaWords.onlyMeasured);
  const key = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    focusPane('arena');
  };
  return (
    <button type="button" aria-label={name} title={label.kept.says} onClick={press} onKeyDown={key}>
      <span style={{ minWidth: label.width, height: LABEL_HEIGHT }}>{label.text}</span>
    </button>
  );
}

function LabelField({ label, close }: { readonly label: DimensionLabel; close(): void }) {
  const desk = useDesk();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(label.kept.text);
  const [refusal, setRefusal] = useState<string | undefined>();
  useEffect(() => field.current?.select(), []);
  const { width } = useViewState((state) => state.size);
  // The reason beneath must not run over the edge of the picture.
  const leans = label.at.x < BUBBLE / 2 ? 'is-left' : label.at.x > width - BUBBLE / 2 ? 'is-right' : '';
  const leave = () => {
    close();
    focusPane('arena');
  };
  const send = () => {
    if (text.trim() === label.kept.text) return leave();
    const why = desk.setHold(label.keys, text);
    setRefusal(why);
    if (why === undefined) leave();
  };
  const key = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Enter') {
      // A dialog that opens on Enter must not take the same key press for its first button.
      event.preventDefault();
      send();
    }
    if (event.key === 'Escape') leave();
  };
  return (
    <div className={`dimension-field ${leans}`}>
      <input
        ref={field}
        type="text"
        value={text}
        size={Math.max(7, text.length)}
        autoComplete="off"
        spellCheck={false}
        aria-label={label.kept.name}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : 'tape-field-why'}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={key}
        onBlur={() => refusal === undefined && close()}
      />
      {refusal !== undefined && (
        <p id="tape-field-why" className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}
