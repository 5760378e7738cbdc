import type { Survey } from '../survey.ts';
import {
  arcTurn,
  decksRidden,
  hardGaps,
  leadChanges,
  lopedCrossings,
  lopedLength,
  missingRoom,
  narrowBacks,
  ofMove,
  QUARTER,
  raisedCrossings,
  riddenTransitions,
  sidePassCorners,
  spotTurns,
  stepCount,
  sum,
  tightTurns,
} from './difficulty-amounts.ts';

/** One part of the difficulty: a named amount, and the points that one of it is worth. */
export interface DifficultyPart {
  readonly id: string;
  readonly title: string;
  /** What the amount counts: things, metres, quarter turns, or whole times that a thing is as hard as it gets. */
  readonly unit: 'count' | 'length' | 'quarter turns' | 'times';
  /** Points for one. All are estimates: one point is about what one plain obstacle asks. */
  readonly each: number;
  readonly because: string;
  /** Where the points are from. */
  readonly source: 'estimate';
  /** 0 or more; grows with every obstacle. */
  amount(survey: Survey): number;
}

/** Every part of the difficulty, in the order in which it is told. */
export const DIFFICULTY_PARTS: readonly DifficultyPart[] = [
  {
    id: 'steps',
    title: 'Things to begin',
    unit: 'count',
    each: 1,
    because: 'Each obstacle, and each new move inside one, is a decision of the rider.',
    source: 'estimate',
    amount: stepCount,
  },
  {
    id: 'poles',
    title: 'Poles crossed',
    unit: 'count',
    each: 0.25,
    because: 'Each pole can be hit.',
    source: 'estimate',
    amount: ({ line }) => line.crossings.length,
  },
  {
    id: 'raised',
    title: 'Raised poles crossed',
    unit: 'count',
    each: 0.5,
    because: 'A raised pole asks for more lift, and falls when it is hit.',
    source: 'estimate',
    amount: raisedCrossings,
  },
  {
    id: 'gaps',
    title: 'Gaps near the end of what a horse does',
    unit: 'times',
    each: 0.5,
    because:
      'A gap that is short or long for the stride has to be ridden for. 0 in the middle half of the band, 1 at its end.',
    source: 'estimate',
    amount: hardGaps,
  },
  {
    id: 'lope-poles',
    title: 'Poles crossed at the lope',
    unit: 'count',
    each: 0.5,
    because: 'At the lope a pole comes at one place of the stride, and the horse must be brought to it.',
    source: 'estimate',
    amount: lopedCrossings,
  },
  {
    id: 'lope',
    title: 'Loped',
    unit: 'length',
    each: 0.03,
    because: 'A slow lope has to be kept between things; about 100 ft of it is as much as an obstacle.',
    source: 'estimate',
    amount: lopedLength,
  },
  {
    id: 'lead-changes',
    title: 'Changes of lead',
    unit: 'count',
    each: 3,
    because: 'A change of lead in the line is the hardest single thing that a pattern asks at the lope.',
    source: 'estimate',
    amount: (survey) => leadChanges(survey).length,
  },
  {
    id: 'lead-room',
    title: 'Room that changes of lead lack',
    unit: 'times',
    each: 3,
    because: 'With less than the room that a change wants it is as hard again.',
    source: 'estimate',
    amount: (survey) => sum(leadChanges(survey), ({ room, wants }) => Math.max(0, 1 - room / wants)),
  },
  {
    id: 'transitions',
    title: 'Changes of gait, halts and starts',
    unit: 'count',
    each: 0.5,
    because: 'Each is asked for at a place, and is judged there.',
    source: 'estimate',
    amount: (survey) => riddenTransitions(survey).length,
  },
  {
    id: 'transition-room',
    title: 'Room that changes of gait lack',
    unit: 'times',
    each: 1.5,
    because: 'A change without its room is made too late, or breaks.',
    source: 'estimate',
    amount: (survey) => sum(riddenTransitions(survey), missingRoom),
  },
  {
    id: 'tight-turns',
    title: 'Turns tighter than with ease',
    unit: 'quarter turns',
    each: 0.75,
    because: 'Quarter turns at the tightest that the gait can; wider ones count less, those with ease nothing.',
    source: 'estimate',
    amount: tightTurns,
  },
  {
    id: 'spot-turns',
    title: 'Turns on the spot',
    unit: 'quarter turns',
    each: 0.75,
    because: 'The horse has to place its feet without going anywhere.',
    source: 'estimate',
    amount: (survey) => spotTurns(survey).others / QUARTER,
  },
  {
    id: 'back',
    title: 'Backed',
    unit: 'length',
    each: 0.5,
    because: 'A backing horse does not see its hind feet.',
    source: 'estimate',
    amount: (survey) => sum(ofMove(survey, 'back'), ({ length }) => length),
  },
  {
    id: 'back-bends',
    title: 'Bends while backing',
    unit: 'quarter turns',
    each: 2,
    because: 'At a bend quarters and shoulders go different ways between the poles.',
    source: 'estimate',
    amount: (survey) => (spotTurns(survey).between + sum(ofMove(survey, 'back'), arcTurn)) / QUARTER,
  },
  {
    id: 'back-narrow',
    title: 'Narrow places in backing and turning',
    unit: 'times',
    each: 2,
    because: '1 where the hooves have no room to spare, 0 with a foot of it.',
    source: 'estimate',
    amount: narrowBacks,
  },
  {
    id: 'side-pass',
    title: 'Side passed',
    unit: 'length',
    each: 0.75,
    because: 'The horse must be kept straight and level along the pole.',
    source: 'estimate',
    amount: (survey) => sum(ofMove(survey, 'side-pass'), ({ length }) => length),
  },
  {
    id: 'side-pass-corners',
    title: 'Corners and returns in side passes',
    unit: 'count',
    each: 2,
    because: 'At the corner of an L, T or V the other end of the horse begins to lead.',
    source: 'estimate',
    amount: sidePassCorners,
  },
  {
    id: 'work',
    title: 'Worked by hand',
    unit: 'count',
    each: 3,
    because: 'A gate or a thing to carry takes one hand, and a horse that waits.',
    source: 'estimate',
    amount: (survey) => new Set(ofMove(survey, 'work').map(({ leg }) => leg)).size,
  },
  {
    id: 'decks',
    title: 'Bridges and water',
    unit: 'count',
    each: 1,
    because: 'The horse has to trust what it walks on.',
    source: 'estimate',
    amount: decksRidden,
  },
];
