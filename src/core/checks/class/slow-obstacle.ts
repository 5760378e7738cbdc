import type { Seconds } from '../../measure/quantity.ts';
import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, Limit, Limits, Weight } from '../check.ts';
import { isBoundBy, piecesBoundBy } from '../findings/dimension.ts';
import { askerWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';

/** What the limits take one slow obstacle for: about a side pass along a 12 ft pole by the clock here. Estimate. */
const ONE_OBSTACLE: Seconds = 20;

/** A class of so many entries, each with one slow obstacle: from fit to be noted to far too long. */
const STEPS = ['class.slow-entries', 'class.slow-entries.many', 'class.slow-entries.too-many'] as const;

/** One slow obstacle of the go; ridden twice, it takes both times. */
interface Slow {
  readonly id: string;
  readonly leg: number;
  readonly seconds: Seconds;
}

/** The slow obstacles in the order of the go. A gate that the book demands is not the designer's to leave out. */
function slowObstacles(survey: Survey, limits: Limits): readonly Slow[] {
  const isDemanded = (limits['mandatory.gate']?.least ?? 0) >= 1;
  return survey.obstacles
    .flatMap((placed): Slow[] => {
      const { id } = placed.obstacle;
      const legs = survey.classClock.legs.filter((each) => each.obstacle === id);
      const [first] = legs;
      if (first === undefined || !isBoundBy(placed, STEPS[0])) return [];
      if (isDemanded && piecesBoundBy(placed, 'mandatory.gate').length > 0) return [];
      return [{ id, leg: first.leg, seconds: legs.reduce((sum, { own }) => sum + own, 0) }];
    })
    .sort((a, b) => a.leg - b.leg);
}

/** The most entries with so many seconds on slow obstacles. */
function mostEntries({ most = Number.POSITIVE_INFINITY }: Limit, seconds: Seconds): number {
  return Math.floor((most * ONE_OBSTACLE) / seconds);
}

/** How heavy it is; undefined where the class is small enough. */
function weightOf(limits: Limits, entries: number, seconds: Seconds): Weight | undefined {
  return STEPS.flatMap((name) => {
    const limit = limits[name];
    return limit !== undefined && entries > mostEntries(limit, seconds) ? [limit.weight ?? slowObstacle.weight] : [];
  }).at(-1);
}

/**
 * What all slow obstacles take of a go, times the entries: about 15, 30 and 70 entries are different classes, and one
 * side pass is not four.
 */
export const slowObstacle: Check = {
  id: 'slow-obstacle',
  about: 'course',
  says: 'Slow obstacles suit the number of entries.',
  because: 'What every rider spends on them adds up: in a large class to a late evening.',
  weight: 'note',
  limits: STEPS,
  findings(survey, limits) {
    const limit = limits[STEPS[0]];
    const { entries, go } = survey.classClock;
    const slow = slowObstacles(survey, limits);
    const seconds = slow.reduce((sum, each) => sum + each.seconds, 0);
    const [longest] = slow.toSorted((a, b) => b.seconds - a.seconds);
    if (limit === undefined || longest === undefined || seconds === 0) return [];
    const weight = weightOf(limits, entries, seconds);
    const pose = survey.layout.obstacles.find(({ id }) => id === longest.id)?.pose;
    if (weight === undefined || pose === undefined) return [];
    const time = (value: Seconds): string => valueWords('time', value, survey.course.unit);
    const most = mostEntries(limit, seconds);
    const takes =
      slow.length === 1
        ? `${capitalized(obstacleWords(survey, longest.id))} takes`
        : `${slow.length} slow obstacles take`;
    const first =
      slow.length === 1 ? '' : ` The longest is ${obstacleWords(survey, longest.id)}, ${time(longest.seconds)}.`;
    const members = slow.map(({ id }) => `slow-obstacle:${id}`);
    const [only = ''] = members;
    return [
      {
        ...(slow.length === 1 ? { id: only } : { id: 'slow-obstacle', members }),
        check: 'slow-obstacle',
        weight,
        says: `${takes} ${time(seconds)} of a go of ${time(go)}; with ${entries} entries that is ${time(entries * seconds)} of the class, and ${askerWords(limit)} at most ${most} ${most === 1 ? 'entry' : 'entries'} with so much.${first}`,
        because: slowObstacle.because,
        at: { x: pose.x, y: pose.y },
        leg: longest.leg,
        keys: slow.map(({ id }) => id),
        measured: entries,
        allowed: { most },
        source: limit.source,
        proposals: [],
      },
    ];
  },
};
