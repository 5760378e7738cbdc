import { type Path, poseAt } from '../../plane/path.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check } from '../check.ts';
import { askerWords, bandWords, measuredWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const obstacleRoom: Check = {
  id: 'obstacle-room',
  says: 'There is room on the line between one obstacle and the next.',
  because: 'Horse and rider need some strides to find their balance and see what comes.',
  weight: 'note',
  limits: ['obstacle.room'],
  findings(survey, limits) {
    const limit = limits['obstacle.room'];
    if (limit === undefined) return [];
    const band = bandOf(limit);
    const { legs } = survey.layout.ride;
    return legs.flatMap((leg, index) => {
      const before = legs[index - 1];
      if (before === undefined || before.obstacle === leg.obstacle) return [];
      const way = survey.line.elements.filter((element) => element.leg === index && element.part === 'approach');
      const room = way.reduce((sum, element) => sum + element.length, 0);
      if (way.length === 0 || isInBand(band, room)) return [];
      const path: Path = way.flatMap((element) => element.path);
      const middle = path.length === 0 ? survey.layout.ride.start : poseAt(path, room / 2);
      const { unit } = survey.course;
      return [
        {
          id: `obstacle-room:${leg.id}`,
          check: 'obstacle-room',
          weight: limit.weight ?? obstacleRoom.weight,
          says: `${capitalized(obstacleWords(survey, leg.obstacle))} comes ${measuredWords(limit, room, unit)} of line after ${obstacleWords(survey, before.obstacle)}; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
          because: obstacleRoom.because,
          at: { x: middle.x, y: middle.y },
          leg: index,
          keys: [before.obstacle, leg.obstacle],
          measured: room,
          allowed: band,
          source: limit.source,
          proposals: [],
        },
      ];
    });
  },
};
