import { describe, expect, test } from 'vitest';
import { crewOf, USUAL_CREW } from '../../../src/core/change/crew.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { setCrew } from '../../../src/core/course/edit-crew.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import type { Sourced } from '../../../src/core/horses/horse.ts';

function numbers(of: object, path = ''): [string, Sourced][] {
  return Object.entries(of).flatMap(([key, value]): [string, Sourced][] => {
    return 'source' in value ? [[`${path}${key}`, value as Sourced]] : numbers(value, `${path}${key}.`);
  });
}

describe('what is assumed of a crew', () => {
  test('says of every number that it is an estimate or has no source, and keeps it in its bounds', () => {
    const all = numbers(USUAL_CREW);
    expect(all.length).toBe(14);
    for (const [path, { value, least = value, most = value, source, grade }] of all) {
      expect(source, path).toMatch(/^(estimate|common practice, no source)/);
      expect(grade, path).toBe('E');
      expect(value, path).toBeGreaterThanOrEqual(least);
      expect(value, path).toBeLessThanOrEqual(most);
    }
  });

  test('lets what lies right lie: a charge is more than both ends of a pole can be off', () => {
    expect(USUAL_CREW.charge.least ?? 0).toBeGreaterThan(2 * (USUAL_CREW.liesRight.most ?? 0));
  });
});

describe('the crew of a course', () => {
  const course = blankCourse();

  test('is two people, and the truck stands in the entrance', () => {
    expect(crewOf(course)).toEqual({ people: 2, truckAt: { x: 0, y: course.arena.entrance.at } });
    const walls = (['west', 'east', 'south', 'north'] as const).map((wall) => {
      return crewOf({ arena: { title: '', length: 60, width: 30, entrance: { wall, at: 12, width: 4 } } }).truckAt;
    });
    expect(walls).toEqual([
      { x: 0, y: 12 },
      { x: 60, y: 12 },
      { x: 12, y: 0 },
      { x: 12, y: 30 },
    ]);
  });

  test('can be chosen, is kept in the file, and can be the usual one again', () => {
    const chosen = setCrew(course, { people: 4, truckAt: { x: 3, y: -2 } });
    expect(crewOf(chosen)).toEqual({ people: 4, truckAt: { x: 3, y: -2 } });
    expect(readCourse(writeCourse(chosen))).toMatchObject({ kind: 'read', course: chosen });
    expect(setCrew(chosen, undefined)).toEqual(course);
    expect(crewOf(setCrew(course, { people: 3 })).truckAt).toEqual(crewOf(course).truckAt);
  });

  test('may not stand far from the arena, nor be more than four', () => {
    const far = readCourse(writeCourse(setCrew(course, { people: 2, truckAt: { x: -250, y: 0 } })));
    expect(far).toMatchObject({
      kind: 'refused',
      why: expect.stringContaining('The truck stands 250 m outside the arena'),
    });
    const text = writeCourse(setCrew(course, { people: 4 })).replace('"people": 4', '"people": 5');
    expect(readCourse(text)).toMatchObject({ kind: 'refused' });
  });
});
