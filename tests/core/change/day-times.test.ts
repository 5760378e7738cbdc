import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DayProblem } from '../../../src/core/change/day-problem.ts';
import { dayTimes } from '../../../src/core/change/day-times.ts';
import { changes, randomDay, task } from './random-days.ts';
import '../../property-seed.ts';

const MINUTE = 60;
const HOUR = 3600;
/** Setting out 30 min, 10 min between layouts, taking down 20 min. */
const CHANGES = changes({ '- a': 30, '- b': 30, 'a -': 20, 'b -': 20 });

function day(more: Partial<DayProblem> = {}): DayProblem {
  return { starts: 8 * HOUR, tasks: [task('a', 60), task('b', 90)], breaks: [], rest: 0, changeOver: CHANGES, ...more };
}

/** Hours and minutes, such as 8:30. */
function clock(seconds: number): string {
  return `${Math.floor(seconds / HOUR)}:${String(Math.round((seconds % HOUR) / MINUTE)).padStart(2, '0')}`;
}

function starts(problem: DayProblem, order = problem.tasks.map(({ id }) => id)): readonly string[] {
  const times = dayTimes(problem, order);
  return [...times.classes.map(({ from }) => clock(from)), clock(times.finish)];
}

describe('the timetable of a day', () => {
  test('counts setting out, classes, the change-over between them and taking down', () => {
    // 8:00 + 30 = 8:30, + 60 = 9:30, + 10 = 9:40, + 90 = 11:10, + 20 = 11:30.
    expect(starts(day())).toEqual(['8:30', '9:40', '11:30']);
    expect(dayTimes(day(), ['a', 'b']).changing).toBe(60 * MINUTE);
    expect(starts(day({ tasks: [task('a', 60), task('c', 90, { layout: 'a' })] }))).toEqual(['8:30', '9:30', '11:20']);
  });

  test('begins a break at its time or when the class that is ridden then ends, and changes over meanwhile', () => {
    const lunch = (from: number, minutes: number) => [{ id: 'lunch', title: 'Lunch', from, length: minutes * MINUTE }];
    // Due at 9:00, class a ends at 9:30: until 10:00; the change-over is done by then.
    expect(starts(day({ breaks: lunch(9 * HOUR, 30) }))).toEqual(['8:30', '10:00', '11:50']);
    // Due while the crew changes over: 9:35 to 9:55.
    expect(starts(day({ breaks: lunch(9.5 * HOUR + 300, 20) }))).toEqual(['8:30', '9:55', '11:45']);
    // Over before the change-over is: costs nothing.
    expect(starts(day({ breaks: lunch(9 * HOUR, 5) }))).toEqual(['8:30', '9:40', '11:30']);
    // Due at the minute at which a class would begin: the break comes first.
    expect(starts(day({ breaks: lunch(9 * HOUR + 40 * MINUTE, 20) }))).toEqual(['8:30', '10:00', '11:50']);
    // After the last class there is nobody left to wait for.
    expect(dayTimes(day({ breaks: lunch(11 * HOUR, 60) }), ['a', 'b'])).toMatchObject({
      breaks: [],
      finish: 11.5 * HOUR,
    });
  });

  test('waits for a fixed start, and tells by how much one is missed', () => {
    const at = (hour: number) => day({ tasks: [task('a', 60), task('b', 90, { startsAt: hour * HOUR })] });
    expect(starts(at(10))).toEqual(['8:30', '10:00', '11:50']);
    expect(dayTimes(at(10), ['a', 'b']).classes[1]?.idle).toBe(20 * MINUTE);
    expect(dayTimes(at(10), ['a', 'b']).broken).toEqual([]);
    expect(dayTimes(at(9.5), ['a', 'b']).broken).toEqual([{ kind: 'late', id: 'b', by: 10 * MINUTE }]);
  });

  test('waits for riders who rode before, and tells whom', () => {
    const riders = (rest: number) =>
      day({ rest: rest * MINUTE, tasks: [task('a', 60, { riders: ['7', '12'] }), task('b', 90, { riders: ['12'] })] });
    expect(starts(riders(10))).toEqual(['8:30', '9:40', '11:30']);
    expect(dayTimes(riders(10), ['a', 'b']).waits).toEqual([]);
    expect(starts(riders(25))).toEqual(['8:30', '9:55', '11:45']);
    expect(dayTimes(riders(25), ['a', 'b']).waits).toEqual([
      { id: 'b', before: 'a', riders: ['12'], rest: 600, wanted: 1500, waits: 900 },
    ]);
  });

  test('tells of a judge whose classes are not in one block', () => {
    const judged = day({ tasks: [task('a', 10, { judge: 'J' }), task('b', 10), task('c', 10, { judge: 'J' })] });
    expect(dayTimes(judged, ['a', 'c', 'b']).broken).toEqual([]);
    expect(dayTimes(judged, ['a', 'b', 'c']).broken).toEqual([{ kind: 'judge', judge: 'J', blocks: 2 }]);
  });

  test('refuses what is no order of its classes', () => {
    expect(() => dayTimes(day(), ['a'])).toThrow('a is no order of a, b');
    expect(() => dayTimes(day(), ['a', 'a'])).toThrow('no order');
  });

  test('has classes and breaks that never overlap, each change-over done before its class', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.integer({ min: 1, max: 8 }), (seed, count) => {
        const problem = randomDay(seed, count);
        const times = dayTimes(
          problem,
          problem.tasks.map(({ id }) => id),
        );
        const taken = [...times.classes, ...times.breaks].sort((a, b) => a.from - b.from || a.to - b.to);
        for (const [i, { from }] of taken.entries())
          expect(from).toBeGreaterThanOrEqual((taken[i - 1]?.to ?? 0) - 1e-6);
        for (const { change, from, idle } of times.classes) {
          expect(change.to).toBeLessThanOrEqual(from + 1e-6);
          expect(idle).toBeGreaterThanOrEqual(-1e-6);
        }
        for (const { id, from } of times.breaks) {
          expect(from).toBeGreaterThanOrEqual(problem.breaks.find((each) => each.id === id)?.from ?? 1e9);
        }
      }),
    );
  });
});
