import { ArrowDown, ArrowUp } from 'lucide-react';
import { type DragEvent, Fragment, type KeyboardEvent, useState } from 'react';
import type { Entry } from '../../core/course/course.ts';
import { type ClassChoice, moveEntry } from '../../core/course/edit-entries.ts';
import { type GoRow, type GoTimes, goTimeWords } from '../../core/go/go-times.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { goWords } from '../../words/go.ts';
import { useDesk } from '../desk-context.tsx';
import { EntryFields } from './entry-fields.tsx';
import { entryName } from './entry-name.ts';

/** The entries in the order of go with their times, and drags and breaks between; a row is moved by drag, button or keys. */
export function EntryList({
  list,
  times,
  of,
}: {
  readonly list: readonly Entry[];
  readonly times: GoTimes;
  readonly of: ClassChoice;
}) {
  const desk = useDesk();
  const [dragged, setDragged] = useState<string | null>(null);
  const [opened, setOpened] = useState<string | null>(null);
  const put = (id: string, to: number) => desk.edit(goWords.reorder, (now) => moveEntry(now, id, to, of));
  const drop = (event: DragEvent, to: number) => {
    event.preventDefault();
    if (dragged !== null) put(dragged, to);
    setDragged(null);
  };
  const before = pausesBefore(times);
  return (
    <ol className="timeline go-list" aria-label={goWords.order}>
      {list.map((entry, index) => {
        const name = entryName(entry);
        const { id } = entry;
        const row = times.rows.find((each) => each.kind === 'go' && each.entry.id === id);
        const key = (event: KeyboardEvent) => {
          const by = event.altKey ? { ArrowUp: -1, ArrowDown: 1 }[event.key] : undefined;
          if (by === undefined) return;
          event.preventDefault();
          put(id, index + by);
        };
        return (
          <Fragment key={id}>
            {(before.get(id) ?? []).map((pause) => (
              <PauseRow key={pause.from} pause={pause} times={times} />
            ))}
            <li
              className={`go-entry ${entry.scratched ? 'is-scratched' : ''} ${dragged === id ? 'is-dragged' : ''}`}
              draggable={opened !== id}
              onDragStart={() => setDragged(id)}
              onDragEnd={() => setDragged(null)}
              onDragOver={(event) => event.preventDefault()}
              onDrop={(event) => drop(event, index)}
            >
              <div className="timeline-head">
                <button
                  type="button"
                  className="row"
                  aria-expanded={opened === id}
                  onClick={() => setOpened(opened === id ? null : id)}
                  onKeyDown={key}
                >
                  <EntryWords entry={entry} row={row} times={times} />
                </button>
                <button
                  type="button"
                  className="quiet"
                  disabled={index === 0}
                  aria-label={goWords.earlier(name)}
                  onClick={() => put(id, index - 1)}
                >
                  <ArrowUp aria-hidden="true" />
                </button>
                <button
                  type="button"
                  className="quiet"
                  disabled={index === list.length - 1}
                  aria-label={goWords.later(name)}
                  onClick={() => put(id, index + 1)}
                >
                  <ArrowDown aria-hidden="true" />
                </button>
              </div>
              {opened === id && <EntryFields entry={entry} of={of} />}
            </li>
          </Fragment>
        );
      })}
      {(before.get('') ?? []).map((pause) => (
        <PauseRow key={pause.from} pause={pause} times={times} />
      ))}
    </ol>
  );
}

type Pause = Exclude<GoRow, { kind: 'go' }>;

/** Drags and breaks by the entry that goes after them; by the empty text those after the last. */
function pausesBefore({ rows }: GoTimes): ReadonlyMap<string, readonly Pause[]> {
  const found = new Map<string, Pause[]>();
  let waiting: Pause[] = [];
  for (const row of rows) {
    if (row.kind !== 'go') waiting.push(row);
    else if (waiting.length > 0) {
      found.set(row.entry.id, waiting);
      waiting = [];
    }
  }
  return found.set('', waiting);
}

function PauseRow({ pause, times }: { readonly pause: Pause; readonly times: GoTimes }) {
  const time = goTimeWords(times, pause.from);
  const minutes = printMinutes(pause.to - pause.from);
  return (
    <li className="timeline-change">
      {pause.kind === 'drag' ? goWords.dragged(time, minutes) : goWords.pause(time, pause.title, minutes)}
    </li>
  );
}

function EntryWords({
  entry,
  row,
  times,
}: {
  readonly entry: Entry;
  readonly row: GoRow | undefined;
  readonly times: GoTimes;
}) {
  const { number, rider, horse, late } = entry;
  return (
    <>
      <span className="number">{number}</span>
      <span className="row-title">
        <span className="go-rider">{rider === '' && horse === '' ? goWords.noName : rider}</span>
        {horse !== '' && <small className="go-horse">{horse}</small>}
        <strong className="timeline-times go-when">
          {row === undefined ? goWords.scratched : goTimeWords(times, row.from)}
          {row !== undefined && late !== undefined && goWords.late(printMinutes(late))}
        </strong>
      </span>
    </>
  );
}
