import { inBand } from './band.ts';
import type { Check } from './check.ts';
import { bandOf } from './rulebooks.ts';
import { asker, bandWords, valueWords } from './words.ts';

export const classTime: Check = {
  id: 'class-time',
  says: 'The whole class can be ridden in a day.',
  because: 'A class that runs into the dark is judged in bad light on worn ground.',
  weight: 'note',
  limits: ['class.seconds', 'reset.seconds'],
  run(survey, limits) {
    const limit = limits['class.seconds'];
    const { entries } = survey.course.class;
    const { go } = survey.line.clock;
    if (limit === undefined || entries === 0 || survey.layout.ride.legs.length === 0) return [];
    const whole = entries * (go + (limits['reset.seconds']?.most ?? 0));
    if (inBand(bandOf(limit), whole)) return [];
    const { unit } = survey.course;
    const { x, y } = survey.layout.ride.start;
    return [
      {
        id: 'class-time',
        check: 'class-time',
        weight: limit.weight ?? classTime.weight,
        says: `${entries} entries at about ${valueWords('time', go, unit)} a go take about ${valueWords('time', whole, unit)} with the time between them; ${asker(limit)} ${bandWords(limit, unit)}.`,
        because: classTime.because,
        at: { x, y },
        keys: [],
        measured: whole,
        allowed: bandOf(limit),
        source: limit.source,
        proposals: [],
      },
    ];
  },
};
