import { FileDown, Trash2 } from 'lucide-react';
import type { Course, Entry } from '../../core/course/course.ts';
import { clearEntries, startClass } from '../../core/course/edit-entries.ts';
import { GO_CAUTION, goTimesOf, goTimeWords, startOf } from '../../core/go/go-times.ts';
import { sharedNumbers } from '../../core/go/shared-numbers.ts';
import { writeEntries } from '../../core/go/write-entries.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import type { Survey } from '../../core/survey.ts';
import { fileName } from '../../core/text/file-name.ts';
import type { Refusal } from '../../desk/input.ts';
import { goWords } from '../../words/go.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { saveDownload } from '../file/download.ts';
import { TypedField } from '../set/typed-field.tsx';
import { DrawTools } from './draw-tools.tsx';
import { EntryList } from './entry-list.tsx';
import { EntryText } from './entry-text.tsx';

/** Who rides the class, in which order, and about when. */
export function EntriesPanel() {
  const list = useDeskState((state) => state.course.class.list);
  const entries = useDeskState((state) => state.course.class.entries);
  // One tree with and without a list, so that the box keeps what it says when the first entries come.
  return (
    <div className="inspector one-column">
      <StartField />
      {list === undefined ? (
        <p className="empty">
          {goWords.noList} {entries > 0 && goWords.onlyCount(terms.countedEntries(entries))}
        </p>
      ) : (
        <Listed list={list} />
      )}
      {list !== undefined && <h3>{goWords.addEntries}</h3>}
      <EntryText list={list ?? []} />
      {list !== undefined && <ListTools list={list} />}
    </div>
  );
}

function Listed({ list }: { readonly list: readonly Entry[] }) {
  const survey = useDeskState((state) => state.survey);
  const times = goTimesOf(survey);
  const scratched = times.scratched.length;
  const entries = terms.countedEntries(list.length - scratched);
  const { legs } = survey.layout.ride;
  return (
    <>
      <p className="go-summary">
        {times.counts === 'time-of-day'
          ? goWords.summary(entries, goTimeWords(times, times.from), goTimeWords(times, times.to))
          : goWords.summaryFromStart(entries, printMinutes(times.to - times.from))}
        {scratched > 0 && goWords.scratchedToo(scratched)}
      </p>
      {legs.length === 0 && <p className="caution">{goWords.nothingRidden}</p>}
      {sharedNumbers(list).map(({ number, at }) => (
        <p key={number} className="caution">
          {goWords.numberShared(number, at.length)}
        </p>
      ))}
      <DrawTools list={list} />
      <EntryList list={list} times={times} />
      <p className="small">{GO_CAUTION}</p>
    </>
  );
}

function ListTools({ list }: { readonly list: readonly Entry[] }) {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  return (
    <div className="button-row">
      <button type="button" className="button" onClick={() => saveTable(survey, list)}>
        <FileDown aria-hidden="true" />
        {goWords.saveTable}
      </button>
      <button
        type="button"
        className="button danger"
        onClick={() => desk.edit(goWords.clearTheList, (now) => clearEntries(now))}
      >
        <Trash2 aria-hidden="true" />
        {goWords.clearTheList}
      </button>
    </div>
  );
}

/** The list as a table for a spreadsheet; the mark before it tells a spreadsheet that it is UTF-8. */
function saveTable(survey: Survey, list: readonly Entry[]): void {
  const times = goTimesOf(survey);
  const when = (entry: Entry): string => {
    const row = times.rows.find((each) => each.kind === 'go' && each.entry.id === entry.id);
    return row === undefined ? '' : goTimeWords(times, row.from);
  };
  const table = `\uFEFF${writeEntries(list, when)}`;
  saveDownload(new Blob([table], { type: 'text/csv' }), `${fileName(survey.course.title)}-entries.csv`);
}

function startNote(course: Course): string {
  const start = startOf(course);
  if (start === null) return goWords.noStart;
  return course.class.starts === undefined ? goWords.startOfDay(printTimeOfDay(start)) : '';
}

function StartField() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const { starts } = course.class;
  const note = startNote(course);
  const send = (text: string): Refusal => {
    if (text.trim() === '') {
      desk.edit(goWords.changeTheStart, (now) => startClass(now, undefined));
      return undefined;
    }
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    desk.edit(goWords.changeTheStart, (now) => startClass(now, read.value));
    return undefined;
  };
  return (
    <TypedField
      wide
      label={goWords.firstGo}
      value={starts === undefined ? '' : printTimeOfDay(starts)}
      note={note === '' ? undefined : note}
      send={send}
    />
  );
}
