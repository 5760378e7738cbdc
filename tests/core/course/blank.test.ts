import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Arena } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { entrancePose } from '../../../src/core/course/entrance-pose.ts';
import { courseSchema } from '../../../src/core/course/schema.ts';
import { semanticErrors } from '../../../src/core/files/semantic-validation.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { survey } from '../../../src/core/survey.ts';
import { build } from './sample.ts';

test.each(['ft', 'm'] as const)('a blank course in %s is a whole course', (unit) => {
  const course = blankCourse({ unit });
  expect(courseSchema.parse(course)).toEqual(course);
  expect(semanticErrors(course)).toEqual([]);
  expect(course.layouts[0].obstacles).toEqual([]);
});

test.each(OBSTACLE_KINDS)('the usual truck holds what a $id as it usually is needs', ({ id }) => {
  const course = addObstacle(blankCourse(), build(`${id}-1`, id, { x: 20, y: 15, angle: 0 }));
  const { pieces, truck } = survey(course);
  expect(pieces.length).toBeGreaterThan(0);
  expect(truck.filter(({ stock, left }) => stock === null || left < 0)).toEqual([]);
});

describe('the go starts inside the entrance, heading in', () => {
  const arena = (wall: 'west' | 'east' | 'south' | 'north', at: number): Arena => {
    return { title: '', length: 60, width: 30, entrance: { wall, at, width: 4 } };
  };
  test.each([
    [arena('west', 10), { x: 3, y: 10, angle: 0 }],
    [arena('east', 10), { x: 57, y: 10, angle: Math.PI }],
    [arena('south', 20), { x: 20, y: 3, angle: Math.PI / 2 }],
    [arena('north', 20), { x: 20, y: 27, angle: -Math.PI / 2 }],
  ])('%j', (given, pose) => {
    expect(entrancePose(given)).toEqual(pose);
  });
});
