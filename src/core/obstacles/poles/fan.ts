import { FOOT, feet, INCH, inches } from '../../measure/quantity.ts';
import { numberValue, type Values } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  curveGapParam,
  curveLineParam,
  gaitParam,
  POLE_PARAMS,
  slowerGaitHint,
  stockMinTurnRadius,
} from '../parts.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';
import { arcOfPoles } from './arc-of-poles.ts';

/** Poles that open by less than this count as parallel: nobody can tape a quarter inch finer. */
const LEAST_OPENING = INCH / 4;

/**
 * Neighbours at a larger angle are arms of a wheel: a tape between them runs along the poles more than across.
 * Estimate: 80°.
 */
export const WIDEST_ANGLE = (80 * Math.PI) / 180;

export interface FanShape {
  readonly [fact: string]: number;
  /** Between neighbours, radians. */
  readonly angle: number;
  /** From the meeting point to the inner ends, metres. */
  readonly innerRadius: number;
  /** Of the line of travel. */
  readonly lineRadius: number;
  /** Inside to inside at the outer ends. */
  readonly outerGap: number;
}

/** The closed form of DESIGN's geometry; undefined where poles of this length cannot open so far. */
export function fanShape(values: Values): FanShape | undefined {
  const length = numberValue(values, 'length');
  const thickness = numberValue(values, 'thickness');
  const innerGap = numberValue(values, 'innerGap');
  const line = numberValue(values, 'line');
  const sine = (numberValue(values, 'gap') - innerGap) / (2 * line * length);
  if (sine <= 0 || sine >= 1) return undefined;
  const cosine = Math.sqrt(1 - sine * sine);
  const innerRadius = (innerGap + thickness / cosine) / (2 * sine);
  return {
    angle: 2 * Math.asin(sine),
    innerRadius,
    lineRadius: innerRadius + line * length,
    outerGap: 2 * (innerRadius + length) * sine - thickness / cosine,
  };
}

/** Why these values make no fan that can be ridden in their gait. */
export function fanFault(values: Values, shape: FanShape | undefined): string | undefined {
  const gap = numberValue(values, 'gap');
  const innerGap = numberValue(values, 'innerGap');
  if (gap - innerGap < LEAST_OPENING) {
    return `The gap on the line, ${lengthWords(gap)}, is not wider than the inner gap, ${lengthWords(innerGap)}: that is a run, not a fan.`;
  }
  if (shape === undefined) {
    const line = numberValue(values, 'line').toFixed(2);
    return `Poles of ${lengthWords(numberValue(values, 'length'))} cannot open from ${lengthWords(innerGap)} at their inner ends to ${lengthWords(gap)} at ${line} of their length.`;
  }
  const degrees = Math.round((shape.angle * 180) / Math.PI);
  if (shape.angle > WIDEST_ANGLE) return `Neighbours at ${degrees}° to each other are too wide for a fan (80°).`;
  const poles = numberValue(values, 'poles');
  if (poles * shape.angle > 2 * Math.PI + 1e-9) {
    return `${poles} poles at ${degrees}° to each other go more than once round the circle.`;
  }
  const gait = chosenGait(values);
  const least = stockMinTurnRadius(gait);
  if (shape.lineRadius < least) {
    return `The line turns on a radius of ${roughLength(shape.lineRadius)}: too tight to ${gait} ${bracketedLength(least)}.`;
  }
  return undefined;
}

/** The smallest inner gap, in whole inches where one will do, with which the fan fits and can be ridden. */
export function nearestInnerGap(values: Values, fits: (tried: Values) => boolean): number | undefined {
  const gap = numberValue(values, 'gap');
  const asked = numberValue(values, 'innerGap');
  const start = asked < gap - LEAST_OPENING ? asked : Math.min(FOOT, gap / 2);
  for (const step of [1, 1 / 4]) {
    const most = Math.floor((gap - LEAST_OPENING) / INCH / step + 1e-9);
    for (let n = Math.max(1, Math.ceil(start / INCH / step - 1e-9)); n <= most; n++) {
      const innerGap = inches(n * step);
      const tried = { ...values, innerGap };
      if (fits(tried)) return innerGap;
    }
  }
  return undefined;
}

/**
 * Poles that spread from a meeting point. Frame: origin at the middle of the fan's middle (of the middle pole, when
 * their number is odd), outer ends towards +y, so that the right-hand way rides along +x. pole-1 is the rightmost;
 * they count counter-clockwise, inner ends at fraction 0.
 *
 * | held between neighbours | grips | hold |
 * |---|---|---|
 * | gap, side 1 | both at `line` | gap |
 * | gap, side 1 | both at 0 | innerGap |
 * | ends-level | both at `line` | |
 *
 * Usual values: common practice, no source (12 ft poles, inner ends 1 ft apart, 6 ft at two-thirds: one landing at the
 * lope, two at the jog).
 */
export const fan: ObstacleKind = {
  id: 'fan',
  title: 'Fan',
  alsoCalled: ['wagon wheel', 'half wheel', 'arc'],
  family: 'poles',
  about: 'Poles spread like a hand: the gap fits on the curve at the line, and the horse must keep to it.',
  words: { noun: 'fan' },
  params: {
    poles: { kind: 'count', label: 'Poles', usual: 3, least: 2, most: 8 },
    ...POLE_PARAMS,
    innerGap: { kind: 'length', label: 'Inner gap', usual: feet(1), least: inches(2), most: feet(14) },
    gap: curveGapParam(feet(6), inches(15)),
    line: curveLineParam({ usual: 2 / 3, least: 0.2, most: 1 }),
    gait: gaitParam('jog'),
  },
  limits: ['fan.inner-gap'],
  gapParam: GAP_ITSELF,
  crossedTogether: true,
  build(values) {
    const shape = fanShape(values);
    const why = fanFault(values, shape);
    if (why !== undefined || shape === undefined) {
      const innerGap = nearestInnerGap(values, (tried) => fanFault(tried, fanShape(tried)) === undefined);
      if (innerGap === undefined) return infeasible(why ?? 'This fan cannot be laid.', undefined, shape);
      const cure = `An inner gap of ${lengthWords(innerGap)} makes it right.`;
      const slower = slowerGaitHint(values, (tried) => fanFault(tried, fanShape(tried)) === undefined);
      return infeasible(`${why} ${cure}${slower}`, { innerGap }, shape);
    }
    const laid = arcOfPoles(values, {
      ...shape,
      innerGap: numberValue(values, 'innerGap'),
      centre: shape.innerRadius + numberValue(values, 'length') / 2,
      what: 'the fan',
    });
    return { kind: 'built', ...laid, facts: shape };
  },
};
