import { Trash2 } from 'lucide-react';
import { type FormEvent, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { partPieceWords } from '../../core/setout/words/place-words.ts';
import { readingWords } from '../../core/setout/words/reading-words.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import { useAnswer } from '../change/use-answer.ts';
import type { PartActs } from './acts.ts';
import type { AsBuiltQuestion } from './as-built-answer.ts';
import { AsBuiltResult } from './as-built-result.tsx';
import type { CompanionProps } from './companion-props.ts';
import { MoreReading } from './more-reading.tsx';
import { notesOfPart } from './notes.ts';
import { moreRow, plannedRows, type ReadingRow, tapePlaces, typedReading, typedReadings } from './readings.ts';

/** A question with the rows of its readings, in the same order. */
interface Asked {
  readonly question: AsBuiltQuestion;
  readonly rows: readonly ReadingRow[];
}

/** What the tape reads where a part lies, and what follows from it: where the poles are, and which moves mend it. */
export function AsBuiltView({ survey, plan, parts, notes, part }: CompanionProps & { readonly part: PartActs }) {
  const noted = useSyncExternalStore(notes.subscribe, notes.state);
  const [added, setAdded] = useState<readonly string[]>([]);
  const [isAsked, setAsked] = useState(false);
  const [nothing, setNothing] = useState(false);
  const [asked, setQuestion] = useState<Asked | null>(null);
  const { answer, isBusy, failure } = useAnswer(asked?.question ?? null);
  const result = useRef<HTMLDivElement>(null);
  const { crew } = plan;
  const { readings: typed } = notesOfPart(noted, part.print);
  const more = [...new Set([...Object.keys(typed), ...added])].flatMap((id) => moreRow(part, id, survey, crew) ?? []);
  const told = answer !== null && answer.of === asked?.question && !isBusy ? answer.told : null;
  useEffect(() => {
    if (told !== null || failure !== null) result.current?.focus();
  }, [told, failure]);

  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setAsked(true);
    const own = [...plannedRows(part).flat(), ...more];
    const isRefused = own.some((row) => {
      const text = typed[row.id];
      return text !== undefined && typedReading(row, text, crew.marked).kind === 'refused';
    });
    // What was read of the other parts counts as well: the whole course is one survey.
    const read = parts.flatMap((each) =>
      typedReadings(each, notesOfPart(noted, each.print).readings, { survey, crew }),
    );
    setNothing(!isRefused && read.length === 0);
    // What is refused may be far above the button.
    if (isRefused) {
      const form = event.currentTarget;
      requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
    }
    if (isRefused || read.length === 0) {
      setQuestion(null);
      return;
    }
    setQuestion({
      rows: read.map(({ row }) => row),
      question: {
        kind: 'as-built',
        course: survey.course,
        readings: read.map(({ reading }) => reading),
        held: parts.map(({ part: { steps } }) => steps[0].piece),
        letters: new Map(parts.flatMap(({ part: { letters } }) => [...letters])),
      },
    });
  };
  const field = (row: ReadingRow) => (
    <ReadingField
      key={row.id}
      row={row}
      text={typed[row.id] ?? ''}
      planned={readingWords(Math.abs(row.planned), crew.marked)}
      refusal={(text) => {
        const read = typedReading(row, text, crew.marked);
        return read.kind === 'refused' ? read.why : undefined;
      }}
      isAsked={isAsked}
      write={(text) => notes.type(part.print, row.id, text)}
      {...(row.isMore && {
        drop: () => {
          notes.type(part.print, row.id, '');
          setAdded(added.filter((id) => id !== row.id));
        },
      })}
    />
  );
  return (
    <div className="setout-page">
      <form className="setout-readings" onSubmit={send} noValidate>
        <p>{setoutWords.asBuiltLead}</p>
        {plannedRows(part).map((rows, index) => {
          const step = part.steps[index]?.step;
          return step === undefined || rows.length === 0 ? null : (
            <fieldset key={step.piece}>
              <legend>{capitalized(partPieceWords(part.names, step.piece))}</legend>
              {rows.map(field)}
            </fieldset>
          );
        })}
        <fieldset>
          <legend>{setoutWords.moreReadings}</legend>
          {more.map(field)}
          <MoreReading places={tapePlaces(part)} add={(id) => setAdded([...added, id])} />
        </fieldset>
        {nothing && (
          <p className="refusal" role="alert">
            {setoutWords.noReadings}
          </p>
        )}
        <button type="submit" className="button primary setout-work" aria-disabled={isBusy}>
          {isBusy ? setoutWords.building : setoutWords.workItOut}
        </button>
      </form>
      <div ref={result} tabIndex={-1} className="setout-result" aria-live="polite">
        {failure !== null && <p className="refusal">{setoutWords.buildFailed(failure)}</p>}
        {told !== null && asked !== null && <AsBuiltResult built={told} {...asked} parts={parts} unit={crew.marked} />}
      </div>
    </div>
  );
}

/** One reading: what is taped, what the plan has there, and what the tape reads. */
function ReadingField({
  row,
  text,
  planned,
  refusal,
  isAsked,
  write,
  drop,
}: {
  readonly row: ReadingRow;
  readonly text: string;
  readonly planned: string;
  refusal(text: string): string | undefined;
  readonly isAsked: boolean;
  write(text: string): void;
  drop?(): void;
}) {
  const [isLeft, setLeft] = useState(false);
  const why = (isLeft || isAsked) && text.trim() !== '' ? refusal(text) : undefined;
  const id = `reading-${row.id}`;
  return (
    <div className="setout-reading">
      <label htmlFor={id}>{row.what}</label>
      <span className="setout-plan">{setoutWords.plan(planned)}</span>
      <input
        id={id}
        type="text"
        value={text}
        autoComplete="off"
        spellCheck={false}
        maxLength={40}
        aria-invalid={why !== undefined}
        aria-describedby={why === undefined ? undefined : `${id}-why`}
        onChange={(event) => {
          setLeft(false);
          write(event.target.value);
        }}
        onBlur={() => setLeft(true)}
      />
      {drop !== undefined && (
        <button type="button" className="quiet" aria-label={setoutWords.dropReading(row.what)} onClick={drop}>
          <Trash2 aria-hidden="true" />
        </button>
      )}
      {why !== undefined && (
        <p id={`${id}-why`} className="refusal" role="alert">
          {why}
        </p>
      )}
    </div>
  );
}
