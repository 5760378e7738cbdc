import { printDuration } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import type { Survey } from '../../core/survey.ts';
import { stripWords } from '../../words/strip.ts';
import { terms } from '../../words/terms.ts';
import { GAIT_WORDS } from '../app-words.ts';
import { useDeskState } from '../desk-context.tsx';
import { leadSentence, leadWords } from '../ride/ride-words.ts';
import { changeWords, tightestTurn } from './rows.ts';
import { gapBandWords, type StripGap, type StripLeg } from './track.ts';

/** The strip as a table: the same facts, one row a leg. */
export function LineTable({ legs, gaps }: { readonly legs: readonly StripLeg[]; readonly gaps: readonly StripGap[] }) {
  const survey = useDeskState((state) => state.survey);
  const { course, layout, line } = survey;
  const begins = line.clock.legs.map((_, leg) => line.clock.legs.slice(0, leg).reduce((sum, each) => sum + each, 0));
  const length = (value: number) => printLength(value, course.unit);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
    <section className="line-table" tabIndex={0} aria-label={stripWords.goTable}>
      <table>
        <thead>
          <tr>
            <th scope="col">{stripWords.no}</th>
            <th scope="col">{terms.obstacle}</th>
            <th scope="col">{stripWords.wayToIt}</th>
            <th scope="col">{stripWords.overIt}</th>
            <th scope="col">{stripWords.time}</th>
            <th scope="col">{stripWords.onTheClock}</th>
            <th scope="col">{stripWords.lead}</th>
            <th scope="col">{stripWords.changes}</th>
            <th scope="col">{stripWords.tightestTurn}</th>
            <th scope="col">{stripWords.gapsInsideInside}</th>
            <th scope="col">{stripWords.landings}</th>
          </tr>
        </thead>
        <tbody>
          {legs.map((leg) => {
            const ridden = layout.ride.legs[leg.leg];
            const own = gaps.filter((gap) => gap.gap.leg === leg.leg);
            const [first] = own;
            return (
              <tr key={leg.leg}>
                <td>{leg.leg + 1}</td>
                <th scope="row">{leg.title}</th>
                <td>
                  {ridden === undefined ? '' : GAIT_WORDS[ridden.approach]} {length(leg.over - leg.from)}
                </td>
                <td>
                  {ridden === undefined ? '' : GAIT_WORDS[ridden.gait]} {length(leg.to - leg.over)}
                </td>
                <td>{stripWords.seconds(Math.round(leg.seconds))}</td>
                <td>
                  {stripWords.range(
                    printDuration(begins[leg.leg] ?? 0),
                    printDuration((begins[leg.leg] ?? 0) + leg.seconds),
                  )}
                </td>
                <td>
                  {leadWords(line.leads.filter((each) => each.leg === leg.leg)) ?? '–'}
                  {line.leadNotes
                    .filter((note) => note.leg === leg.leg)
                    .map((note) => (
                      <small key={`${note.kind} ${note.from}`} className={note.kind === 'wrong-lead' ? 'off' : ''}>
                        {' '}
                        {leadSentence(note, course.unit)}
                      </small>
                    ))}
                </td>
                <td>
                  {line.transitions
                    .filter((change) => change.leg === leg.leg)
                    .map((change, index) => (
                      <span key={`${change.from} ${change.after}`} className={change.fits ? '' : 'off'}>
                        {index > 0 && ', '}
                        {changeWords(change)}
                        {change.fits ? '' : stripWords.noRoom}
                      </span>
                    ))}
                </td>
                <td>{tightestWords(survey, leg.leg)}</td>
                <td>
                  {own.map((gap, index) => (
                    <span key={gap.index} className={gap.fit}>
                      {index > 0 && ', '}
                      {length(gap.gap.taped)}
                      {gap.fit === 'off' ? ' (outside)' : ''}
                    </span>
                  ))}
                  {first?.band !== undefined && (
                    <small> {stripWords.asked(gapBandWords(first.band, course.unit))}</small>
                  )}
                </td>
                <td>
                  {own.map(({ index, gap: { landings } }, place) => (
                    <span key={index} className={landings.fits ? '' : 'off'}>
                      {place > 0 && ', '}
                      {(landings.fits ? stripWords.landingsOf : stripWords.landingsUneven)(
                        landings.count,
                        length(landings.each),
                      )}
                    </span>
                  ))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

/** The tightest turn of a leg, and the least that its gait can do. */
function tightestWords(survey: Survey, leg: number): string {
  const turn = tightestTurn(
    survey.line.elements.filter((element) => element.leg === leg),
    survey.horse,
  );
  if (turn === undefined) return 'straight';
  const { unit } = survey.course;
  return stripWords.radiusLeast(printLength(turn.radius, unit), printLength(turn.least, unit));
}
