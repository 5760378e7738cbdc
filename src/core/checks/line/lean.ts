import { speed } from '../../horses/horse.ts';
import { leanAtRadius } from '../../horses/turns.ts';
import { poseOn } from '../../plane/path.ts';
import type { LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limit, RawFinding } from '../check.ts';
import { bandWords, valueWords } from '../findings/finding-words.ts';
import { linePartWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';
import { slowerProposals } from './breaks.ts';

interface Leaning {
  readonly lean: number;
  readonly radius: number;
  readonly element: LineElement;
  readonly at: { readonly x: number; readonly y: number };
}

function deepestLean(survey: Survey, leg: number, part: LineElement['part']): Leaning | undefined {
  let worst: Leaning | undefined;
  for (const element of survey.line.elements) {
    if (element.leg !== leg || element.part !== part || element.move !== 'ride') continue;
    for (const stretch of element.path) {
      if (stretch.curvature === 0 || stretch.length <= 0) continue;
      const radius = 1 / Math.abs(stretch.curvature);
      const lean = leanAtRadius(speed(survey.horse, element.gait), radius);
      if (worst !== undefined && lean <= worst.lean) continue;
      const { x, y } = poseOn(stretch, stretch.length / 2);
      worst = { lean, radius, element, at: { x, y } };
    }
  }
  return worst;
}

function leanFindings(survey: Survey, limit: Limit, leg: number, part: LineElement['part']): RawFinding[] {
  const ridden = survey.layout.ride.legs[leg];
  const worst = deepestLean(survey, leg, part);
  if (ridden === undefined || worst === undefined || isInBand(bandOf(limit), worst.lean)) return [];
  const { unit } = survey.course;
  return [
    {
      id: `lean:${ridden.id}:${part}`,
      check: 'lean',
      weight: limit.weight ?? lean.weight,
      says: `${linePartWords(survey, part, ridden.obstacle)} makes a horse lean by ${valueWords('angle', worst.lean, unit)} at a ${worst.element.gait} on a radius of ${valueWords('length', worst.radius, unit)}; ${bandWords(limit, unit)} is ridden by everybody.`,
      because: lean.because,
      at: worst.at,
      leg,
      keys: [ridden.obstacle],
      measured: worst.lean,
      allowed: bandOf(limit),
      source: limit.source,
      proposals: part === 'obstacle' ? slowerProposals(survey, leg, 'gait') : slowerProposals(survey, leg, 'approach'),
    },
  ];
}

const PARTS = ['approach', 'obstacle', 'finish'] as const;

export const lean: Check = {
  id: 'lean',
  says: 'No turn makes a horse lean more than a trained one does.',
  because: 'A horse that leans far slips on wet ground and cannot look where it is going.',
  weight: 'note',
  limits: ['lean'],
  findings(survey, limits) {
    const { lean: limit } = limits;
    if (limit === undefined) return [];
    return survey.layout.ride.legs.flatMap((_, leg) => PARTS.flatMap((part) => leanFindings(survey, limit, leg, part)));
  },
};
