import { FileDown, Trash2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import { classEntryOf } from '../../core/change/day-problem.ts';
import { layoutSurvey } from '../../core/change/layout-survey.ts';
import type { Course, Entry } from '../../core/course/course.ts';
import { dayClassOf } from '../../core/course/day-class.ts';
import { type ClassChoice, clearEntries, listing, startClass } from '../../core/course/edit-entries.ts';
import { GO_CAUTION, type GoTimes, goTimesOf, goTimeWords, startOf } from '../../core/go/go-times.ts';
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
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';
import { DrawTools } from './draw-tools.tsx';
import { EntryList } from './entry-list.tsx';
import { EntryText } from './entry-text.tsx';

/** The class that the panel is about: the course's own, or another of its day. */
interface Meant {
  readonly of: ClassChoice;
  readonly listed: ReturnType<typeof listing>;
  readonly survey: Survey;
  readonly times: GoTimes;
}

function meantBy(course: Course, own: Survey, of: ClassChoice): Meant {
  const listed = listing(course, of);
  const other = course.day?.classes.find(({ id }) => id === of);
  if (other === undefined) return { of, listed, survey: own, times: goTimesOf(own) };
  const survey = layoutSurvey(course, other.layout, classEntryOf(other, course));
  return { of, listed, survey, times: goTimesOf(survey, course.day) };
}

/** Who rides the class, in which order, and about when. */
export function EntriesPanel() {
  const course = useDeskState((state) => state.course);
  const own = useDeskState((state) => state.survey);
  const [wanted, setWanted] = useState<ClassChoice>();
  const others = (course.day?.classes ?? []).filter((each) => each !== dayClassOf(course) || each.list !== undefined);
  const of = others.find(({ id }) => id === wanted)?.id;
  const meant = useMemo(() => meantBy(course, own, of), [course, own, of]);
  const { list, entries } = meant.listed;
  // One tree with and without a list, so that the box keeps what it says when the first entries come.
  return (
    <div className="inspector one-column">
      {others.length > 0 && (
        <ChoiceField
          label={goWords.classOfDay}
          value={of ?? ''}
          options={{
            '': course.class.title === '' ? course.title : course.class.title,
            ...Object.fromEntries(others.map(({ id, title }) => [id, title])),
          }}
          choose={(id) => setWanted(id === '' ? undefined : id)}
        />
      )}
      {of !== undefined && <p className="small">{goWords.inFolder}</p>}
      <StartField key={`start-${of}`} of={of} />
      {list === undefined ? (
        <p className="empty">
          {goWords.noList} {entries > 0 && goWords.onlyCount(terms.countedEntries(entries))}
        </p>
      ) : (
        <Listed key={`list-${of}`} list={list} meant={meant} />
      )}
      {list !== undefined && <h3>{goWords.addEntries}</h3>}
      <EntryText key={`text-${of}`} list={list ?? []} of={of} />
      {list !== undefined && <ListTools list={list} meant={meant} />}
    </div>
  );
}

function Listed({ list, meant }: { readonly list: readonly Entry[]; readonly meant: Meant }) {
  const { of, listed, survey, times } = meant;
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
      <DrawTools list={list} drawn={listed.drawn} survey={survey} of={of} />
      <EntryList list={list} times={times} of={of} />
      <p className="small">{GO_CAUTION}</p>
    </>
  );
}

function ListTools({ list, meant }: { readonly list: readonly Entry[]; readonly meant: Meant }) {
  const desk = useDesk();
  return (
    <div className="button-row">
      <button type="button" className="button" onClick={() => saveTable(meant, list)}>
        <FileDown aria-hidden="true" />
        {goWords.saveTable}
      </button>
      <button
        type="button"
        className="button danger"
        onClick={() => desk.edit(goWords.clearTheList, (now) => clearEntries(now, meant.of))}
      >
        <Trash2 aria-hidden="true" />
        {goWords.clearTheList}
      </button>
    </div>
  );
}

/** The list as a table for a spreadsheet; the mark before it tells a spreadsheet that it is UTF-8. */
function saveTable({ survey, times }: Meant, list: readonly Entry[]): void {
  const when = (entry: Entry): string => {
    const row = times.rows.find((each) => each.kind === 'go' && each.entry.id === entry.id);
    return row === undefined ? '' : goTimeWords(times, row.from);
  };
  const table = `\uFEFF${writeEntries(list, when)}`;
  saveDownload(new Blob([table], { type: 'text/csv' }), `${fileName(survey.course.title)}-entries.csv`);
}

function StartField({ of }: { readonly of: ClassChoice }) {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const typed = of === undefined ? course.class.starts : course.day?.classes.find(({ id }) => id === of)?.startsAt;
  const start = of === undefined ? startOf(course) : (typed ?? null);
  const note =
    start === null ? goWords.noStart : typed === undefined ? goWords.startOfDay(printTimeOfDay(start)) : undefined;
  const send = (text: string): Refusal => {
    if (text.trim() === '') {
      desk.edit(goWords.changeTheStart, (now) => startClass(now, undefined, of));
      return undefined;
    }
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    desk.edit(goWords.changeTheStart, (now) => startClass(now, read.value, of));
    return undefined;
  };
  return (
    <TypedField
      wide
      label={goWords.firstGo}
      value={typed === undefined ? '' : printTimeOfDay(typed)}
      note={note}
      send={send}
    />
  );
}
