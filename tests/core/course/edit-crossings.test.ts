import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { clampToPole, crossingsOf, moveCrossings } from '../../../src/core/course/edit-crossings.ts';
import { rebuildObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { survey } from '../../../src/core/survey.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

/** In the trio the run is ridden by leg-1 and the fan by leg-2. */
const course = threeObstacles();

function fractions(of: Course, leg: string): readonly number[] {
  return crossingsOf(currentLayout(of), leg).map(({ fraction }) => fraction);
}

function again(of: Course, id: string, values: Parameters<typeof rebuildObstacle>[2]): Course {
  const built = rebuildObstacle(of, id, values);
  if ('why' in built) throw new Error(built.why);
  return built;
}

describe('the line moved over its poles', () => {
  const moved = moveCrossings(course, 'leg-2', new Map([[1, 0.5]]));

  test('goes over the pole there, and the poles lie where they lay', () => {
    const [before, after] = [survey(course), survey(moved)];
    expect(after.pieces.map(({ key, pose }) => [key, pose])).toEqual(before.pieces.map(({ key, pose }) => [key, pose]));
    const ridden = after.line.crossings.filter(({ leg }) => leg === 1).map(({ fraction }) => fraction);
    expect(ridden).toEqual(fractions(moved, 'leg-2'));
    expect(ridden[1]).toBe(0.5);
    expect(ridden[0]).toBe(fractions(course, 'leg-2')[0]);
  });

  test('leaves the other way over the same obstacle, and all others, as they were', () => {
    const other = currentLayout(course).obstacles[1]?.passages[1]?.id ?? '';
    const back = (of: Course) => fractions(changeLeg(of, 'leg-2', { passage: other }), 'leg-2');
    expect(back(moved)).toEqual(back(course));
    expect(currentLayout(moved).obstacles[0]).toBe(currentLayout(course).obstacles[0]);
  });

  test('is written into the file and read again', () => {
    const reading = readCourse(writeCourse(moved));
    if (reading.kind !== 'read') throw new Error(reading.why);
    expect(fractions(reading.course, 'leg-2')).toEqual(fractions(moved, 'leg-2'));
  });

  test('stays when the obstacle is built anew with other sizes, and for one pole more', () => {
    expect(fractions(again(moved, 'fan-1', { gap: 2 }), 'leg-2')).toEqual(fractions(moved, 'leg-2'));
    const more = fractions(again(moved, 'fan-1', { poles: fractions(moved, 'leg-2').length + 1 }), 'leg-2');
    expect(more).toHaveLength(fractions(moved, 'leg-2').length + 1);
    expect(more[1]).toBe(0.5);
    expect(more.at(-1)).toBe(fractions(course, 'leg-2')[0]);
  });

  test('goes where the line is typed when that is what changes', () => {
    const typed = fractions(again(moved, 'fan-1', { line: 0.6 }), 'leg-2');
    expect(new Set(typed)).toEqual(new Set([0.6]));
  });

  test('never leaves its pole', () => {
    expect(fractions(moveCrossings(course, 'leg-1', new Map([[0, -3]])), 'leg-1')[0]).toBe(clampToPole(0));
    expect(fractions(moveCrossings(course, 'leg-1', new Map([[0, 7]])), 'leg-1')[0]).toBe(clampToPole(1));
    expect(clampToPole(0.4)).toBe(0.4);
  });
});
