import type { Check } from '../check.ts';
import { askerWords, bandWords } from '../findings/finding-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const classSize: Check = {
  id: 'class-size',
  about: 'course',
  says: 'The class is not larger than the book lets one class be.',
  because: 'The last riders of a class that is too large wait for hours and ride over worn ground.',
  weight: 'note',
  limits: ['class.entries'],
  findings(survey, limits) {
    const limit = limits['class.entries'];
    const { entries } = survey.classClock;
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
