import { type ButtonHTMLAttributes, type KeyboardEvent, useId, useRef, useState } from 'react';
import { palette } from '../../desk/placing/palette.ts';
import { paletteWords as words } from '../../words/first-visit.ts';
import { KindPicture } from './kind-picture.tsx';
import { foundKinds, meantKind } from './kind-search.ts';

const GROUPS = palette();

/** How far a key goes from tile to tile; up and down go to the nearest tile of the row. */
const STEPS: Readonly<Record<string, 'before' | 'after' | 'above' | 'below' | 'first' | 'last'>> = {
  ArrowLeft: 'before',
  ArrowRight: 'after',
  ArrowUp: 'above',
  ArrowDown: 'below',
  Home: 'first',
  End: 'last',
};

/** All obstacle kinds as tiles by group, with a field to find one by any of its names. The tiles are one tab stop. */
export function KindTiles({ tile }: { tile(kind: string): ButtonHTMLAttributes<HTMLButtonElement> }) {
  const [typed, setTyped] = useState('');
  const [current, setCurrent] = useState<string>();
  const list = useRef<HTMLDivElement>(null);
  const id = useId();
  const groups = foundKinds(GROUPS, typed);
  const meant = typed.trim() === '' ? undefined : meantKind(groups, typed)?.id;
  const shown = groups.flatMap(({ kinds }) => kinds);
  const stop = shown.find((kind) => kind.id === current)?.id ?? shown[0]?.id;
  const tiles = () => [...(list.current?.querySelectorAll<HTMLButtonElement>('[data-kind]') ?? [])];
  const go = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = STEPS[event.key];
    const all = tiles();
    const from = all.indexOf(document.activeElement as HTMLButtonElement);
    if (step === undefined || from < 0) return;
    event.preventDefault();
    neighbour(all, from, step)?.focus();
  };
  const search = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Escape' && typed !== '') {
      setTyped('');
      event.stopPropagation();
    }
    if (event.key === 'ArrowDown') {
      event.preventDefault();
      tiles()[0]?.focus();
    }
    // As if its tile had been pressed.
    if (event.key === 'Enter')
      tiles()
        .find((each) => each.dataset.kind === meant)
        ?.click();
  };
  return (
    <>
      <div className="field kind-search">
        <label htmlFor={id} className="visually-hidden">
          {words.search}
        </label>
        <input
          id={id}
          type="search"
          value={typed}
          placeholder={words.searchHint}
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={search}
        />
        <p className="visually-hidden" role="status">
          {typed.trim() === '' ? '' : words.found(shown.length)}
        </p>
      </div>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the tiles inside. */}
      <div ref={list} onKeyDown={go}>
        {groups.map((group) => (
          <section key={group.title} aria-label={group.title}>
            <h3>
              {group.title} <span className="kind-count">{group.kinds.length}</span>
            </h3>
            <ul className="kinds">
              {group.kinds.map((kind) => (
                <li key={kind.id}>
                  <button
                    type="button"
                    className={kind.id === meant ? 'kind is-meant' : 'kind'}
                    title={kind.about}
                    data-kind={kind.id}
                    tabIndex={kind.id === stop ? 0 : -1}
                    onFocus={() => setCurrent(kind.id)}
                    {...tile(kind.id)}
                  >
                    <KindPicture kind={kind} />
                    <span>{kind.title}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        ))}
        {groups.length === 0 && <p className="empty">{words.nothing(typed.trim())}</p>}
      </div>
    </>
  );
}

/** The tile that a step leads to, by where the tiles are on the page; undefined at the end of the list. */
function neighbour(all: readonly HTMLElement[], from: number, step: (typeof STEPS)[string]): HTMLElement | undefined {
  if (step === 'first') return all[0];
  if (step === 'last') return all.at(-1);
  if (step === 'before') return all[from - 1];
  if (step === 'after') return all[from + 1];
  const here = all[from]?.getBoundingClientRect();
  if (here === undefined) return undefined;
  const isBeyond = (box: DOMRect) => (step === 'above' ? box.bottom <= here.top + 1 : box.top >= here.bottom - 1);
  const far = (element: HTMLElement) => {
    const box = element.getBoundingClientRect();
    // Rows first: a tile of the next row is nearer than any of the row after it.
    return isBeyond(box)
      ? Math.abs(box.top - here.top) * 1000 + Math.abs(box.left - here.left)
      : Number.POSITIVE_INFINITY;
  };
  const [nearest] = [...all].filter((each) => Number.isFinite(far(each))).sort((a, b) => far(a) - far(b));
  return nearest;
}
