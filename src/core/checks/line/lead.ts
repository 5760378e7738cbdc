import { changeLeg } from '../../course/edit-ride.ts';
import type { LeadNote } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';

function leadProposals(survey: Survey, index: number, lead: 'left' | 'right'): readonly Proposal[] {
  const leg = survey.layout.ride.legs[index];
  if (leg === undefined) return [];
  return [
    {
      says: `Lope ${obstacleWords(survey, leg.obstacle)} on the ${lead} lead`,
      edit: (course) => changeLeg(course, leg.id, { lead }),
    },
  ];
}

function leadFinding(survey: Survey, note: LeadNote): RawFinding | undefined {
  const leg = survey.layout.ride.legs[note.leg];
  // A lope whose lead is open has a check of its own.
  if (leg === undefined || note.kind === 'open') return undefined;
  const { unit } = survey.course;
  const common = {
    check: 'lead',
    because: lead.because,
    at: note.at,
    leg: note.leg,
    keys: [leg.obstacle],
    source: 'the line of travel; on a bend a horse lopes on the inside lead (common practice, no source)',
  };
  const name = obstacleWords(survey, leg.obstacle);
  if (note.kind === 'change') {
    if (note.fits) return undefined;
    return {
      ...common,
      id: `lead:${leg.id}:change`,
      weight: 'should',
      says: `On the way to ${name} the lead has to change from ${note.before} to ${note.after} within ${valueWords('length', note.room, unit)}; a change wants ${valueWords('length', note.wants, unit)}.`,
      measured: note.room,
      allowed: { least: note.wants },
      proposals: [],
    };
  }
  const radius = valueWords('length', note.radius, unit);
  return {
    ...common,
    id: `lead:${leg.id}:${note.kind}`,
    weight: note.kind === 'wrong-lead' ? 'should' : 'note',
    says: `At ${name} the ${note.lead} lead is ridden on a bend to the ${note.bend} of ${radius} radius; the ${note.bend} lead is asked for there.`,
    measured: note.radius,
    proposals: leadProposals(survey, note.leg, note.bend),
  };
}

export const lead: Check = {
  id: 'lead',
  says: 'The lead goes with the bend.',
  because:
    'On the outside lead a horse falls out of a tight bend or breaks gait, and a wrong lead costs the rider points.',
  weight: 'should',
  limits: [],
  findings: (survey) => survey.line.leadNotes.flatMap((note) => leadFinding(survey, note) ?? []),
};

export const leadStated: Check = {
  id: 'lead-stated',
  about: 'course',
  says: 'Where a lope is asked for, its lead is stated.',
  because: 'A rider who has to guess the lead may be marked for guessing wrong.',
  weight: 'should',
  limits: ['lead.stated'],
  findings(survey, limits) {
    const limit = limits['lead.stated'];
    return survey.line.leadNotes.flatMap((note): RawFinding[] => {
      const leg = survey.layout.ride.legs[note.leg];
      // Where it bends, the bend shows which lead is meant, and the pattern prints it.
      if (note.kind !== 'open' || leg === undefined) return [];
      const asks = limit === undefined ? '' : '; the book asks for the lead to be stated';
      return [
        {
          id: `lead-stated:${leg.id}`,
          check: 'lead-stated',
          weight: limit === undefined ? 'note' : (limit.weight ?? leadStated.weight),
          says: `The lope to ${obstacleWords(survey, leg.obstacle)} has no lead, and no bend that gives one${asks}.`,
          because: leadStated.because,
          at: note.at,
          leg: note.leg,
          keys: [leg.obstacle],
          source: limit?.source ?? 'the pattern says which lead: common practice, no source',
          proposals: [...leadProposals(survey, note.leg, 'right'), ...leadProposals(survey, note.leg, 'left')],
        },
      ];
    });
  },
};
