import { capitalized } from '../../text/sentence.ts';
import type { Check } from '../check.ts';
import { isBoundBy } from '../findings/dimension.ts';
import { askerWords, bandWords, obstacleWords } from '../findings/finding-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const classSize: Check = {
  id: 'class-size',
  says: 'The class is not larger than the book lets one class be.',
  because: 'The last riders of a class that is too large wait for hours and ride over worn ground.',
  weight: 'note',
  limits: ['class.entries'],
  findings(survey, limits) {
    const limit = limits['class.entries'];
    const { entries } = survey.course.class;
    if (limit === undefined || entries === 0 || isInBand(bandOf(limit), entries)) return [];
    const { x, y } = survey.layout.ride.start;
    return [
      {
        id: 'class-size',
        check: 'class-size',
        weight: limit.weight ?? classSize.weight,
        says: `The class has ${entries} entries; ${askerWords(limit)} ${bandWords(limit, survey.course.unit)}, and splits it above that.`,
        because: classSize.because,
        at: { x, y },
        keys: [],
        measured: entries,
        allowed: bandOf(limit),
        source: limit.source,
        proposals: [],
      },
    ];
  },
};

export const slowObstacle: Check = {
  id: 'slow-obstacle',
  says: 'A large class has no side pass in its course.',
  because: 'Every rider spends half a minute on it, which a large class adds up to a late evening.',
  weight: 'note',
  limits: ['class.slow-entries'],
  findings(survey, limits) {
    const limit = limits['class.slow-entries'];
    const { entries } = survey.course.class;
    if (limit === undefined || isInBand(bandOf(limit), entries)) return [];
    return survey.obstacles.flatMap((placed) => {
      const { id, pose } = placed.obstacle;
      const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
      if (!isBoundBy(placed, 'class.slow-entries') || leg < 0) return [];
      return [
        {
          id: `slow-obstacle:${id}`,
          check: 'slow-obstacle',
          weight: limit.weight ?? slowObstacle.weight,
          says: `${capitalized(obstacleWords(survey, id))} is slow to ride, and the class has ${entries} entries; ${askerWords(limit)} ${bandWords(limit, survey.course.unit)} with a side pass.`,
          because: slowObstacle.because,
          at: { x: pose.x, y: pose.y },
          leg,
          keys: [id],
          measured: entries,
          allowed: bandOf(limit),
          source: limit.source,
          proposals: [],
        },
      ];
    });
  },
};
