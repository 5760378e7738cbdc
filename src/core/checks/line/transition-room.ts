import { changeLeg } from '../../course/edit-ride.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Going, Transition } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { slowerProposals } from './breaks.ts';

function goingWords(going: Going): string {
  return going === 'standing' ? 'a halt' : `a ${going}`;
}

/** Coming in the gait of the obstacle before, or riding this one in the gait of the way, where either is possible. */
function sameGaitProposals(survey: Survey, { leg: index, before, after }: Transition): readonly Proposal[] {
  const leg = survey.layout.ride.legs[index];
  if (leg === undefined || before === 'standing' || after === 'standing') return [];
  const name = obstacleWords(survey, leg.obstacle);
  return [
    {
      idea: 'same-gait',
      meant: true,
      says: `Ride ${name} at a ${before}`,
      edit: (course) => changeLeg(course, leg.id, { gait: before, approach: before }),
    },
    {
      idea: 'same-gait',
      meant: true,
      says: `Come to ${name} at a ${after}`,
      edit: (course) => changeLeg(course, leg.id, { approach: after }),
    },
  ];
}

/** What the transition takes, and the room that it has. */
function lengthWords(survey: Survey, length: Metres): string {
  return valueWords('length', length, survey.course.unit);
}

export const transitionRoom: Check = {
  id: 'transition-room',
  says: 'Every change of gait and every halt has the room that it takes.',
  because:
    'A rider who has no room must pull or push the horse at once: the horse comes hollow to the obstacle, or the change is made on the poles.',
  weight: 'should',
  limits: [],
  findings: (survey) =>
    survey.line.transitions.flatMap((transition): RawFinding[] => {
      const leg = survey.layout.ride.legs[transition.leg];
      if (transition.fits || leg === undefined) return [];
      const { before, after, at, pose, length, room } = transition;
      const change = `From ${goingWords(before)} to ${goingWords(after)}`;
      const where = `at ${obstacleWords(survey, leg.obstacle)}`;
      return [
        {
          id: `transition-room:${leg.id}:${before}:${after}:${survey.line.transitions.filter((each) => each.leg === transition.leg && each.at < at).length}`,
          check: 'transition-room',
          weight: transitionRoom.weight,
          says: `${change} ${where} takes a horse ${lengthWords(survey, length)}; there are ${lengthWords(survey, room)} for it.`,
          because: transitionRoom.because,
          at: { x: pose.x, y: pose.y },
          leg: transition.leg,
          keys: [leg.obstacle],
          measured: room,
          source: 'the time of a transition at the mean of both speeds: estimate',
          proposals: [...sameGaitProposals(survey, transition), ...slowerProposals(survey, transition.leg, 'approach')],
        },
      ];
    }),
};
