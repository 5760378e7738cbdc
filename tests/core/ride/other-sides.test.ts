import { describe, expect, test } from 'vitest';
import { findingsOf } from '../../../src/core/checks/checks.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { eraseByKeys, flipObstacles } from '../../../src/core/course/edit-obstacles.ts';
import { passOn } from '../../../src/core/course/edit-ride.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { pathLength, pathPoints } from '../../../src/core/plane/path.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { otherSides } from '../../../src/core/ride/other-sides.ts';
import { survey } from '../../../src/core/survey.ts';
import { STARTERS } from './courses.ts';
import { course, leg, obstacle, pole, run } from './hand-laid.ts';

/** One pole on the middle of the arena, ridden over eastwards, then another; `across` lies between, 8 in off the straight. */
function divided(across = -(8 * FOOT) / 12): Course {
  return course(
    [
      run('a', pose(12, 15), { poles: 1 }),
      run('b', pose(36, 15), { poles: 1 }),
      obstacle('across', pose(24, 15 + across, Math.PI / 2), [pole('only', pose(0, 0))], []),
    ],
    { start: pose(4, 15), legs: [leg('a'), leg('b')] },
  );
}

function wayOf(of: Course) {
  const way = survey(of).line.ways[1];
  if (way === undefined) throw new Error('the ride has two legs');
  return way.kept;
}

/** How far the way to number 2 leaves the straight, to the left of the horse, metres. */
function leftmost(of: Course): number {
  const offs = pathPoints(wayOf(of).found.path, 0.1).map(({ y }) => y - 15);
  return offs.reduce((most, off) => (Math.abs(off) > Math.abs(most) ? off : most), 0);
}

describe('the side of what a way passes', () => {
  test('is the shorter one, and the other is offered with what it costs', () => {
    const of = divided();
    expect(leftmost(of)).toBeGreaterThan(1);
    const [other, ...more] = otherSides(wayOf(of));
    expect(other).toMatchObject({ obstacle: 'across', hand: 'left' });
    expect(more).toEqual([]);
    const chosen = passOn(of, 'leg-b', 'across', 'left');
    expect(leftmost(chosen)).toBeLessThan(-1);
    expect(pathLength(wayOf(chosen).found.path) - pathLength(wayOf(of).found.path)).toBeCloseTo(other?.longer ?? 0, 2);
    expect(otherSides(wayOf(chosen))).toMatchObject([{ obstacle: 'across', hand: 'right' }]);
  });

  test.each(['left', 'right'] as const)('stays on the %s as chosen, wherever the thing lies', (hand) => {
    for (const off of [-1.2, -0.5, 0.1, 0.5, 1.2]) {
      const of = passOn(divided(off), 'leg-b', 'across', hand);
      expect(Math.sign(leftmost(of))).toBe(hand === 'left' ? -1 : 1);
      expect(survey(of).line.breaks).toEqual([]);
    }
  });

  test('is not offered where it is far longer, nor for what is not beside the way', () => {
    expect(otherSides(wayOf(divided(-9)))).toEqual([]);
  });

  test('is turned over with its mirror image, and goes with the thing', () => {
    const of = passOn(divided(), 'leg-b', 'across', 'left');
    const mirrored = flipObstacles(of, ['a', 'b', 'across']);
    expect(mirrored.layouts[0].ride.legs[1]?.passes).toEqual([{ obstacle: 'across', hand: 'right' }]);
    expect(eraseByKeys(of, ['across']).layouts[0].ride.legs[1]).not.toHaveProperty('passes');
    expect(passOn(of, 'leg-b', 'across', null)).toEqual(divided());
  });

  test('is kept in the file; of a thing that is not there it is refused with its name', () => {
    const [, of] = STARTERS[0] ?? ['', divided()];
    const [first, , third] = of.layouts[0].ride.legs;
    const chosen = passOn(of, third?.id ?? '', first?.obstacle ?? '', 'left');
    const text = writeCourse(chosen);
    const read = readCourse(text);
    expect(read.kind === 'refused' ? read.why : read.course).toEqual(chosen);
    const passed = `"passes": [{ "obstacle": "${first?.obstacle}"`;
    expect(text).toContain(passed);
    const wrong = readCourse(text.replace(passed, '"passes": [{ "obstacle": "gone"'));
    expect(wrong).toMatchObject({ kind: 'refused' });
    expect(JSON.stringify(wrong)).toContain('passes the obstacle \\"gone\\", which is not in the layout');
  });

  test('that shuts the way is told, and the fix leaves it to the line', () => {
    // Between the pole and the south wall nothing is left.
    const of = passOn(divided(-13), 'leg-b', 'across', 'left');
    const [gone] = findingsOf(survey(of)).filter(({ check }) => check === 'breaks');
    expect(gone?.remedies.map(({ says }) => says)[0]).toMatch(/^Leave the side of .+ to the line$/);
  });
});
