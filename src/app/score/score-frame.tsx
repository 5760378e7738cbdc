import { Contrast, ListOrdered, Pencil, Trophy, Undo2, X } from 'lucide-react';
import {
  type KeyboardEvent,
  type ReactNode,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import type { ScoreCard } from '../../core/score/score-card.ts';
import { tally } from '../../core/score/tally.ts';
import { scoreWords } from '../../words/score.ts';
import { useRememberedChoice } from '../remembered.ts';
import { useWakeLock } from '../setout/wake-lock.ts';
import { takesKeys } from '../takes-keys.ts';
import { CardNotices } from './card-notices.tsx';
import { EntryList } from './entry-list.tsx';
import { keyAct } from './judge-keys.ts';
import { JudgeView } from './judge-view.tsx';
import { PlacingsView } from './placings-view.tsx';
import { closeScore } from './score-door.ts';
import type { ScoreFrameProps } from './score-props.ts';

const LOOKS = ['plain', 'sun', 'dark'] as const;

type ScoreView = 'entries' | 'judge' | 'placings';

/** The first that is not judged to the end, else the first. */
function firstToJudge(card: ScoreCard): string {
  const rows = tally(card);
  const open = rows.find(({ status }) => status === 'begun') ?? rows.find(({ status }) => status === 'open');
  return (open ?? rows[0])?.entry.id ?? '';
}

/** The full-screen dialog: its head with the tools; beside the entries the one that is judged, or the placings. */
export function ScoreFrame(props: ScoreFrameProps) {
  const { title, store } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  const state = useSyncExternalStore(store.subscribe, store.state);
  const { card, past, isElsewhere } = state;
  const [view, setView] = useState<ScoreView>('judge');
  const [chosen, setChosen] = useState(() => ({ entry: firstToJudge(card), leg: card.columns[0]?.leg ?? '' }));
  const [look, setLook] = useRememberedChoice('score-look', LOOKS);
  const rows = useMemo(() => tally(card), [card]);
  useWakeLock();
  // Closed while it is still on the page: only then does the browser give the focus back.
  useLayoutEffect(() => {
    const element = dialog.current;
    element?.showModal();
    element?.querySelector<HTMLElement>('[data-first]')?.focus();
    return () => element?.close();
  }, []);
  const row = rows.find(({ entry }) => entry.id === chosen.entry) ?? rows[0];
  const column = card.columns.find(({ leg }) => leg === chosen.leg) ?? card.columns[0];
  const judgeEntry = (entry: string) => {
    setChosen({ entry, leg: card.columns[0]?.leg ?? '' });
    setView('judge');
  };
  const keyed = (event: KeyboardEvent) => {
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !takesKeys(event.target)) {
      event.preventDefault();
      store.undo();
      return;
    }
    if (view !== 'judge' || takesKeys(event.target) || event.ctrlKey || event.metaKey || event.altKey) return;
    if (row === undefined || column === undefined) return;
    const act = keyAct(card, { entry: row.entry.id, leg: column.leg }, event.key);
    if (act === undefined) return;
    event.preventDefault();
    if (act.kind === 'tap') store.tap(act.tap);
    else setChosen(act.place);
  };
  const nextLook = LOOKS[(LOOKS.indexOf(look) + 1) % LOOKS.length] ?? 'plain';
  return (
    <dialog
      ref={dialog}
      className={`score-card shows-${view}`}
      data-look={look}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        if (view === 'judge') closeScore();
        else setView('judge');
      }}
      onKeyDown={keyed}
    >
      <header className="score-head">
        <button type="button" className="setout-close" aria-label={scoreWords.leave} onClick={closeScore}>
          <X aria-hidden="true" />
        </button>
        <div className="setout-titles">
          <h2 id={heading}>{scoreWords.card(title)}</h2>
          <p>{card.caution}</p>
        </div>
      </header>
      <div className="score-tools">
        <ViewButton is={view === 'entries'} show={() => setView('entries')} word={scoreWords.entries} narrow>
          <ListOrdered aria-hidden="true" />
        </ViewButton>
        <ViewButton is={view === 'judge'} show={() => setView('judge')} word={scoreWords.judge}>
          <Pencil aria-hidden="true" />
        </ViewButton>
        <ViewButton is={view === 'placings'} show={() => setView('placings')} word={scoreWords.placings}>
          <Trophy aria-hidden="true" />
        </ViewButton>
        <button type="button" aria-disabled={past.length === 0 || isElsewhere} onClick={store.undo}>
          <Undo2 aria-hidden="true" />
          <span>{scoreWords.undo}</span>
        </button>
        <button type="button" aria-label={scoreWords.look(scoreWords.looks[look])} onClick={() => setLook(nextLook)}>
          <Contrast aria-hidden="true" />
          <span>{scoreWords.looks[look]}</span>
        </button>
      </div>
      <CardNotices {...props} state={state} />
      <EntryList rows={rows} store={store} chosen={row?.entry.id ?? ''} choose={judgeEntry} />
      {view === 'placings' ? (
        <PlacingsView {...props} card={card} rows={rows} />
      ) : (
        <JudgeView card={card} rows={rows} row={row} column={column} store={store} go={setChosen} />
      )}
    </dialog>
  );
}

function ViewButton({
  is,
  show,
  word,
  narrow,
  children,
}: {
  readonly is: boolean;
  show(): void;
  readonly word: string;
  /** Only where the list of entries is not there all the time. */
  readonly narrow?: true;
  readonly children: ReactNode;
}) {
  return (
    <button type="button" className={narrow && 'is-narrow'} aria-pressed={is} onClick={show}>
      {children}
      <span>{word}</span>
    </button>
  );
}
