import { INCH } from '../../measure/quantity.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limit, Proposal } from '../check.ts';
import { obstacleWords, pieceWords, valueWords } from '../findings/finding-words.ts';
import { rebuildNear } from '../findings/verified-fixes.ts';
import { type Sweep, sweepsOf } from '../geometry/sweep.ts';
import { BAND_TOLERANCE } from '../rulebooks/band.ts';
import { bandOf, usualOf } from '../rulebooks/rulebooks.ts';

/**
 * Where what is usual is not enough: the lane has to widen by more than what is missing, because the horse stands askew
 * in it.
 */
const WIDER = [2, 3, 5, 8];

/** The parameter that widens an obstacle, and the limit that says what is usual for it. */
const WIDTHS = { width: 'back.width', side: 'box.side' } as const;

function widenProposals(survey: Survey, sweep: Sweep, missing: number): readonly Proposal[] {
  const obstacle = survey.layout.obstacles.find(({ id }) => id === sweep.obstacle);
  const param = (['width', 'side'] as const).find((key) => typeof obstacle?.values[key] === 'number');
  if (obstacle === undefined || param === undefined) return [];
  const now = Number(obstacle.values[param]);
  const usual = usualOf(WIDTHS[param], survey.course.rulebook) ?? 0;
  const stepped = WIDER.map((times) => Math.ceil((now + times * missing) / INCH - 1e-9) * INCH);
  return [...(usual > now ? [usual] : []), ...stepped].map((value) => {
    return {
      idea: 'widen',
      says: `Build ${obstacleWords(survey, sweep.obstacle)} with ${valueWords('length', value, survey.course.unit)}`,
      edit: (course) => rebuildNear(course, sweep.obstacle, { [param]: value }),
    };
  });
}

function findingWords(survey: Survey, { obstacle, move, clear, key, base }: Sweep, least: number): string {
  const { unit } = survey.course;
  const size = `${valueWords('length', base.length, unit)} by ${valueWords('length', base.width, unit)}`;
  const doing = move === 'turn' ? 'Turning in' : 'Backing through';
  const distance = valueWords('length', Math.abs(clear), unit);
  const piece = pieceWords(survey, key);
  const where = clear < 0 ? `${distance} over ${piece}` : `to ${distance} from ${piece}`;
  const wants = least > 0 ? `at least ${valueWords('length', least, unit)} is wanted` : 'they have to stay clear of it';
  return `${doing} ${obstacleWords(survey, obstacle)}, hooves that stand ${size} come ${where} however they are placed; ${wants}.`;
}

function backClearanceFindings(survey: Survey, sweep: Sweep, limit: Limit) {
  const band = bandOf(limit);
  const least = band.least ?? 0;
  if (sweep.clear >= least - BAND_TOLERANCE) return [];
  const leg = survey.layout.ride.legs[sweep.leg];
  return [
    {
      id: `back-clearance:${sweep.obstacle}:${leg?.passage ?? sweep.leg}`,
      check: 'back-clearance',
      weight: limit.weight ?? backClearance.weight,
      says: findingWords(survey, sweep, least),
      because: backClearance.because,
      at: { x: sweep.at.x, y: sweep.at.y },
      leg: sweep.leg,
      keys: [sweep.obstacle, sweep.key],
      measured: sweep.clear,
      allowed: band,
      source: `${survey.horse.wheelbase.source}; the room: ${limit.source}`,
      proposals: widenProposals(survey, sweep, least - sweep.clear),
    },
  ];
}

/** The search is for a rigid body; a horse that does not pass so has to shorten its base while it turns. */
export const backClearance: Check = {
  id: 'back-clearance',
  says: 'A horse goes round every lane and turn without stepping on it.',
  because:
    'A backing or turning horse does not see its hind feet: where its hooves do not fit, a careful rider is hit with a careless one.',
  weight: 'should',
  limits: ['sweep.clear'],
  runs: 'rest',
  findings(survey, limits) {
    const limit = limits['sweep.clear'];
    return limit === undefined ? [] : sweepsOf(survey).flatMap((sweep) => backClearanceFindings(survey, sweep, limit));
  },
};
