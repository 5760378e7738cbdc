import { rotateByKeys } from '../../course/edit-obstacles.ts';
import type { Radians } from '../../measure/quantity.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Square and halfway between: the directions that people choose on purpose. */
const EIGHTH: Radians = Math.PI / 4;
/** Smaller angles are not visible: a tenth of a degree is a quarter of an inch on a 12 ft pole. */
const SEEN: Radians = (0.1 * Math.PI) / 180;

export const alignment: Check = {
  id: 'alignment',
  says: 'Obstacles look square to the walls, or look meant.',
  because:
    'Riders and judges take a line from the walls: an obstacle that is a little off makes every line to it look wrong.',
  weight: 'note',
  limits: ['align.wall'],
  findings(survey, limits) {
    const limit = limits['align.wall'];
    if (limit === undefined) return [];
    const least = bandOf(limit).least ?? 0;
    return survey.obstacles.flatMap(({ obstacle: { id, pose, passages }, pieces }): RawFinding[] => {
      if (passages.length === 0 || pieces.length === 0) return [];
      const off = pose.angle - EIGHTH * Math.round(pose.angle / EIGHTH);
      if (Math.abs(off) <= SEEN || Math.abs(off) >= least) return [];
      const { unit } = survey.course;
      const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
      return [
        {
          id: `alignment:${id}`,
          check: 'alignment',
          weight: limit.weight ?? alignment.weight,
          says: `${capitalized(obstacleWords(survey, id))} lies ${valueWords('angle', Math.abs(off), unit)} off square to the walls; less than ${valueWords('angle', least, unit)} looks like a mistake.`,
          because: alignment.because,
          at: { x: pose.x, y: pose.y },
          ...(leg < 0 ? {} : { leg }),
          keys: [id],
          measured: Math.abs(off),
          allowed: { least },
          source: limit.source,
          proposals: [
            {
              says: `Turn ${obstacleWords(survey, id)} square`,
              edit: (course) => rotateByKeys(course, [id], -off, pose),
            },
          ],
        },
      ];
    });
  },
};
