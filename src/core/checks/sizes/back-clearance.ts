import type { Survey } from '../../survey.ts';
import type { Check, Limit } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords, pieceWords } from '../findings/thing-words.ts';
import { widerProposals } from '../findings/wider-proposals.ts';
import { type Sweep, sweepsOf } from '../geometry/sweep.ts';
import { BAND_TOLERANCE } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

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
      proposals: widerProposals(survey, sweep.obstacle, least - sweep.clear),
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
