import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { pieceOfKind } from '../../../src/core/obstacles/parts.ts';
import { survey } from '../../../src/core/survey.ts';

function built(kind: string, id: string, x: number, values = {}): Obstacle {
  const obstacle = buildObstacle(id, kind, values, { x, y: 15, angle: 0 });
  if ('why' in obstacle) throw new Error(obstacle.why);
  return obstacle;
}

function lettersIn(course: Course): Readonly<Record<string, string>> {
  return Object.fromEntries(survey(course).letters);
}

const TWO = [built('back-markers', 'back', 12), built('serpentine', 'weave', 40)].reduce(addObstacle, blankCourse());

describe('the letters of markers', () => {
  test('run on from one obstacle to the next in the order of the go', () => {
    expect(lettersIn(TWO)).toEqual({
      'back/marker-1': 'A',
      'back/marker-2': 'B',
      'back/marker-3': 'C',
      'weave/marker-1': 'D',
      'weave/marker-2': 'E',
      'weave/marker-3': 'F',
      'weave/marker-4': 'G',
    });
    const turned = replaceLayout(TWO, (layout) => ({
      ...layout,
      ride: { ...layout.ride, legs: layout.ride.legs.toReversed() },
    }));
    expect(lettersIn(turned)['weave/marker-1']).toBe('A');
    expect(lettersIn(turned)['back/marker-1']).toBe('E');
  });

  test('stay when the obstacle is ridden again, or another way', () => {
    const again = replaceLayout(TWO, (layout) => ({
      ...layout,
      ride: {
        ...layout.ride,
        legs: layout.ride.legs.flatMap((leg) => [
          { ...leg, passage: leg.obstacle === 'back' ? 'right' : 'right-return' },
          { ...leg, id: `${leg.id}-again` },
        ]),
      },
    }));
    expect(lettersIn(again)).toEqual(lettersIn(TWO));
  });

  test('are given only to markers that the go passes, and not to a lone one', () => {
    const lone = [built('square-marker', 'square', 12), built('mailbox', 'mail', 25), built('run', 'run', 40)];
    expect(lettersIn(lone.reduce(addObstacle, blankCourse()))).toEqual({});
    const unridden = replaceLayout(TWO, (layout) => ({ ...layout, ride: { ...layout.ride, legs: [] } }));
    expect(lettersIn(unridden)).toEqual({});
  });

  test('go on after Z with two signs, each once', () => {
    const rows = [10, 22, 34].map((x, i) => built('serpentine', `weave-${i}`, x, { markers: 10 }));
    const letters = Object.values(lettersIn(rows.reduce(addObstacle, blankCourse())));
    expect(letters.slice(24, 30)).toEqual(['Y', 'Z', 'AA', 'AB', 'AC', 'AD']);
    expect(new Set(letters).size).toBe(30);
  });

  test('any upright thing has one, whatever kind of piece it is', () => {
    const barrels = built('back-markers', 'barrels', 20);
    const pieces = barrels.pieces.map(({ id, pose }) => pieceOfKind(id, 'post', {}, pose));
    expect(Object.values(lettersIn(addObstacle(blankCourse(), { ...barrels, pieces })))).toEqual(['A', 'B', 'C']);
  });
});
