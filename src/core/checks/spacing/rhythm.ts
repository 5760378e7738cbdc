import type { Gap } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { restoreProposals } from '../findings/restore-proposals.ts';
import { pieceWords } from '../findings/thing-words.ts';

/** Steps that differ by more than so many standard deviations of a horse's own strides are another step. Estimate. */
const FELT = 4;

/** Gaps that one leg rides one after the other at one gait. */
function gapsOfLegs({ line }: Survey): readonly (readonly Gap[])[] {
  const byLeg = new Map<number, Gap[]>();
  for (const gap of line.gaps) byLeg.set(gap.leg, [...(byLeg.get(gap.leg) ?? []), gap]);
  return [...byLeg.values()].filter((gaps) => gaps.length > 1);
}

/** The middle one of the steps: one wrong gap does not move it. */
function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
}

export const rhythm: Check = {
  id: 'rhythm',
  says: 'The steps between the poles of one obstacle are all of one length.',
  because:
    'A horse keeps its rhythm over poles: where one gap asks for a longer step than the others, it hits a pole or adds a step.',
  weight: 'should',
  limits: [],
  findings: (survey) =>
    gapsOfLegs(survey).flatMap((gaps): RawFinding[] => {
      const usual = median(gaps.map(({ landings }) => landings.each));
      const off = gaps.filter(
        ({ landings: { each } }) => Math.abs(each - usual) > FELT * survey.horse.spread.value * usual,
      );
      const [worst] = off.toSorted((a, b) => Math.abs(b.landings.each - usual) - Math.abs(a.landings.each - usual));
      const leg = survey.layout.ride.legs[worst?.leg ?? -1];
      if (worst === undefined || leg === undefined) return [];
      const { unit } = survey.course;
      const [first, second] = worst.keys.map((key) => pieceWords(survey, key));
      const more =
        off.length > 1 ? `, and ${off.length - 1} more ${off.length === 2 ? 'gap differs' : 'gaps differ'}` : '';
      const [start] = worst.ends;
      return [
        {
          id: `rhythm:${leg.id}`,
          check: 'rhythm',
          weight: rhythm.weight,
          says: `Between ${first} and ${second} a step at a ${worst.gait} is ${valueWords('length', worst.landings.each, unit)}, and ${valueWords('length', usual, unit)} in the others${more}.`,
          because: rhythm.because,
          at: { x: start.x, y: start.y },
          leg: worst.leg,
          keys: off.flatMap(({ keys }) => keys),
          measured: worst.landings.each,
          source: `poles are spaced for one even stride: common practice, no source; how far strides differ: ${survey.horse.spread.source}`,
          proposals: restoreProposals(survey, leg.obstacle),
        },
      ];
    }),
};
