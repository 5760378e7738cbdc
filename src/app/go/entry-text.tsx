import { FolderOpen, Plus } from 'lucide-react';
import { useId, useRef, useState } from 'react';
import { type Entry, MOST_ENTRIES } from '../../core/course/course.ts';
import { addEntries, type ClassChoice, replaceEntries } from '../../core/course/edit-entries.ts';
import { type EntryReading, readEntries, readingWords } from '../../core/go/read-entries.ts';
import { goWords } from '../../words/go.ts';
import { useDesk } from '../desk-context.tsx';

type Way = 'add' | 'replace';

/** Entries that are typed, pasted or opened. Lines that could not be read stay in the box, with what would be right. */
export function EntryText({ list, of }: { readonly list: readonly Entry[]; readonly of: ClassChoice }) {
  const desk = useDesk();
  const id = useId();
  const file = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [reading, setReading] = useState<EntryReading | null>(null);
  const [refusal, setRefusal] = useState('');
  const take = (given: string, way: Way) => {
    const read = readEntries(given);
    const { entries, refused, head } = read;
    setRefusal('');
    if (way === 'add' && list.length + entries.length > MOST_ENTRIES) {
      setText(given);
      setReading(null);
      setRefusal(goWords.tooMany(MOST_ENTRIES));
      return;
    }
    if (entries.length > 0) {
      const label = way === 'add' ? goWords.addLabel(entries.length) : goWords.replaceLabel(entries.length);
      const put = way === 'add' ? addEntries : replaceEntries;
      desk.edit(label, (now) => put(now, entries, of));
    }
    setReading(read);
    const left = refused.map((each) => each.text);
    setText(left.length === 0 ? '' : [...(head === undefined ? [] : [head]), ...left].join('\n'));
  };
  const opened = async (chosen: File | undefined) => {
    if (chosen === undefined) return;
    try {
      take(await chosen.text(), 'add');
    } catch (failure) {
      setRefusal(goWords.fileFailed(failure instanceof Error ? failure.message : String(failure)));
    }
    if (file.current !== null) file.current.value = '';
  };
  const isEmpty = text.trim() === '';
  return (
    <>
      <div className="field wide">
        <label htmlFor={id}>{goWords.typeOrPaste}</label>
        <textarea
          id={id}
          rows={4}
          value={text}
          spellCheck={false}
          aria-describedby={`${id}-note`}
          onChange={(event) => setText(event.target.value)}
        />
        <p id={`${id}-note`} className="field-note">
          {goWords.typeNote}
        </p>
      </div>
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          aria-disabled={isEmpty}
          onClick={() => (isEmpty ? undefined : take(text, 'add'))}
        >
          <Plus aria-hidden="true" />
          {goWords.addToList}
        </button>
        {list.length > 0 && (
          <button
            type="button"
            className="button"
            aria-disabled={isEmpty}
            onClick={() => (isEmpty ? undefined : take(text, 'replace'))}
          >
            {goWords.replaceList}
          </button>
        )}
        <button type="button" className="button" onClick={() => file.current?.click()}>
          <FolderOpen aria-hidden="true" />
          {goWords.openTable}
        </button>
        <input
          ref={file}
          type="file"
          hidden
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          onChange={(event) => void opened(event.target.files?.[0])}
        />
      </div>
      <div role="status" className="small">
        {refusal !== '' && <p className="refusal">{refusal}</p>}
        {reading !== null && <Told reading={reading} />}
      </div>
    </>
  );
}

function Told({ reading }: { readonly reading: EntryReading }) {
  const { refused, notes } = reading;
  return (
    <>
      <p>{readingWords(reading)}</p>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {refused.length > 0 && (
        <>
          <p className="refusal">{goWords.linesLeft}</p>
          <ul className="go-refused">
            {refused.map(({ line, why }) => (
              <li key={line}>{goWords.line(line, why)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
