import { feet } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { degrees, POLE_PARAMS } from '../parts.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { LANE_WIDTH } from './back-lane.ts';
import { bentLane, leastWall } from './bent-lane.ts';
import { lanePassages, laneWords } from './lane-ways.ts';

/**
 * A lane that bends left and right by turns. Frame: origin at its middle, the lane along +x, poles counted and running
 * along it, the first bend to the left. Held: see `bentLane`.
 *
 * A serpentine back-through: SIWA 2024. A bend of 30° or more: New York 4-H. 3 legs at 120°: estimate.
 */
export const backZigzag: ObstacleKind = {
  id: 'back-zigzag',
  title: 'Back-through zigzag',
  alsoCalled: ['back up', 'reverse', 'backing', 'w'],
  family: 'backing',
  about: 'A lane that bends left and right by turns: the quarters change sides at every corner.',
  words: laneWords('zigzag'),
  params: {
    legs: { kind: 'count', label: 'Legs', usual: 3, least: 2, most: 6 },
    width: LANE_WIDTH,
    angle: {
      kind: 'angle',
      label: 'Angle',
      says: 'Between one leg and the next.',
      usual: degrees(120),
      least: degrees(90),
      most: degrees(150),
    },
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(10) },
  },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const angle = numberValue(values, 'angle');
    const thickness = numberValue(values, 'thickness');
    const length = numberValue(values, 'length');
    const nearest = leastWall({ width, thickness, angle });
    if (length < nearest - 1e-9) {
      const why = `Poles of ${lengthWords(length)} end before a lane of ${lengthWords(width)} has turned from one corner to the next: they must be ${lengthWords(nearest)} or longer.`;
      return infeasible(why, { length: nearest });
    }
    const { pieces, constraints, lane } = bentLane({
      width,
      thickness,
      angle,
      turns: Array.from({ length: numberValue(values, 'legs') - 1 }, (_, i) => (i % 2 === 0 ? 1 : -1)),
      lengths: [length, length],
      names: ['left', 'right'],
    });
    return { kind: 'built', pieces, constraints, passages: lanePassages(lane, 'zigzag'), facts: { width, angle } };
  },
};
