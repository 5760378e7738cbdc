import type { Check } from '../check.ts';
import { askerWords, bandWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Against the time that the show allots, or else against a day. */
export const classTime: Check = {
  id: 'class-time',
  about: 'course',
  says: 'The whole class can be ridden in its time.',
  because: 'A class that runs over makes every class after it late, and the last one is judged in bad light.',
  weight: 'note',
  limits: ['class.seconds'],
  findings(survey, limits) {
    const { entries, go, whole, allotted, shorten } = survey.classClock;
    const day = limits['class.seconds'];
    if (entries === 0 || survey.layout.ride.legs.length === 0) return [];
    const band = allotted === null ? (day === undefined ? undefined : bandOf(day)) : { most: allotted };
    if (band === undefined || isInBand(band, whole)) return [];
    const { unit } = survey.course;
    const { x, y } = survey.layout.ride.start;
    const may =
      allotted === null && day !== undefined
        ? `${askerWords(day)} ${bandWords(day, unit)}`
        : `the class has ${valueWords('time', allotted ?? 0, unit)}`;
    const first = shorten[0];
    const help = first === undefined ? '' : ` Shorten ${obstacleWords(survey, first.obstacle)} first.`;
    return [
      {
        id: 'class-time',
        check: 'class-time',
        weight: allotted === null ? (day?.weight ?? classTime.weight) : 'should',
        says: `${entries} entries at about ${valueWords('time', go, unit)} a go take about ${valueWords('time', whole, unit)} with what lies between them; ${may}.${help}`,
        because: classTime.because,
        at: { x, y },
        keys: first === undefined ? [] : [first.obstacle],
        measured: whole,
        allowed: band,
        source: allotted === null ? (day?.source ?? '') : 'the time that this class is allotted',
        proposals: [],
      },
    ];
  },
};
