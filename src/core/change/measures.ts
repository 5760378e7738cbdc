import type { Weight } from '../checks/check.ts';
import { closerFindingsOf } from '../checks/checks.ts';
import { unwaivedFindings } from '../checks/results/waived.ts';
import { polePiece } from '../pieces/pole.ts';
import type { LineElement } from '../ride/line.ts';
import type { Survey } from '../survey.ts';
import { difficulty } from './difficulty.ts';
import { settingOut } from './layout-change-over.ts';
import { lineClearance } from './line-clearance.ts';

/** One figure by which layouts are compared. */
export interface Measure {
  readonly id: string;
  readonly title: string;
  /** `minutes`: seconds that are an estimate, told to the minute. */
  readonly unit: 'count' | 'length' | 'seconds' | 'minutes' | 'fraction' | 'points';
  /** Which is better; null where neither is. */
  readonly better: 'less' | 'more' | null;
  /** What exactly is measured, and why it matters. */
  readonly says: string;
  /** SI; null where there is nothing to measure. */
  value(study: Survey): number | null;
}

function elementLength({ line }: Survey, move: LineElement['move']): number {
  return line.elements.filter((each) => each.move === move).reduce((sum, { length }) => sum + length, 0);
}

function gaitLength({ line }: Survey, gait: 'walk' | 'jog' | 'lope'): number {
  return line.shown.find((each) => each.gait === gait)?.total ?? 0;
}

function findingCount(study: Survey, weight: Weight): number {
  return unwaivedFindings(closerFindingsOf(study)).filter((finding) => finding.weight === weight).length;
}

/** The least radius of what is ridden forward; null on a line that never bends. */
function tightestTurn({ line }: Survey): number | null {
  const bends = line.elements
    .filter(({ move }) => move === 'ride')
    .flatMap(({ path }) => path.filter(({ curvature, length }) => curvature !== 0 && length > 0))
    .map(({ curvature }) => 1 / Math.abs(curvature));
  return bends.length === 0 ? null : Math.min(...bends);
}

/** How far the strides that the gaps ask for are from the usual one, on average, as a share of it. */
function strideDeviation({ line, horse }: Survey): number | null {
  if (line.gaps.length === 0) return null;
  const off = line.gaps.map(({ gait, landings }) => {
    const usual = horse.gaits[gait].landing.value;
    return Math.abs(landings.each - usual) / usual;
  });
  return off.reduce((sum, each) => sum + each, 0) / off.length;
}

function leadLength({ line }: Survey, lead: 'left' | 'right'): number {
  return line.shownLeads.find((each) => each.lead === lead)?.total ?? 0;
}

/** Every measure, in the order in which a table has them. A new one is one line here. */
export const MEASURES: readonly Measure[] = [
  {
    ...{ id: 'obstacles', title: 'Obstacles', unit: 'count', better: null },
    says: 'Numbers in the go: one that is ridden twice counts twice.',
    value: ({ layout }) => layout.ride.legs.length,
  },
  {
    ...{ id: 'poles', title: 'Poles', unit: 'count', better: null },
    says: 'Poles on the ground, ridden or not.',
    value: ({ pieces }) => pieces.filter(({ piece }) => piece.kind === polePiece.id).length,
  },
  {
    ...{ id: 'line', title: 'Line', unit: 'length', better: null },
    says: 'The whole line of travel, from the start to the end.',
    value: ({ line }) => line.length,
  },
  {
    ...{ id: 'walk', title: 'Walked', unit: 'length', better: null },
    says: 'Ridden forward at the walk, over obstacles and between them.',
    value: (study) => gaitLength(study, 'walk'),
  },
  {
    ...{ id: 'jog', title: 'Jogged', unit: 'length', better: null },
    says: 'Ridden forward at the jog, over obstacles and between them.',
    value: (study) => gaitLength(study, 'jog'),
  },
  {
    ...{ id: 'lope', title: 'Loped', unit: 'length', better: null },
    says: 'Ridden forward at the lope, over obstacles and between them.',
    value: (study) => gaitLength(study, 'lope'),
  },
  {
    ...{ id: 'back', title: 'Backed', unit: 'length', better: null },
    says: 'Ridden backwards.',
    value: (study) => elementLength(study, 'back'),
  },
  {
    ...{ id: 'side-pass', title: 'Side passed', unit: 'length', better: null },
    says: 'Ridden sideways.',
    value: (study) => elementLength(study, 'side-pass'),
  },
  {
    ...{ id: 'go', title: 'One go', unit: 'seconds', better: 'less' },
    says: 'From the start to the end, with transitions and what is worked by hand. Estimated times of the horse.',
    value: ({ line }) => line.clock.go,
  },
  {
    ...{ id: 'class', title: 'The class', unit: 'minutes', better: 'less' },
    says: 'All entries of the class, with what lies between goes and the drags. Estimated times.',
    value: ({ classClock }) => (classClock.entries > 0 ? classClock.whole : null),
  },
  {
    ...{ id: 'must', title: 'Must be fixed', unit: 'count', better: 'less' },
    says: 'Findings of the weight must that are not waived, by the rule book in force.',
    value: (study) => findingCount(study, 'must'),
  },
  {
    ...{ id: 'should', title: 'Should be looked at', unit: 'count', better: 'less' },
    says: 'Findings of the weight should that are not waived.',
    value: (study) => findingCount(study, 'should'),
  },
  {
    ...{ id: 'note', title: 'Worth knowing', unit: 'count', better: 'less' },
    says: 'Findings that are notes and are not waived.',
    value: (study) => findingCount(study, 'note'),
  },
  {
    ...{ id: 'tightest-turn', title: 'Tightest turn', unit: 'length', better: 'more' },
    says: 'The least radius of what is ridden forward.',
    value: tightestTurn,
  },
  {
    ...{ id: 'clearance', title: 'Least clearance', unit: 'length', better: 'more' },
    says: 'From the middle of the horse to the nearest thing that is not ridden there.',
    value: (study) => lineClearance(study)?.clear ?? null,
  },
  {
    ...{ id: 'stride', title: 'Strides off the usual', unit: 'fraction', better: 'less' },
    says: 'By how much the gaps that are ridden over ask for another step or stride than the usual, on average.',
    value: strideDeviation,
  },
  {
    ...{ id: 'left-lead', title: 'On the left lead', unit: 'length', better: null },
    says: 'Loped on the left lead.',
    value: (study) => leadLength(study, 'left'),
  },
  {
    ...{ id: 'right-lead', title: 'On the right lead', unit: 'length', better: null },
    says: 'Loped on the right lead.',
    value: (study) => leadLength(study, 'right'),
  },
  {
    ...{ id: 'lead-changes', title: 'Changes of lead', unit: 'count', better: null },
    says: 'Changes of lead that the line asks for within one lope.',
    value: ({ line }) => line.leadNotes.filter(({ kind }) => kind === 'change').length,
  },
  {
    ...{ id: 'transitions', title: 'Transitions', unit: 'count', better: null },
    says: 'Changes of gait, halts, and starts from a halt.',
    value: ({ line }) => line.transitions.length,
  },
  {
    ...{ id: 'difficulty', title: 'Difficulty', unit: 'points', better: null },
    says: 'The sum of its parts, each with its points and their reason; the points are estimates.',
    value: (study) => difficulty(study).total,
  },
  {
    ...{ id: 'set-out', title: 'Setting out', unit: 'minutes', better: 'less' },
    says: 'From the truck into the empty arena by the crew of the course. Estimated times of the crew.',
    value: (study) => (study.pieces.length === 0 ? null : settingOut(study).seconds),
  },
];
