import { printLength } from '../../core/measure/length.ts';
import { useDeskState } from '../desk-context.tsx';
import { GAIT_WORDS } from '../words.ts';
import { bandWords, type RibbonGap, type RibbonLeg } from './ribbon.ts';

/** The strip as a table: the same facts, one row a leg. */
export function LineTable({
  legs,
  gaps,
}: {
  readonly legs: readonly RibbonLeg[];
  readonly gaps: readonly RibbonGap[];
}) {
  const { course, layout } = useDeskState((state) => state.survey);
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
            <th scope="col">Gaps, inside to inside</th>
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
                  {own.map((gap, index) => (
                    <span key={gap.index} className={gap.fit}>
                      {index > 0 && ', '}
                      {length(gap.gap.taped)}
                      {gap.fit === 'off' ? ' (outside)' : ''}
                    </span>
                  ))}
                  {first?.band !== undefined && <small> asked: {bandWords(first.band, course.unit)}</small>}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
