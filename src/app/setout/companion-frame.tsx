import { Contrast, List, Ruler, Volume2, VolumeX, X } from 'lucide-react';
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
import type { Radians } from '../../core/measure/quantity.ts';
import { setoutWords } from '../../words/setout.ts';
import { useRememberedChoice } from '../remembered.ts';
import { takesKeys } from '../takes-keys.ts';
import { type ActPlace, actPlace, type PartActs } from './acts.ts';
import { useAloud } from './aloud.ts';
import { AsBuiltView } from './as-built-view.tsx';
import { closeCompanion } from './companion-door.ts';
import type { CompanionProps } from './companion-props.ts';
import { doneOf } from './notes.ts';
import { PartsView } from './parts-view.tsx';
import { Steer, StepView } from './step-view.tsx';
import { useWakeLock } from './wake-lock.ts';

const LOOKS = ['plain', 'sun', 'dark'] as const;
/** North is up at first, as on the drawing. */
const NORTH: Radians = Math.PI / 2;

type View = 'steps' | 'parts' | 'as-built';

/** The full-screen dialog: its head with the tools, and one of three views. */
export function CompanionFrame(props: CompanionProps) {
  const { parts, notes } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const noted = useSyncExternalStore(notes.subscribe, notes.state);
  const [view, setView] = useState<View>('steps');
  const [look, setLook] = useRememberedChoice('set-out-look', LOOKS);
  const [facing, setFacing] = useState(NORTH);
  const place = useMemo(() => actPlace(parts, noted.at), [parts, noted.at]);
  useWakeLock();
  const aloud = useAloud(place === undefined ? '' : textAloud(parts, place));
  // Closed while it is still on the page: only then does the browser give the focus back.
  useLayoutEffect(() => {
    const element = dialog.current;
    element?.showModal();
    // A dialog focuses its first button, which leaves it.
    element?.querySelector<HTMLElement>('.setout-next')?.focus();
    return () => element?.close();
  }, []);
  const part = place === undefined ? undefined : parts[place.part];
  if (place === undefined || part === undefined) return null;
  const goTo = (act: string) => {
    notes.goTo(act);
    setView('steps');
  };
  const onward = () => (place.after === undefined ? setView('parts') : notes.goTo(place.after));
  const back = () => {
    if (place.before !== undefined) notes.goTo(place.before);
  };
  const keyed = (event: KeyboardEvent) => {
    if (view !== 'steps' || takesKeys(event.target) || event.ctrlKey || event.metaKey || event.altKey) return;
    const go = { PageDown: onward, ArrowRight: onward, PageUp: back, ArrowLeft: back }[event.key];
    if (go === undefined) return;
    event.preventDefault();
    go();
  };
  const done = doneOf(part, noted);
  const nextLook = LOOKS[(LOOKS.indexOf(look) + 1) % LOOKS.length] ?? 'plain';
  return (
    <dialog
      ref={dialog}
      className={`companion shows-${view}`}
      data-look={look}
      aria-labelledby={title}
      onCancel={(event) => {
        event.preventDefault();
        if (view === 'steps') closeCompanion();
        else setView('steps');
      }}
      onKeyDown={keyed}
    >
      <header className="setout-head">
        <button type="button" className="setout-close" aria-label={setoutWords.leave} onClick={closeCompanion}>
          <X aria-hidden="true" />
        </button>
        <div className="setout-titles">
          <h2 id={title}>{setoutWords.partOf(place.part + 1, parts.length, part.title)}</h2>
          <p>
            {setoutWords.stepOf(place.step + 1, part.steps.length)} · {setoutWords.doneOf(done, part.acts.length)}
          </p>
        </div>
      </header>
      <div className="setout-tools">
        <Tool
          is={view === 'parts'}
          press={() => setView(view === 'parts' ? 'steps' : 'parts')}
          word={setoutWords.parts}
        >
          <List aria-hidden="true" />
        </Tool>
        <Tool
          is={view === 'as-built'}
          press={() => setView(view === 'as-built' ? 'steps' : 'as-built')}
          word={setoutWords.asBuilt}
        >
          <Ruler aria-hidden="true" />
        </Tool>
        {aloud !== null && (
          <Tool is={aloud.isOn} press={aloud.switch} word={setoutWords.readAloud}>
            {aloud.isOn ? <VolumeX aria-hidden="true" /> : <Volume2 aria-hidden="true" />}
          </Tool>
        )}
        <button type="button" aria-label={setoutWords.look(setoutWords.looks[look])} onClick={() => setLook(nextLook)}>
          <Contrast aria-hidden="true" />
          <span>{setoutWords.looks[look]}</span>
        </button>
      </div>
      <ul className="setout-progress" aria-hidden="true">
        {parts.map((each) => (
          <li key={each.print} className={each === part ? 'is-here' : ''}>
            <span style={{ width: `${(100 * doneOf(each, noted)) / each.acts.length}%` }} />
          </li>
        ))}
      </ul>
      {view === 'steps' && (
        <>
          <StepView {...props} place={place} part={part} facing={facing} turn={setFacing} />
          <Steer back={place.before === undefined ? undefined : back} next={onward} />
        </>
      )}
      {view === 'parts' && <PartsView {...props} here={place} goTo={goTo} />}
      {view === 'as-built' && <AsBuiltView key={part.print} {...props} part={part} />}
    </dialog>
  );
}

function textAloud(parts: readonly PartActs[], { part, step, act }: ActPlace): string {
  const at = parts[part]?.steps[step];
  const isFirst = at?.acts[0]?.id === act.id;
  return [...(isFirst ? (at?.lead ?? []) : []), ...act.says, act.note ?? ''].join(' ');
}

function Tool({
  is,
  press,
  word,
  children,
}: {
  readonly is: boolean;
  press(): void;
  readonly word: string;
  readonly children: ReactNode;
}) {
  return (
    <button type="button" aria-pressed={is} onClick={press}>
      {children}
      <span>{word}</span>
    </button>
  );
}
