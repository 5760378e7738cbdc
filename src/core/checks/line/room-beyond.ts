import type { Arena } from '../../course/course.ts';
import type { Gait, Horse } from '../../horses/horse.ts';
import { minTurnRadius } from '../../horses/turns.ts';
import type { Metres } from '../../measure/quantity.ts';
import { oppositePose, type Pose } from '../../plane/pose.ts';
import type { Crossing, LineElement } from '../../ride/line.ts';
import { transitionLength } from '../../ride/transitions.ts';
import type { Survey } from '../../survey.ts';
import type { Check, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { slowerProposals } from './breaks.ts';

/** Metres straight ahead from a pose to the wall; 0 outside the arena. */
function aheadToWall({ x, y, angle }: Pose, { length, width }: Arena): Metres {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const along = (at: number, u: number, far: number): Metres =>
    Math.abs(u) < 1e-9 ? Number.POSITIVE_INFINITY : Math.max(0, (u > 0 ? far - at : -at) / u);
  return Math.min(along(x, ux, length), along(y, uy, width));
}

/**
 * What a horse wants straight before or after the poles: its own length, and then the tightest turn of its gait; or,
 * where the go ends, the halt. It is to stand with its head inside.
 */
function wanted(horse: Horse, gait: Gait, isEnd: boolean): Metres {
  const { value } = horse.bodyLength;
  return isEnd ? transitionLength(gait, 'standing', horse) + value : value + minTurnRadius(horse, gait);
}

/** The first and the last pole that a leg crosses at its gait. */
function endCrossings(survey: Survey, leg: number): readonly [Crossing, Crossing] | undefined {
  const own = survey.line.crossings.filter((each) => each.leg === leg);
  const [first, last] = [own[0], own.at(-1)];
  return first === undefined || last === undefined ? undefined : [first, last];
}

/** Whether the horse is ridden on or off, in the obstacle's gait, where the pole is crossed. */
function isRidden(elements: readonly LineElement[], leg: number, gait: Gait): boolean {
  const own = elements.filter((each) => each.leg === leg && each.part === 'obstacle');
  return own.length > 0 && own.every((each) => each.move === 'ride' && each.gait === gait);
}

export const roomBeyond: Check = {
  id: 'room-beyond',
  says: 'At a jog or a lope there is room to come to the first pole and to go on from the last.',
  because:
    'A horse that lands in front of a wall must stop or turn on the poles, and a rider can be thrown against it.',
  weight: 'should',
  limits: [],
  findings: (survey) =>
    survey.layout.ride.legs.flatMap((leg, index): RawFinding[] => {
      const ends = endCrossings(survey, index);
      if (ends === undefined || leg.gait === 'walk' || !isRidden(survey.line.elements, index, leg.gait)) return [];
      const isEnd = index === survey.layout.ride.legs.length - 1;
      const backwards = oppositePose(ends[0].pose);
      const sides = [
        { side: 'before' as const, pose: backwards, want: wanted(survey.horse, leg.gait, false) },
        { side: 'after' as const, pose: ends[1].pose, want: wanted(survey.horse, leg.gait, isEnd) },
      ];
      return sides.flatMap(({ side, pose, want }): RawFinding[] => {
        const room = aheadToWall(pose, survey.course.arena);
        if (room >= want - 1e-9) return [];
        const { unit } = survey.course;
        const which = side === 'before' ? 'Before the first pole' : 'After the last pole';
        return [
          {
            id: `room-beyond:${leg.id}:${side}`,
            check: 'room-beyond',
            weight: roomBeyond.weight,
            says: `${which} of ${obstacleWords(survey, leg.obstacle)} the wall is ${valueWords('length', room, unit)} away; a horse at a ${leg.gait} wants ${valueWords('length', want, unit)}.`,
            because: roomBeyond.because,
            at: { x: pose.x, y: pose.y },
            leg: index,
            keys: [leg.obstacle],
            measured: room,
            source:
              'a straight of a horse’s length before and after poles: common practice, no source; turns and halts as this horse makes them',
            proposals: slowerProposals(survey, index, 'gait'),
          },
        ];
      });
    }),
};
