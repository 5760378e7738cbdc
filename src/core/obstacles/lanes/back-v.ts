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
 * A lane with one corner that is not square. Frame: origin at its middle, open towards +y, `outer-1` and `inner-1` on the
 * −x side; all poles run as one goes in there. Held: see `bentLane`, with the inner wall on the left.
 *
 * Angle: a bend of 30° or more (New York 4-H); 80° as usual: estimate. 3 ft lane: common practice, no source.
 */
export const backV: ObstacleKind = {
  id: 'back-v',
  title: 'Back-through V',
  alsoCalled: ['elbow', 'corner', 'back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'A lane with a corner to back through, sharper or wider than a square one.',
  words: laneWords('V'),
  params: {
    // Wider lanes would need longer poles than exist, at the sharpest angle.
    width: { ...LANE_WIDTH, most: feet(5) },
    angle: {
      kind: 'angle',
      label: 'Angle',
      says: 'Between the two legs.',
      usual: degrees(80),
      least: degrees(60),
      most: degrees(150),
    },
    length: { ...POLE_PARAMS.length, label: 'Outer poles' },
    innerLength: { ...POLE_PARAMS.length, label: 'Inner poles', usual: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: BACKING_LIMITS,
  build(values) {
    const width = numberValue(values, 'width');
    const angle = numberValue(values, 'angle');
    const thickness = numberValue(values, 'thickness');
    const length = numberValue(values, 'length');
    const nearest = leastWall({ width, thickness, angle });
    if (length < nearest - 1e-9) {
      const why = `Outer poles of ${lengthWords(length)} end before a lane of ${lengthWords(width)} has turned its corner: they must be ${lengthWords(nearest)} or longer.`;
      return infeasible(why, { length: nearest });
    }
    const laid = bentLane({
      width,
      thickness,
      angle,
      turns: [1],
      lengths: [numberValue(values, 'innerLength'), length],
      names: ['inner', 'outer'],
    });
    const { pieces, constraints } = laid;
    return { kind: 'built', pieces, constraints, passages: lanePassages(laid.lane, 'V'), facts: { width, angle } };
  },
};
