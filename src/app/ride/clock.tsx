import { printDuration } from '../../core/measure/duration.ts';
import type { ClassClock } from '../../core/ride/class-clock.ts';
import { obstacleOfChoice } from '../../desk/gestures/crossing.ts';
import { rideWords } from '../../words/ride.ts';
import { terms } from '../../words/terms.ts';
import { obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { ClassFields } from './class-fields.tsx';
import { costliestLeg, ifEntered, WHAT_IF_ENTRIES } from './what-if.ts';

/** How long one go takes, and the class; what each obstacle costs, and which to shorten first. */
export function ClockPanel() {
  const clock = useDeskState((state) => state.survey.classClock);
  const { entries, go, riding, changeovers, drags, dragging, whole, allotted, over } = clock;
  return (
    <div className="clock">
      <dl className="facts">
        <Fact name={rideWords.oneGo} value={printDuration(go)} isMain />
        {entries > 0 && (
          <>
            <Fact name={terms.goes(entries)} value={printDuration(riding)} />
            <Fact name={rideWords.betweenThem} value={printDuration(changeovers)} />
            {drags > 0 && <Fact name={terms.drags(drags)} value={printDuration(dragging)} />}
            <Fact name={rideWords.theClass} value={printDuration(whole)} isMain />
          </>
        )}
      </dl>
      {entries > 0 && allotted !== null && (
        <p className={over > 0 ? 'refusal' : 'small'}>
          {over > 0
            ? rideWords.overAllotted(printDuration(over), printDuration(allotted))
            : rideWords.leftOfAllotted(printDuration(allotted - whole), printDuration(allotted))}
        </p>
      )}
      <Shorten clock={clock} />
      <ClassFields />
      <Costs clock={clock} />
      <WhatIf />
    </div>
  );
}

function Fact({ name, value, isMain }: { readonly name: string; readonly value: string; readonly isMain?: true }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{isMain ? <strong>{value}</strong> : value}</dd>
    </div>
  );
}

/** At most this many are named: nobody shortens four obstacles at once. */
const MOST_NAMED = 3;

/** Which obstacle to shorten first, and by how much a go. */
function Shorten({ clock }: { readonly clock: ClassClock }) {
  const titleOf = useTitles();
  if (clock.shorten.length === 0) return null;
  return (
    <>
      <h3>{rideWords.shortenFirst}</h3>
      <ol className="shorten">
        {clock.shorten.slice(0, MOST_NAMED).map(({ leg, by, enough }) => (
          <li key={leg}>
            <span className="number">{leg + 1}</span>
            <span>
              {titleOf(leg)}{' '}
              {enough
                ? rideWords.shortenBy(printDuration(Math.ceil(by)))
                : rideWords.shortenAllOf(printDuration(Math.ceil(by)))}
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}

function useTitles(): (leg: number) => string {
  const layout = useDeskState((state) => state.survey.layout);
  return (leg) => {
    const id = layout.ride.legs[leg]?.obstacle;
    const obstacle = layout.obstacles.find((each) => each.id === id);
    return obstacle === undefined ? '' : obstacleTitle(obstacle, layout);
  };
}

/** Whole minutes, and below ten the tenths too. */
function minutes(seconds: number): string {
  const value = seconds / 60;
  return rideWords.minutes(value < 9.95 ? value.toFixed(1) : String(Math.round(value)));
}

/** What each number of the go costs the class: the way to it pale, itself full. */
function Costs({ clock }: { readonly clock: ClassClock }) {
  const desk = useDesk();
  const view = useView();
  const titleOf = useTitles();
  const { legs, entries } = clock;
  if (legs.length === 0) return null;
  const times = Math.max(1, entries);
  const most = Math.max(...legs.map(({ way, own }) => way + own), 1);
  const share = (seconds: number) => `${(100 * seconds) / most}%`;
  return (
    <>
      <h3>{entries > 0 ? rideWords.whatEachCostsClass(entries) : rideWords.whatEachCostsGo}</h3>
      <ol className="costs">
        {legs.map(({ leg, obstacle, way, own }) => {
          const text = entries > 0 ? minutes(times * (way + own)) : printDuration(way + own);
          return (
            <li key={leg}>
              <button
                type="button"
                onClick={() => desk.choose([obstacle])}
                onPointerEnter={() => view.point({ kind: 'leg', leg })}
                onPointerLeave={() => view.point(null)}
                aria-label={rideWords.costOfLeg(leg + 1, titleOf(leg), text, printDuration(way), printDuration(own))}
              >
                <span className="cost-title">
                  {leg + 1} {titleOf(leg)}
                </span>
                <span className="cost-value">{text}</span>
                <span className="cost-bar">
                  <span className="cost-way" style={{ width: share(way) }} />
                  <span className="cost-own" style={{ width: share(own) }} />
                </span>
              </button>
            </li>
          );
        })}
      </ol>
      <p className="small">{rideWords.palePartWay}</p>
    </>
  );
}

/** The same go for other classes: what is fine for a few may not be for many. */
function WhatIf() {
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const titleOf = useTitles();
  const meant = obstacleOfChoice(survey, chosen);
  const classes = WHAT_IF_ENTRIES.map((entries) => ifEntered(survey, entries));
  const [first] = classes;
  if (first === undefined || first.legs.length === 0) return null;
  const own = survey.layout.ride.legs.findIndex((leg) => leg.obstacle === meant);
  const leg = own >= 0 ? own : (costliestLeg(first) ?? 0);
  return (
    <>
      <h3>{rideWords.ifEntered}</h3>
      <table className="what-if">
        <thead>
          <tr>
            <th scope="col">{terms.entries}</th>
            <th scope="col">{rideWords.theClass}</th>
            <th scope="col">
              {leg + 1} {titleOf(leg)}
            </th>
          </tr>
        </thead>
        <tbody>
          {classes.map(({ entries, whole, over, legs }) => (
            <tr key={entries}>
              <th scope="row">{entries}</th>
              <td>
                {printDuration(whole)}
                {over > 0 && <span className="off"> {rideWords.over(minutes(over))}</span>}
              </td>
              <td>{minutes(legs[leg]?.class ?? 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
