import { printDuration } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import type { Survey } from '../../core/survey.ts';
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
    <section className="line-table" tabIndex={0} aria-label="The go as a table">
      <table>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Obstacle</th>
            <th scope="col">Way to it</th>
            <th scope="col">Over it</th>
            <th scope="col">Time</th>
            <th scope="col">On the clock</th>
            <th scope="col">Lead</th>
            <th scope="col">Changes</th>
            <th scope="col">Tightest turn</th>
            <th scope="col">Gaps, inside to inside</th>
            <th scope="col">Landings</th>
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
                <td>{Math.round(leg.seconds)} s</td>
                <td>
                  {printDuration(begins[leg.leg] ?? 0)} to {printDuration((begins[leg.leg] ?? 0) + leg.seconds)}
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
                        {change.fits ? '' : ' (no room)'}
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
                  {first?.band !== undefined && <small> asked: {gapBandWords(first.band, course.unit)}</small>}
                </td>
                <td>
                  {own.map(({ index, gap: { landings } }, place) => (
                    <span key={index} className={landings.fits ? '' : 'off'}>
                      {place > 0 && ', '}
                      {landings.count} of {length(landings.each)}
                      {landings.fits ? '' : ' (uneven)'}
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
  return `radius ${printLength(turn.radius, unit)}, least ${printLength(turn.least, unit)}`;
}
