import { type KeyboardEvent, useState } from 'react';
import { stripWords } from '../../words/strip.ts';
import { useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { STRIP_EDGE } from './strip-edge.ts';
import { gapSentence, type StripGap, type StripLeg } from './track.ts';
import { numberPlaces } from './track-labels.ts';

/** Width of a leg's number on the track, and of a letter of its title. Pixels. */
const NUMBER = 26;
const LETTER = 8.2;

/** What can be pointed at on the strip, with the pointer or by keys: one stop in the tab order, arrows walk along. */
export function StripItems({
  legs,
  gaps,
  scale,
  choose,
}: {
  readonly legs: readonly StripLeg[];
  readonly gaps: readonly StripGap[];
  readonly scale: number;
  choose(obstacle: string): void;
}) {
  const view = useView();
  const survey = useDeskState((state) => state.survey);
  const { unit } = survey.course;
  const chosen = useDeskState((state) => state.chosen);
  const pointed = useViewState((state) => state.pointed);
  const [stop, setStop] = useState(0);
  const x = (at: number) => STRIP_EDGE + at * scale;
  const walk = (event: KeyboardEvent<HTMLUListElement>) => {
    const items = [...event.currentTarget.querySelectorAll<HTMLElement>('button')];
    const here = items.indexOf(event.target as HTMLElement);
    const next = { ArrowLeft: here - 1, ArrowRight: here + 1, Home: 0, End: items.length - 1 }[event.key];
    const item = next === undefined ? undefined : items[next];
    if (item === undefined || next === undefined) return;
    event.preventDefault();
    setStop(next);
    item.focus();
  };
  const ordered = [
    ...legs.map((leg) => ({ at: leg.over, leg, gap: undefined })),
    ...gaps.map((gap) => ({ at: gap.gap.from, leg: undefined, gap })),
  ].sort((a, b) => a.at - b.at || (a.leg === undefined ? 1 : -1));
  const lefts = numberPlaces(
    legs.map((leg) => x(leg.over)),
    { apart: NUMBER, most: x(survey.line.length) + STRIP_EDGE - NUMBER },
  );
  return (
    <ul className="strip-items" onKeyDown={walk} aria-label={stripWords.goFromStartEnd}>
      {ordered.map(({ leg, gap }, index) => {
        const tabIndex = index === Math.min(stop, ordered.length - 1) ? 0 : -1;
        if (leg !== undefined) {
          const place = legs.indexOf(leg);
          const left = lefts[place] ?? x(leg.over);
          const room = (lefts[place + 1] ?? x(survey.line.length) + STRIP_EDGE) - left;
          const isTitled = room > NUMBER + 14 + leg.title.length * LETTER;
          const isChosen = chosen.some((key) => key.split('/')[0] === leg.obstacle);
          return (
            <li key={`leg ${leg.leg}`}>
              <button
                type="button"
                tabIndex={tabIndex}
                className={`strip-leg ${isPointed(pointed, 'leg', leg.leg) ? 'is-pointed' : ''}`}
                aria-pressed={isChosen}
                style={{ left }}
                aria-label={`${leg.leg + 1} ${leg.title}`}
                title={isTitled ? undefined : leg.title}
                onFocus={() => point('leg', leg.leg)}
                onPointerEnter={() => point('leg', leg.leg)}
                onClick={() => choose(leg.obstacle)}
              >
                <span className="number">{leg.leg + 1}</span>
                {isTitled && <span className="strip-title">{leg.title}</span>}
              </button>
            </li>
          );
        }
        const long = (gap.gap.to - gap.gap.from) * scale;
        return (
          <li key={`gap ${gap.index}`}>
            <button
              type="button"
              tabIndex={tabIndex}
              className={`strip-gap ${gap.fit} ${isPointed(pointed, 'gap', gap.index) ? 'is-pointed' : ''}`}
              style={{ left: x(gap.gap.from), width: Math.max(6, long) }}
              aria-label={gapSentence(gap, unit)}
              onFocus={() => point('gap', gap.index)}
              onPointerEnter={() => point('gap', gap.index)}
              onClick={() => choose(gap.gap.obstacle)}
            />
          </li>
        );
      })}
    </ul>
  );

  function point(kind: 'leg' | 'gap', index: number): void {
    view.point(kind === 'leg' ? { kind, leg: index } : { kind, gap: index });
  }
}

function isPointed(
  pointed: ReturnType<ReturnType<typeof useView>['state']>['pointed'],
  kind: 'leg' | 'gap',
  index: number,
) {
  if (pointed?.kind === 'leg') return kind === 'leg' && pointed.leg === index;
  return pointed?.kind === 'gap' && kind === 'gap' && pointed.gap === index;
}
