import { changeLeg, passOn } from '../../course/edit-ride.ts';
import type { Gait } from '../../horses/horse.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal } from '../check.ts';
import { obstacleWords } from '../findings/thing-words.ts';

const SLOWER: Readonly<Record<Gait, readonly Gait[]>> = { lope: ['jog', 'walk'], jog: ['walk'], walk: [] };

/** Coming to the leg's obstacle, or riding it, at a slower gait. */
export function slowerProposals(survey: Survey, index: number, part: 'approach' | 'gait'): readonly Proposal[] {
  const leg = survey.layout.ride.legs[index];
  if (leg === undefined) return [];
  const name = obstacleWords(survey, leg.obstacle);
  return SLOWER[leg[part]].map((gait) => ({
    meant: true,
    says: part === 'approach' ? `Come to ${name} at a ${gait}` : `Ride ${name} at a ${gait}`,
    edit: (course) => changeLeg(course, leg.id, { [part]: gait }),
  }));
}

/** To leave the sides of what a leg passes to the line again. */
function openSideProposals(survey: Survey, index: number): readonly Proposal[] {
  const leg = survey.layout.ride.legs[index];
  return (leg?.passes ?? []).map(({ obstacle }) => ({
    meant: true,
    says: `Leave the side of ${obstacleWords(survey, obstacle)} to the line`,
    edit: (course) => passOn(course, leg?.id ?? '', obstacle, null),
  }));
}

export const breaks: Check = {
  id: 'breaks',
  says: 'There is a line that a horse can follow from start to end.',
  because: 'Where no such line exists the pattern cannot be ridden as it is posted.',
  weight: 'must',
  limits: [],
  findings: (survey) =>
    survey.line.breaks.map((gone, i) => {
      const leg = survey.layout.ride.legs[gone.leg];
      const before = survey.line.breaks.slice(0, i).filter((other) => other.leg === gone.leg).length;
      return {
        id: `breaks:${leg?.id ?? gone.leg}${before > 0 ? `:${before + 1}` : ''}`,
        check: 'breaks',
        weight: 'must',
        says: gone.why,
        because: breaks.because,
        at: gone.at,
        leg: gone.leg,
        keys: leg === undefined ? [] : [leg.obstacle],
        source: 'the line of travel, as this horse can turn',
        proposals: [
          ...openSideProposals(survey, gone.leg),
          ...slowerProposals(survey, gone.leg, 'approach'),
          ...slowerProposals(survey, gone.leg, 'gait'),
        ],
      };
    }),
};
