import type { Survey } from '../../survey.ts';
import type { Check, Limit } from '../check.ts';
import { askerWords, bandWords } from '../findings/finding-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** The obstacles that count as one with the one before them, because the line between is very short. */
function combinations(survey: Survey, limit: Limit | undefined): readonly string[] {
  const { legs } = survey.layout.ride;
  const most = limit === undefined ? 0 : (bandOf(limit).most ?? 0);
  return legs.flatMap(({ obstacle }, index) => {
    if (index === 0 || legs[index - 1]?.obstacle === obstacle) return [];
    const way = survey.line.elements.filter(({ leg, part }) => leg === index && part === 'approach');
    return way.reduce((sum, { length }) => sum + length, 0) < most ? [obstacle] : [];
  });
}

export const obstacleCount: Check = {
  id: 'obstacle-count',
  about: 'course',
  says: 'The course has as many obstacles as the book allows.',
  because: 'A course that is too short or too long cannot be judged as the class it is called.',
  weight: 'must',
  limits: ['obstacles.count', 'combination.as-one', 'combination.room'],
  findings(survey, limits) {
    const limit = limits['obstacles.count'];
    const { legs } = survey.layout.ride;
    const asOne = limits['combination.as-one']?.least === 1;
    const joined = asOne ? combinations(survey, limits['combination.room']) : [];
    const ridden = new Set(legs.map((leg) => leg.obstacle).filter((id) => !joined.includes(id)));
    // An empty arena is not judged.
    if (limit === undefined || ridden.size === 0) return [];
    const band = bandOf(limit);
    if (isInBand(band, ridden.size)) return [];
    const many = band.most !== undefined && ridden.size > band.most;
    const { x, y } = survey.layout.ride.start;
    return [
      {
        id: 'obstacle-count',
        check: 'obstacle-count',
        // Too few obstacles: the course may be unfinished. Too many: one has to go.
        weight: limit.weight ?? (many ? 'must' : 'should'),
        says: `The course has ${ridden.size === 1 ? '1 obstacle' : `${ridden.size} obstacles`}${joined.length > 0 ? ', a combination counted as one' : ''}; ${askerWords(limit)} ${bandWords(limit, survey.course.unit)}.`,
        because: obstacleCount.because,
        at: { x, y },
        keys: many ? [...ridden].slice(band.most) : [],
        measured: ridden.size,
        allowed: band,
        source: limit.source,
        proposals: [],
      },
    ];
  },
};
