import { bandOf, limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import { printLength } from '../../core/measure/length.ts';
import { rideWords } from '../../words/ride.ts';
import { GAIT_WORDS } from '../app-words.ts';
import { useDeskState } from '../desk-context.tsx';

/** How far each gait is shown in one piece, against the least that the book asks for. */
export function ShownPanel() {
  const survey = useDeskState((state) => state.survey);
  const { course, line } = survey;
  const limits = limitsOf(course);
  const rows = line.shown.map(({ gait, total, longest }) => {
    const limit = limits[`shown.${gait}`];
    return {
      gait,
      total,
      far: longest.to - longest.from,
      least: limit === undefined ? undefined : bandOf(limit).least,
    };
  });
  const most = Math.max(1, ...rows.map(({ far, least }) => Math.max(far, 1.25 * (least ?? 0))));
  const share = (value: number) => `${(100 * value) / most}%`;
  const isAsked = rows.some(({ least }) => least !== undefined);
  return (
    <>
      <ul className="shown">
        {rows.map(({ gait, total, far, least }) => {
          const isShort = least !== undefined && far < least - 1e-6;
          return (
            <li key={gait} className={isShort ? 'is-short' : ''}>
              <span>{GAIT_WORDS[gait]}</span>
              <span className="shown-bar">
                <span className="shown-far" style={{ width: share(far) }} />
                {least !== undefined && <span className="shown-least" style={{ left: share(least) }} />}
              </span>
              <span className="shown-value">
                {printLength(far, course.unit)}
                <span className="visually-hidden"> {rideWords.inOnePiece(printLength(total, course.unit))}</span>
              </span>
              {least !== undefined && (
                <span className="shown-asked">
                  {isShort
                    ? rideWords.tooShort(printLength(least, course.unit))
                    : rideWords.bookAsks(printLength(least, course.unit))}
                </span>
              )}
            </li>
          );
        })}
      </ul>
      <p className="small">
        {rideWords.longestStretch} {isAsked ? rideWords.markWhatBookAsks : rideWords.bookAsksNothing}
      </p>
    </>
  );
}
