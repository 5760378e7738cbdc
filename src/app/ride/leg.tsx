import { Minus } from 'lucide-react';
import { useRef } from 'react';
import type { Lead, Leg } from '../../core/course/course.ts';
import { changedLeg, type LegChange, leftOut } from '../../core/course/edit-ride.ts';
import { GAITS, type Gait } from '../../core/horses/horse.ts';
import { printLength } from '../../core/measure/length.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { GAIT_WORDS, obstacleTitle } from '../words.ts';
import { AddToGo } from './add-to-go.tsx';

const LEADS = { bend: 'From the bend', left: 'Left', right: 'Right' } as const;

/** How the chosen obstacle is ridden: passage, gaits, lead. */
export function LegPanel() {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const add = useRef<HTMLButtonElement>(null);
  const id = chosen[0]?.split('/')[0];
  const obstacle = survey.layout.obstacles.find((each) => each.id === id);
  const legs = survey.layout.ride.legs.filter((leg) => leg.obstacle === id);
  if (obstacle === undefined) {
    return <p className="empty">Choose a row of the order, or an obstacle in the arena, to say how it is ridden.</p>;
  }
  const title = obstacleTitle(obstacle, survey.layout);
  if (obstacle.passages.length === 0) return <p className="empty">{title} stands in the arena and is not ridden.</p>;
  const change = (leg: Leg, next: LegChange) =>
    desk.edit(`Change how ${title} is ridden`, (course) => changedLeg(course, leg.id, next));
  const leaveOut = (leg: Leg) => {
    desk.edit(`Take ${title} out of the go`, (course) => leftOut(course, leg.id));
    // The button that was pressed is gone; its opposite is where a person goes on by keys.
    add.current?.focus();
  };
  return (
    <>
      {legs.length === 0 && <p className="empty">{title} is not part of the go.</p>}
      {legs.map((leg) => {
        const place = survey.layout.ride.legs.indexOf(leg);
        const passage = obstacle.passages.find((each) => each.id === leg.passage) ?? obstacle.passages[0];
        const gaits = Object.fromEntries((passage?.gaits ?? GAITS).map((gait) => [gait, GAIT_WORDS[gait]]));
        return (
          <div key={leg.id} className="tape">
            <p className="tape-title">
              <span className="number">{place + 1}</span> {title}
            </p>
            {obstacle.passages.length > 1 && (
              <ChoiceField
                label="Which way"
                value={leg.passage}
                options={Object.fromEntries(obstacle.passages.map((each) => [each.id, sentence(each.title)]))}
                choose={(to) => change(leg, { passage: to })}
              />
            )}
            <div className="fields">
              <ChoiceField
                label="Gait to it"
                value={leg.approach}
                options={GAIT_WORDS}
                choose={(gait) => change(leg, { approach: gait as Gait })}
              />
              <ChoiceField
                label="Gait over it"
                value={leg.gait}
                options={gaits}
                choose={(gait) => change(leg, { gait: gait as Gait })}
              />
              {(leg.gait === 'lope' || leg.approach === 'lope') && (
                <ChoiceField
                  label="Lead"
                  value={leg.lead ?? 'bend'}
                  options={LEADS}
                  choose={(lead) => change(leg, { lead: lead === 'bend' ? undefined : (lead as Lead) })}
                />
              )}
            </div>
            <LegFacts place={place} />
            {leg.bends.length > 0 && (
              <button type="button" className="button" onClick={() => change(leg, { bends: [] })}>
                Straighten the way to it
              </button>
            )}
            <button type="button" className="button" onClick={() => leaveOut(leg)}>
              <Minus aria-hidden="true" />
              Take out of the go
            </button>
          </div>
        );
      })}
      <AddToGo button={add} obstacle={obstacle} title={title} count={legs.length} />
    </>
  );
}

/** Length, time and what does not work. */
function LegFacts({ place }: { readonly place: number }) {
  const survey = useDeskState((state) => state.survey);
  const { unit } = survey.course;
  const own = survey.line.elements.filter((each) => each.leg === place);
  const lengthOf = (part: string) =>
    own.filter((each) => each.part === part).reduce((sum, each) => sum + each.length, 0);
  const breaks = survey.line.breaks.filter((each) => each.leg === place);
  return (
    <>
      <dl className="facts">
        <div>
          <dt>Way to it</dt>
          <dd>{printLength(lengthOf('approach'), unit)}</dd>
        </div>
        <div>
          <dt>Over it</dt>
          <dd>{printLength(lengthOf('obstacle'), unit)}</dd>
        </div>
        <div>
          <dt>Time for both</dt>
          <dd>{Math.round(survey.line.clock.legs[place] ?? 0)} s</dd>
        </div>
      </dl>
      {breaks.map((each) => (
        <p key={each.why} className="refusal">
          {each.why}
        </p>
      ))}
    </>
  );
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
