import { changeLeg } from '../../course/edit-ride.ts';
import { poseAt } from '../../plane/path.ts';
import type { Point } from '../../plane/point.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';

/** Legs that are loped on this lead over their obstacle, where no bend asks for it. */
function otherLeadProposals(survey: Survey, only: 'left' | 'right'): readonly Proposal[] {
  const other = only === 'left' ? 'right' : 'left';
  return survey.layout.ride.legs.flatMap((leg, index): Proposal[] => {
    const own = survey.line.leads.filter((each) => each.leg === index);
    if (own.length === 0 || own.some(({ bend }) => bend !== null)) return [];
    return [
      {
        idea: 'other-lead',
        meant: true,
        says: `Lope ${obstacleWords(survey, leg.obstacle)} on the ${other} lead`,
        edit: (course) => changeLeg(course, leg.id, { lead: other }),
      },
    ];
  });
}

/** Where the first lope begins. */
function firstLope(survey: Survey): Point {
  const from = survey.line.leads[0]?.from ?? 0;
  const element = survey.line.elements.findLast((each) => each.from <= from);
  if (element === undefined) return survey.layout.ride.start;
  const { x, y } = poseAt(element.path, from - element.from);
  return { x, y };
}

export const oneLead: Check = {
  id: 'one-lead',
  about: 'course',
  says: 'A course that lopes does so on both leads.',
  because: 'A horse that is asked for one lead only shows half of what the class is to show, and always bends one way.',
  weight: 'note',
  limits: [],
  findings(survey): RawFinding[] {
    const { shownLeads, leadNotes } = survey.line;
    const shown = shownLeads.filter(({ total }) => total > 0);
    const [only] = shown;
    // A lope whose lead is open may still be ridden on the other.
    if (only === undefined || shown.length > 1 || leadNotes.some(({ kind }) => kind === 'open')) return [];
    const far = valueWords('length', only.total, survey.course.unit);
    const other = only.lead === 'left' ? 'right' : 'left';
    return [
      {
        id: 'one-lead',
        check: 'one-lead',
        weight: oneLead.weight,
        says: `All lope of the course, ${far}, is on the ${only.lead} lead; none is on the ${other}.`,
        because: oneLead.because,
        at: firstLope(survey),
        keys: [],
        measured: only.total,
        source: 'both leads are shown: common practice, no source',
        proposals: otherLeadProposals(survey, only.lead),
      },
    ];
  },
};
