import { type Horse, speed } from '../../horses/horse.ts';
import { preferredTurnRadius, speedOnEasyTurn } from '../../horses/turns.ts';
import type { Seconds } from '../../measure/quantity.ts';
import { poseOn } from '../../plane/path.ts';
import type { Point } from '../../plane/point.ts';
import type { LineElement, Transition } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check } from '../check.ts';
import { askerWords, bandWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** The way to one obstacle that costs time because there is too little room. */
interface CrampedWay {
  readonly leg: number;
  readonly at: Point;
  readonly turns: Seconds;
  readonly breaks: Seconds;
}

/** What is lost in the turns of a way: a horse that turns tighter than it likes goes as slow as it then leans with ease. */
function lostInTurns(
  horse: Horse,
  elements: readonly LineElement[],
): { readonly seconds: Seconds; readonly at?: Point } {
  let seconds = 0;
  let worst: { readonly lost: Seconds; readonly at: Point } | undefined;
  for (const { gait, path, move } of elements) {
    if (move !== 'ride') continue;
    for (const stretch of path) {
      const radius = 1 / Math.abs(stretch.curvature);
      if (stretch.length <= 0 || radius >= preferredTurnRadius(horse, gait)) continue;
      const lost = stretch.length * (1 / speedOnEasyTurn(horse, gait, radius) - 1 / speed(horse, gait));
      seconds += lost;
      const { x, y } = poseOn(stretch, stretch.length / 2);
      if (worst === undefined || lost > worst.lost) worst = { lost, at: { x, y } };
    }
  }
  return worst === undefined ? { seconds } : { seconds, at: worst.at };
}

/** A change without room is made too late or broken off: the horse goes down and up again. */
function lostInBreaks({ transition: { up, down } }: Horse, transitions: readonly Transition[]): Seconds {
  return transitions.filter(({ fits }) => !fits).length * (up.value + down.value);
}

function crampedWays({ line, layout, horse }: Survey): readonly CrampedWay[] {
  return layout.ride.legs.flatMap((_, leg): CrampedWay[] => {
    const turns = lostInTurns(
      horse,
      line.elements.filter((each) => each.leg === leg && each.part === 'approach'),
    );
    const changes = line.transitions.filter((each) => each.leg === leg);
    const breaks = lostInBreaks(horse, changes);
    const at = changes.find(({ fits }) => !fits)?.pose ?? turns.at;
    if (at === undefined) return [];
    return [{ leg, at: { x: at.x, y: at.y }, turns: turns.seconds, breaks }];
  });
}

/**
 * A small pattern is not a quick one (a state university extension's article, Setting a trail course for success). What the
 * drawing can show of it: seconds that go into turns tighter than a horse turns with ease, and into changes of gait that
 * have no room.
 */
export const cramped: Check = {
  id: 'cramped',
  about: 'course',
  says: 'The pattern is not so cramped that it costs time.',
  because:
    'A small pattern is not a quick one: in tight turns the horse slows down or breaks gait, more poles are hit, and each has to be set and measured again.',
  weight: 'note',
  limits: ['cramped.seconds'],
  findings(survey, limits) {
    const limit = limits['cramped.seconds'];
    if (limit === undefined) return [];
    const ways = crampedWays(survey);
    const turns = ways.reduce((sum, way) => sum + way.turns, 0);
    const breaks = ways.reduce((sum, way) => sum + way.breaks, 0);
    const lost = turns + breaks;
    const [worst] = ways.toSorted((a, b) => b.turns + b.breaks - (a.turns + a.breaks));
    if (worst === undefined || isInBand(bandOf(limit), lost)) return [];
    const { unit } = survey.course;
    const { legs } = survey.layout.ride;
    const { entries } = survey.classClock;
    const time = (value: Seconds): string => valueWords('time', value, unit);
    const all = entries > 1 ? `, ${time(entries * lost)} with ${entries} entries` : '';
    const parts = [
      ...(turns > 0 ? [`${time(turns)} in turns tighter than a horse makes with ease`] : []),
      ...(breaks > 0 ? [`${time(breaks)} in changes of gait without room`] : []),
    ].join(' and ');
    const nameOf = (leg: number): string => legs[leg]?.obstacle ?? '';
    return [
      {
        id: 'cramped',
        check: 'cramped',
        weight: limit.weight ?? cramped.weight,
        says: `On the ways between the obstacles a go loses about ${parts}${all}, most on the way to ${obstacleWords(survey, nameOf(worst.leg))}; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
        because: cramped.because,
        at: worst.at,
        places: ways.map(({ at }) => at),
        keys: [...new Set(ways.map(({ leg }) => nameOf(leg)))],
        measured: lost,
        allowed: bandOf(limit),
        source: `a state university extension's article, Setting a trail course for success; how many seconds are too many: ${limit.source}`,
        proposals: [],
      },
    ];
  },
};
