import { useState } from 'react';
import { currentLayout } from '../../core/course/course.ts';
import type { LengthUnit, Metres } from '../../core/measure/quantity.ts';
import { asBuiltCourse } from '../../core/setout/built/as-built-course.ts';
import { spanWords } from '../../core/setout/words/place-words.ts';
import { readingWords } from '../../core/setout/words/reading-words.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import { useDesk } from '../desk-context.tsx';
import type { PartActs } from './acts.ts';
import type { AsBuiltAnswer, AsBuiltQuestion, BuiltGap } from './as-built-answer.ts';
import type { ReadingRow } from './readings.ts';

/** What lies nearer to the plan than a tape shows is as drawn, metres. */
const AS_DRAWN: Metres = 0.003;

/** What the readings say: which is likely wrong, what mends the gaps, and where everything lies. */
export function AsBuiltResult({
  built,
  question,
  rows,
  parts,
  unit,
}: {
  readonly built: AsBuiltAnswer;
  readonly question: AsBuiltQuestion;
  readonly rows: readonly ReadingRow[];
  readonly parts: readonly PartActs[];
  readonly unit: LengthUnit;
}) {
  const length = (value: Metres) => readingWords(value, unit);
  return (
    <>
      <Suspects built={built} question={question} rows={rows} length={length} />
      <Moves built={built} />
      {built.gaps.length > 0 && (
        <section>
          <h3>{setoutWords.gapsAsBuilt}</h3>
          <ul className="setout-facts">
            {built.gaps.map((gap) => (
              <li key={`${gap.keys} ${gap.at} ${gap.isRidden}`} className={gap.outside > 0 ? 'is-outside' : ''}>
                <span>{gapWords(parts, gap)}</span>
                <strong>{length(gap.built)}</strong>
                <span>
                  {setoutWords.gapBand(length(gap.least), length(gap.most))},{' '}
                  {gap.outside > 0 ? setoutWords.outOfBand(length(gap.outside)) : setoutWords.inBand}
                  {gap.isOpen && `; ${setoutWords.notTaped}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {built.findings.length > 0 && (
        <section>
          <h3>{setoutWords.findingsAsBuilt}</h3>
          <ul className="setout-facts">
            {built.findings.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h3>{setoutWords.whereTheyLie}</h3>
        <ul className="setout-facts">
          {built.pieces.map(({ name, off, sigma }) => (
            <li key={name}>
              <span>{name}</span>
              <strong>{off < AS_DRAWN ? setoutWords.asDrawn : setoutWords.offBy(length(off))}</strong>
              <span>{sigma < AS_DRAWN ? setoutWords.isHeldThere : setoutWords.standardError(length(sigma))}</span>
            </li>
          ))}
        </ul>
      </section>
      <Keep built={built} layout={question.course.current} />
    </>
  );
}

/** Where a gap is: on the line of travel, or where it is taped. */
function gapWords(parts: readonly PartActs[], { name, keys, at, isRidden }: BuiltGap): string {
  const part = parts.find((each) => keys.every((key) => each.part.steps.some(({ piece }) => piece === key)));
  if (isRidden || part === undefined) return setoutWords.onTheLine(name);
  const [from, to] = [
    { piece: keys[0], at: at[0] },
    { piece: keys[1], at: at[1] },
  ];
  return capitalized(spanWords(part.names, from, to));
}

function Suspects({
  built: { readings, undecided },
  question,
  rows,
  length,
}: {
  readonly built: AsBuiltAnswer;
  readonly question: AsBuiltQuestion;
  readonly rows: readonly ReadingRow[];
  length(value: Metres): string;
}) {
  const what = (place: number) => rows[place]?.what ?? '';
  const wrong = readings.flatMap(({ standing, expected }, place) =>
    standing === 'wrong'
      ? [
          setoutWords.wrongReading(
            what(place),
            length(Math.abs(question.readings[place]?.read ?? 0)),
            length(Math.abs(expected)),
          ),
        ]
      : [],
  );
  const either = undecided.map((places) => setoutWords.eitherWrong(places.map(what).join('; ')));
  const alone = readings.flatMap(({ standing }, place) => (standing === 'not-controlled' ? [what(place)] : []));
  return (
    <section>
      <h3>{setoutWords.likelyWrong}</h3>
      {wrong.length + either.length === 0 ? (
        <p>{setoutWords.noneWrong}</p>
      ) : (
        <ul className="setout-sentences is-wrong">
          {[...wrong, ...either].map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      {alone.length > 0 && <p className="small">{setoutWords.notControlled(alone.join('; '))}</p>}
    </section>
  );
}

function Moves({ built: { moves, unreached, gaps } }: { readonly built: AsBuiltAnswer }) {
  if (gaps.length === 0) return null;
  return (
    <section>
      <h3>{setoutWords.movesThatMend}</h3>
      {moves.length + unreached.length === 0 && <p>{setoutWords.nothingToMend}</p>}
      {moves.length > 0 && (
        <ol className="setout-sentences">
          {moves.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ol>
      )}
      {unreached.map(({ why, nearest }) => (
        <div key={why} className="caution">
          <p>{why}</p>
          {nearest.length > 0 && <p>{setoutWords.comesNearest(nearest.join(' '))}</p>}
        </div>
      ))}
    </section>
  );
}

/** Puts the layout as it lies beside the planned one; once for each result. */
function Keep({ built, layout }: { readonly built: AsBuiltAnswer; readonly layout: string }) {
  const desk = useDesk();
  const [kept, setKept] = useState<{ readonly built: AsBuiltAnswer; readonly title: string } | null>(null);
  if (kept?.built === built) return <p role="status">{setoutWords.kept(kept.title)}</p>;
  const keep = () => {
    desk.edit(setoutWords.keepAsBuilt, (course) => asBuiltCourse({ ...course, current: layout }, built.poses));
    setKept({ built, title: currentLayout(desk.state().course).title });
  };
  return (
    <button type="button" className="button" onClick={keep}>
      {setoutWords.keep}
    </button>
  );
}
