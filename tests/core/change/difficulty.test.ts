import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difficulty } from '../../../src/core/change/difficulty.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { addObstacle, freshId } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { survey } from '../../../src/core/survey.ts';
import { RANDOM_COURSES, STARTERS } from '../ride/courses.ts';
import { course, leg, run } from '../ride/hand-laid.ts';
import { mirroredCourse } from './mirrored.ts';
import '../../property-seed.ts';

function shares(of: Course): Readonly<Record<string, number>> {
  return Object.fromEntries(difficulty(survey(of)).parts.map(({ id, amount }) => [id, amount]));
}

function straight(gap: number, gait: 'jog' | 'lope' = 'jog'): Course {
  const ride = { start: pose(4, 5, 0), legs: [leg('run-1', { gait, approach: gait })] };
  return course([run('run-1', pose(24, 5, 0), { gap })], ride);
}

describe('the difficulty of a go', () => {
  test('is the sum of its parts', () => {
    for (const [, starter] of STARTERS) {
      const { total, parts } = difficulty(survey(starter));
      expect(total).toBeCloseTo(
        parts.reduce((sum, { points }) => sum + points, 0),
        9,
      );
      expect(parts.every(({ points, because, source }) => points >= 0 && because !== '' && source === 'estimate')).toBe(
        true,
      );
    }
  });

  test('of four poles on a straight is one thing to begin, four poles and a start', () => {
    const usual = shares(straight(0.975));
    expect(usual).toMatchObject({ steps: 1, poles: 4, gaps: 0, transitions: 1, 'tight-turns': 0, lope: 0 });
    // At 3 ft a jogging horse is at the end of what it does, in each of the three gaps.
    expect(shares(straight(3 * FOOT)).gaps).toBeCloseTo(3, 9);
    expect(shares(straight(2, 'lope'))).toMatchObject({ 'lope-poles': 4, gaps: 0 });
  });

  test('of lanes and side passes is in their metres, turns and corners', () => {
    const of = (kind: string) => {
      const built = buildObstacle('it', kind, {}, pose(30, 15));
      if ('why' in built) throw new Error(built.why);
      return shares(addObstacle(course([], { start: pose(4, 15, 0), legs: [] }), built));
    };
    expect(of('back-l')['back-bends']).toBeCloseTo(1, 2);
    expect(of('back-lane')['back-bends']).toBe(0);
    expect(of('back-lane').back).toBeGreaterThan(1);
    expect(of('side-pass')['side-pass-corners']).toBe(0);
    expect(of('side-pass-l')['side-pass-corners']).toBe(1);
    expect(of('gate').work).toBe(1);
    expect(of('bridge').decks).toBe(1);
  });

  test.each(STARTERS)('of %s is that of its mirror image', (_, starter) => {
    const [one, other] = [difficulty(survey(starter)), difficulty(survey(mirroredCourse(starter)))];
    for (const [i, { id, amount }] of one.parts.entries()) expect(other.parts[i]?.amount, id).toBeCloseTo(amount, 4);
  });

  test('never falls when an obstacle is added at the end', () => {
    const kinds = OBSTACLE_KINDS.filter(({ id }) => !('why' in buildObstacle('it', id, {}, pose(0, 0))));
    const any = fc.record({
      which: fc.integer({ min: 0, max: RANDOM_COURSES.length - 1 }),
      kind: fc.constantFrom(...kinds.map(({ id }) => id)),
      gait: fc.constantFrom('walk' as const, 'jog' as const, 'lope' as const),
    });
    fc.assert(
      fc.property(any, ({ which, kind, gait }) => {
        const before = RANDOM_COURSES[which];
        if (before === undefined) throw new Error('there are a hundred');
        // Beyond the old wall, where it is in nobody's way.
        const arena = { ...before.arena, length: before.arena.length + 30 };
        const built = buildObstacle(
          freshId(before, kind),
          kind,
          {},
          pose(before.arena.length + 15, before.arena.width / 2),
        );
        if ('why' in built) throw new Error(built.why);
        const wider = { ...before, arena };
        let after = addObstacle(wider, built);
        const added = after.layouts[0].ride.legs.at(-1);
        if (added?.obstacle === built.id) after = changeLeg(after, added.id, { gait, approach: gait });
        const [one, other] = [difficulty(survey(wider)), difficulty(survey(after))];
        expect(other.total).toBeGreaterThanOrEqual(one.total - 1e-9);
      }),
      { numRuns: 60 },
    );
  });
});
