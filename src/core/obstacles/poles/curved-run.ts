import { feet, INCH, inches, type Metres } from '../../measure/quantity.ts';
import { numberValue, type Values } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  curveGapParam,
  curveLineParam,
  gaitParam,
  gapForGait,
  POLE_PARAMS,
  stockMinTurnRadius,
} from '../parts.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';
import { arcOfPoles } from './arc-of-poles.ts';
import { WIDEST_ANGLE } from './fan.ts';

/** Where the inner ends are nearer than this, inside to inside, the poles cannot be told apart. As at a fan. */
const LEAST_INNER_GAP: Metres = inches(2);

interface CurveShape {
  readonly [fact: string]: number;
  /** Between neighbours, radians. */
  readonly angle: number;
  readonly lineRadius: number;
  readonly innerRadius: number;
  /** Inside to inside at the inner ends. */
  readonly innerGap: number;
}

/** The angle at which a tape at the radius reads the gap: 2ρ·sin(θ/2) − t/cos(θ/2), which grows with θ. By halving. */
function angleFor(radius: Metres, gap: Metres, thickness: Metres): number {
  let [low, high] = [0, 1.2];
  for (let i = 0; i < 60; i += 1) {
    const half = (low + high) / 2;
    if (2 * radius * Math.sin(half) - thickness / Math.cos(half) < gap) low = half;
    else high = half;
  }
  return low + high;
}

function curveShape(values: Values, lineRadius: Metres): CurveShape {
  const thickness = numberValue(values, 'thickness');
  const angle = angleFor(lineRadius, numberValue(values, 'gap'), thickness);
  const innerRadius = lineRadius - numberValue(values, 'line') * numberValue(values, 'length');
  const innerGap = 2 * innerRadius * Math.sin(angle / 2) - thickness / Math.cos(angle / 2);
  return { angle, lineRadius, innerRadius, innerGap };
}

function curveFault(values: Values, { angle, lineRadius, innerGap }: CurveShape): string | undefined {
  const gait = chosenGait(values);
  const least = stockMinTurnRadius(gait);
  if (lineRadius < least)
    return `A radius of ${roughLength(lineRadius)} is too tight to ${gait} ${bracketedLength(least)}.`;
  if (angle > WIDEST_ANGLE) {
    return `Gaps of ${lengthWords(numberValue(values, 'gap'))} on a radius of ${roughLength(lineRadius)} turn neighbours too far to each other (80°).`;
  }
  const poles = numberValue(values, 'poles');
  if (poles * angle > 2 * Math.PI)
    return `${poles} poles go more than once round a circle of ${roughLength(lineRadius)}.`;
  if (innerGap < LEAST_INNER_GAP - 1e-9) {
    return `On a radius of ${roughLength(lineRadius)} the inner ends come to less than ${lengthWords(LEAST_INNER_GAP)} of each other.`;
  }
  return undefined;
}

const RADIUS_MOST = feet(100);

/** The smallest radius in whole feet, larger than asked, that can be laid and ridden. */
function nearestRadius(values: Values): Metres | undefined {
  for (let n = Math.ceil(numberValue(values, 'radius') / (12 * INCH) - 1e-9); feet(n) <= RADIUS_MOST; n += 1) {
    if (curveFault(values, curveShape(values, feet(n))) === undefined) return feet(n);
  }
  return undefined;
}

/**
 * Poles square to an arc of a given radius. Frame: origin at the middle of the arc, where the right-hand way rides along
 * +x; the centre lies at −y. `pole-1` is the rightmost; they count counter-clockwise, inner ends at fraction 0.
 *
 * | held between neighbours | grips | hold |
 * |---|---|---|
 * | gap, side 1 | both at `line` | gap |
 * | gap, side 1 | both at 0 | what the radius leaves |
 * | ends-level | both at `line` | |
 *
 * From the middle of one pole to the middle of the next: trade press on lope-overs. 20 ft: estimate.
 */
export const curvedRun: ObstacleKind = {
  id: 'curved-run',
  title: 'Curved run',
  alsoCalled: ['arc', 'bow', 'circle poles'],
  family: 'poles',
  about: 'Poles along an arc of a given radius: the gap holds on the line, and the horse must stay on it.',
  words: { noun: 'curve' },
  params: {
    poles: { kind: 'count', label: 'Poles', usual: 4, least: 2, most: 12 },
    radius: {
      kind: 'length',
      label: 'Radius',
      says: 'Of the line.',
      usual: feet(20),
      least: feet(8),
      most: RADIUS_MOST,
    },
    gap: curveGapParam(feet(3), inches(12)),
    ...POLE_PARAMS,
    length: { ...POLE_PARAMS.length, usual: feet(10) },
    line: curveLineParam({ usual: 0.5, least: 0.1, most: 0.9 }),
    gait: gaitParam('jog'),
  },
  gapParam: GAP_ITSELF,
  usual: gapForGait,
  crossedTogether: true,
  build(values) {
    const shape = curveShape(values, numberValue(values, 'radius'));
    const why = curveFault(values, shape);
    if (why !== undefined) {
      const radius = nearestRadius(values);
      if (radius === undefined) return infeasible(why, undefined, shape);
      return infeasible(`${why} A radius of ${lengthWords(radius)} makes it right.`, { radius }, shape);
    }
    const laid = arcOfPoles(values, { ...shape, centre: shape.lineRadius, what: 'the curve' });
    return { kind: 'built', ...laid, facts: shape };
  },
};
