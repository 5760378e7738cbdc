import { printDuration } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import { printNotesOf } from '../../core/survey-prints.ts';
import { rideWords } from '../../words/ride.ts';
import { useDeskState } from '../desk-context.tsx';
import { stripGaps } from '../strip/track.ts';
import { alikeGaps, placesWords } from './alike-gaps.ts';
import { usePlayerState } from './player-context.tsx';
import { noteSentence, worstNotes } from './print-words.ts';
import { changeSentence, leadSentence, leadWords } from './ride-words.ts';

/** Length, time, lead, landings of one leg, and what does not work. */
export function LegFacts({ place }: { readonly place: number }) {
  const survey = useDeskState((state) => state.survey);
  const { line, course } = survey;
  const { unit } = course;
  const own = line.elements.filter((each) => each.leg === place);
  const lengthOf = (part: string) =>
    own.filter((each) => each.part === part).reduce((sum, each) => sum + each.length, 0);
  const clock = survey.classClock.legs.find((each) => each.leg === place);
  const lead = leadWords(line.leads.filter((each) => each.leg === place));
  const notes = line.leadNotes.filter((each) => each.leg === place);
  const changes = line.transitions.filter((each) => each.leg === place);
  const gaps = stripGaps(survey).filter(({ gap }) => gap.leg === place);
  const breaks = line.breaks.filter((each) => each.leg === place);
  return (
    <>
      {breaks.map((each) => (
        <p key={each.why} className="refusal">
          {each.why}
        </p>
      ))}
      <dl className="facts">
        <div>
          <dt>{rideWords.wayToIt}</dt>
          <dd>
            {printLength(lengthOf('approach'), unit)}, {printDuration(clock?.way ?? 0)}
          </dd>
        </div>
        <div>
          <dt>{rideWords.atIt}</dt>
          <dd>
            {printLength(lengthOf('obstacle'), unit)}, {printDuration(clock?.own ?? 0)}
          </dd>
        </div>
      </dl>
      {lead !== null && <p className="small">{rideWords.lope(lead)}</p>}
      {notes.map((note) => (
        <p key={`${note.kind} ${note.from}`} className={note.kind === 'change' && note.fits ? 'small' : 'refusal'}>
          {leadSentence(note, unit)}
        </p>
      ))}
      {changes.map((change) => (
        <p key={`${change.from} ${change.after}`} className={change.fits ? 'small' : 'refusal'}>
          {changeSentence(change, unit)}
        </p>
      ))}
      {gaps.length > 0 && (
        <ul className="leg-gaps">
          {alikeGaps(gaps, unit).map(({ says, fit, places }) => (
            <li key={says} className={fit}>
              {placesWords(places)}: {says}
            </li>
          ))}
        </ul>
      )}
      <PrintFacts place={place} />
    </>
  );
}

/** Hooves that come near poles, where the prints are shown: only then are they worked out. */
function PrintFacts({ place }: { readonly place: number }) {
  const hasPrints = usePlayerState((state) => state.hasPrints);
  const isHeld = useDeskState((state) => state.gesture !== null);
  const survey = useDeskState((state) => state.survey);
  if (!hasPrints || isHeld) return null;
  const notes = worstNotes(printNotesOf(survey).filter(({ print }) => print.leg === place));
  if (notes.length === 0) return <p className="small">{rideWords.noPrintNearPole}</p>;
  return notes.map((note) => (
    <p key={note.key} className={note.kind === 'meets' ? 'refusal' : 'small'}>
      {noteSentence(survey, note)}
    </p>
  ));
}
