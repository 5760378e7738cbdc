import { Minus } from 'lucide-react';
import { useRef } from 'react';
import type { Lead, Leg } from '../../core/course/course.ts';
import { changeLeg, type LegChange, removeLeg } from '../../core/course/edit-ride.ts';
import { GAITS, type Gait } from '../../core/horses/horse.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { sameWork } from '../../core/obstacles/same-work.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { obstacleOfChoice } from '../../desk/gestures/crossing.ts';
import { bendIn } from '../../desk/selection/selection.ts';
import { rideWords } from '../../words/ride.ts';
import { GAIT_WORDS, obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { AddToGo } from './add-to-go.tsx';
import { LegBends } from './leg-bends.tsx';
import { LegCrossings } from './leg-crossings.tsx';
import { LegFacts } from './leg-facts.tsx';
import { LegSides } from './leg-sides.tsx';

const LEADS = { bend: rideWords.fromTheBend, left: rideWords.left, right: rideWords.right } as const;

/** The choice that leaves the way open; no passage has such an id. */
const OPEN = '*';

/** The ways to choose from. Where several ask the same of the horse, the choice may be left to the whole ride. */
function wayOptions(obstacle: Obstacle, leg: Leg): Readonly<Record<string, string>> {
  const ways = Object.fromEntries(obstacle.passages.map((each) => [each.id, capitalized(each.title)]));
  const ridden = obstacle.passages.find(({ id }) => id === leg.passage);
  if (leg.openWay !== true && (ridden === undefined || sameWork(obstacle, ridden).length < 2)) return ways;
  return { [OPEN]: rideWords.bestForWholeRide(ridden?.title ?? leg.passage), ...ways };
}

/** How the chosen obstacle is ridden: passage, gaits, lead. */
export function LegPanel() {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const add = useRef<HTMLButtonElement>(null);
  const id = legOfChoice(survey, chosen) ?? obstacleOfChoice(survey, chosen);
  const obstacle = survey.layout.obstacles.find((each) => each.id === id);
  const legs = survey.layout.ride.legs.filter((leg) => leg.obstacle === id);
  if (obstacle === undefined) {
    return <p className="empty">{rideWords.chooseLeg}</p>;
  }
  const title = obstacleTitle(obstacle, survey.layout);
  if (obstacle.passages.length === 0) return <p className="empty">{rideWords.notRiddenKind(title)}</p>;
  const change = (leg: Leg, next: LegChange) =>
    desk.edit(rideWords.changeHowRidden(title), (course) => changeLeg(course, leg.id, next));
  const leaveOut = (leg: Leg) => {
    desk.edit(rideWords.takeOut(title), (course) => removeLeg(course, leg.id));
    // The button that was pressed is gone; its opposite is where a person goes on by keys.
    add.current?.focus();
  };
  return (
    <>
      {legs.length === 0 && <p className="empty">{rideWords.notInOrderSentence(title)}</p>}
      {legs.map((leg) => {
        const place = survey.layout.ride.legs.indexOf(leg);
        const passage = obstacle.passages.find((each) => each.id === leg.passage) ?? obstacle.passages[0];
        const gaits = Object.fromEntries((passage?.gaits ?? GAITS).map((gait) => [gait, GAIT_WORDS[gait]]));
        return (
          <div key={leg.id} className="inspector">
            <p className="inspector-title">
              <span className="number">{place + 1}</span> {title}
            </p>
            {obstacle.passages.length > 1 && (
              <ChoiceField
                label={rideWords.whichWay}
                value={leg.openWay === true ? OPEN : leg.passage}
                options={wayOptions(obstacle, leg)}
                choose={(to) => change(leg, to === OPEN ? { openWay: true } : { passage: to })}
              />
            )}
            <div className="fields">
              <ChoiceField
                label={rideWords.gaitToIt}
                value={leg.approach}
                options={GAIT_WORDS}
                choose={(gait) => change(leg, { approach: gait as Gait })}
              />
              <ChoiceField
                label={rideWords.gaitOverIt}
                value={leg.gait}
                options={gaits}
                choose={(gait) => desk.setGait(leg.id, gait as Gait)}
              />
              {(leg.gait === 'lope' || leg.approach === 'lope') && (
                <ChoiceField
                  label={rideWords.lead}
                  value={leg.lead ?? 'bend'}
                  options={LEADS}
                  choose={(lead) => change(leg, { lead: lead === 'bend' ? undefined : (lead as Lead) })}
                />
              )}
            </div>
            <LegFacts place={place} />
            <LegCrossings leg={leg} />
            <LegSides leg={leg} />
            <LegBends leg={leg} place={place} />
            <button type="button" className="button" onClick={() => leaveOut(leg)}>
              <Minus aria-hidden="true" />
              {rideWords.takeOutOfOrder}
            </button>
          </div>
        );
      })}
      <AddToGo button={add} obstacle={obstacle} title={title} count={legs.length} />
    </>
  );
}

/** The obstacle that a chosen bend leads to. */
function legOfChoice({ layout }: Survey, chosen: readonly string[]): string | undefined {
  const bend = bendIn(chosen[0] ?? '');
  return layout.ride.legs.find(({ id }) => id === bend?.leg)?.obstacle;
}
