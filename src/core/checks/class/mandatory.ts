import type { Survey } from '../../survey.ts';
import type { Check } from '../check.ts';
import { piecesBoundBy } from '../findings/dimension.ts';
import { askerWords } from '../findings/finding-words.ts';

/** Backing over less than this is part of another move: half a horse's length, metres. */
const BACKED = 0.75;

/** Whether an obstacle of the ride has a piece whose kind declares the limit. */
function hasPiece(survey: Survey, limit: string): boolean {
  const ridden = new Set(survey.layout.ride.legs.map(({ obstacle }) => obstacle));
  return survey.obstacles.some((each) => ridden.has(each.obstacle.id) && piecesBoundBy(each, limit).length > 0);
}

/** Whether the horse walks a whole stride somewhere, forward; the walk over an obstacle counts. */
function showsWalk({ line, horse }: Survey): boolean {
  const walk = line.shown.find(({ gait }) => gait === 'walk');
  return walk !== undefined && walk.longest.to - walk.longest.from >= horse.gaits.walk.stride.value;
}

interface Demand {
  readonly limit: string;
  readonly what: string;
  readonly one: 'one' | 'them';
  /** Present where it can only be missed once the course has as many obstacles as the book wants. */
  readonly onceWhole?: true;
  isMet(survey: Survey): boolean;
}

const DEMANDS: readonly Demand[] = [
  { limit: 'mandatory.gate', what: 'a gate', one: 'one', isMet: (survey) => hasPiece(survey, 'mandatory.gate') },
  { limit: 'mandatory.bridge', what: 'a bridge', one: 'one', isMet: (survey) => hasPiece(survey, 'mandatory.bridge') },
  {
    limit: 'mandatory.poles',
    what: 'poles to ride over',
    one: 'them',
    isMet: (survey) => survey.line.gaps.length > 0,
  },
  {
    limit: 'mandatory.backing',
    what: 'a backing obstacle',
    one: 'one',
    isMet: (survey) =>
      survey.line.elements.some(({ move, part, length }) => move === 'back' && part === 'obstacle' && length > BACKED),
  },
  {
    limit: 'mandatory.walk',
    what: 'a walk',
    one: 'one',
    onceWhole: true,
    isMet: showsWalk,
  },
];

export const mandatory: Check = {
  id: 'mandatory',
  about: 'course',
  says: 'The course has everything that the book demands.',
  because: 'Without them the class cannot be judged as what it is called.',
  weight: 'must',
  limits: DEMANDS.map(({ limit }) => limit),
  findings(survey, limits) {
    const { legs, start } = survey.layout.ride;
    if (legs.length === 0) return [];
    // While the course is still being laid out, something missing is no fault yet.
    const isWhole = new Set(legs.map(({ obstacle }) => obstacle)).size >= (limits['obstacles.count']?.least ?? 1);
    return DEMANDS.flatMap((demand) => {
      const limit = limits[demand.limit];
      // A house rule may ask for none.
      if (limit === undefined || (limit.least ?? 0) < 1) return [];
      if (demand.isMet(survey) || (demand.onceWhole && !isWhole)) return [];
      return [
        {
          id: demand.limit.replace('.', ':'),
          check: 'mandatory',
          weight: limit.weight ?? (isWhole ? 'must' : 'should'),
          says: `The course has not got ${demand.what}; ${askerWords(limit)} ${demand.one}.`,
          because: mandatory.because,
          at: { x: start.x, y: start.y },
          keys: [],
          measured: 0,
          allowed: { least: 1 },
          source: limit.source,
          proposals: [],
        },
      ];
    });
  },
};
