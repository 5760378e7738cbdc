import { minTurnRadius, minTurnRadiusSource } from '../../horses/turns.ts';
import type { Metres } from '../../measure/quantity.ts';
import { poseOn } from '../../plane/path.ts';
import type { LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { linePartWords, obstacleWords } from '../findings/thing-words.ts';
import { rebuildNear } from '../findings/verified-fixes.ts';
import { slowerProposals } from './breaks.ts';

/** A turn this much tighter than the least is not noticed: 2 %. Estimate. */
const FORGIVEN = 0.02;

/** The smallest radius that the horse turns on there; absent where it does not travel along the line. */
function minTurnRadiusOf(survey: Survey, { move, gait }: LineElement) {
  const { horse } = survey;
  if (move === 'ride' || move === 'work') {
    return { value: minTurnRadius(horse, gait), source: minTurnRadiusSource(horse, gait) };
  }
  return move === 'back' ? horse.back.leastTurn : undefined;
}

/** The obstacle built again for the gait in which it is ridden: its kind knows what then works. */
function widenProposals(survey: Survey, leg: number): readonly Proposal[] {
  const ridden = survey.layout.ride.legs[leg];
  const obstacle = survey.layout.obstacles.find((each) => each.id === ridden?.obstacle);
  if (ridden === undefined || typeof obstacle?.values.gait !== 'string') return [];
  return [
    {
      says: `Widen ${obstacleWords(survey, obstacle.id)} so that it rides at a ${ridden.gait}`,
      edit: (course) => rebuildNear(course, obstacle.id, { gait: ridden.gait }),
    },
  ];
}

interface Tightest {
  readonly element: LineElement;
  readonly radius: Metres;
  readonly least: { readonly value: Metres; readonly source: string };
  readonly at: { readonly x: number; readonly y: number };
}

function tightestOf(survey: Survey, leg: number, part: LineElement['part']): Tightest | undefined {
  let tightest: Tightest | undefined;
  for (const element of survey.line.elements) {
    if (element.leg !== leg || element.part !== part) continue;
    const least = minTurnRadiusOf(survey, element);
    if (least === undefined) continue;
    for (const stretch of element.path) {
      const radius = 1 / Math.abs(stretch.curvature);
      if (stretch.length <= 0 || radius >= least.value * (1 - FORGIVEN)) continue;
      if (tightest !== undefined && radius / least.value >= tightest.radius / tightest.least.value) continue;
      const { x, y } = poseOn(stretch, stretch.length / 2);
      tightest = { element, radius, least, at: { x, y } };
    }
  }
  return tightest;
}

function turnFindings(survey: Survey, leg: number, part: LineElement['part']): RawFinding[] {
  const ridden = survey.layout.ride.legs[leg];
  const tightest = tightestOf(survey, leg, part);
  if (ridden === undefined || tightest === undefined) return [];
  const { element, radius, least, at } = tightest;
  const { unit } = survey.course;
  const way = linePartWords(survey, part, ridden.obstacle);
  const how = element.move === 'back' ? 'backing' : `at a ${element.gait}`;
  const proposals =
    part === 'obstacle'
      ? [...(element.move === 'ride' ? widenProposals(survey, leg) : []), ...slowerProposals(survey, leg, 'gait')]
      : slowerProposals(survey, leg, 'approach');
  return [
    {
      id: `turn:${ridden.id}:${part}`,
      check: 'turn',
      weight: 'must',
      says: `${way} turns on a radius of ${valueWords('length', radius, unit)}; ${how} a horse needs at least ${valueWords('length', least.value, unit)}.`,
      because: turn.because,
      at,
      leg,
      keys: [ridden.obstacle],
      measured: radius,
      allowed: { least: least.value },
      source: least.source,
      proposals,
    },
  ];
}

const PARTS = ['approach', 'obstacle', 'finish'] as const;

export const turn: Check = {
  id: 'turn',
  says: 'No turn is tighter than the horse can make in its gait.',
  because: 'On a turn that is too tight the horse breaks gait, swaps leads or slips.',
  weight: 'must',
  limits: [],
  findings: (survey) =>
    survey.layout.ride.legs.flatMap((_, leg) => PARTS.flatMap((part) => turnFindings(survey, leg, part))),
};
