import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { classEntryOf, dayProblem } from '../../../src/core/change/day-problem.ts';
import { layoutSurvey } from '../../../src/core/change/layout-survey.ts';
import type { Course, Entry } from '../../../src/core/course/course.ts';
import { dayClassOf, dayEntryCount } from '../../../src/core/course/day-class.ts';
import { addEntries, changeEntry, startClass } from '../../../src/core/course/edit-entries.ts';
import { type GoPlan, type GoTimes, goTimes, goTimesOf, goTimeWords, startOf } from '../../../src/core/go/go-times.ts';
import { survey } from '../../../src/core/survey.ts';
import { DAY } from '../change/larkhollow-day.ts';
import { STARTERS } from '../ride/courses.ts';
import '../../property-seed.ts';

const MINUTE = 60;
const HOUR = 3600;

function entries(count: number, change: (i: number) => Partial<Entry> = () => ({})): readonly Entry[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `entry-${i + 1}`,
    number: String(101 + i),
    rider: `Rider ${i + 1}`,
    horse: `Horse ${i + 1}`,
    ...change(i),
  }));
}

/** Goes of 2 min, 1 min between them, 10 min of dragging after 3. */
function plan(list: readonly Entry[], more: Partial<GoPlan> = {}): GoPlan {
  const of = { changeover: MINUTE, dragEvery: 3, drag: 10 * MINUTE };
  return { list, go: 2 * MINUTE, class: of, starts: null, breaks: [], ...more };
}

/** "101 0–2", "drag 8–18": minutes. */
function told({ rows }: GoTimes): readonly string[] {
  return rows.map((row) => {
    const what = row.kind === 'go' ? row.entry.number : row.kind === 'drag' ? 'drag' : row.title;
    return `${what} ${row.from / MINUTE}–${row.to / MINUTE}`;
  });
}

describe('the times of a class', () => {
  test('are goes with the change-over between, and a drag after so many', () => {
    expect(told(goTimes(plan(entries(4))))).toEqual(['101 0–2', '102 3–5', '103 6–8', 'drag 8–18', '104 19–21']);
  });

  test('have no drag after the last go, and none where none is wanted', () => {
    expect(told(goTimes(plan(entries(3))))).toEqual(['101 0–2', '102 3–5', '103 6–8']);
    const never = goTimes(plan(entries(5), { class: { changeover: 0, dragEvery: 0 } }));
    expect(told(never).at(-1)).toBe('105 8–10');
  });

  test('a late entry moves itself and all after it, and nothing before it', () => {
    const late = goTimes(plan(entries(4, (i) => (i === 1 ? { late: 5 * MINUTE } : {}))));
    expect(told(late)).toEqual(['101 0–2', '102 8–10', '103 11–13', 'drag 13–23', '104 24–26']);
    expect(late.late).toBe(5 * MINUTE);
  });

  test('a scratched entry takes no time, is no turn, and does not count for the drag', () => {
    const times = goTimes(plan(entries(5, (i) => (i === 1 ? { scratched: true, late: 60 } : {}))));
    expect(told(times)).toEqual(['101 0–2', '103 3–5', '104 6–8', 'drag 8–18', '105 19–21']);
    expect(times.rows.flatMap((row) => (row.kind === 'go' ? [row.turn] : []))).toEqual([1, 2, 3, 4]);
    expect(times.scratched.map(({ number }) => number)).toEqual(['102']);
    expect(times.late).toBe(0);
  });

  test('begin at the start; a break that is on then comes first, one that is due during the class after it', () => {
    const lunch = { title: 'Lunch', from: 12 * HOUR, length: 30 * MINUTE };
    const at = (starts: number) => told(goTimes(plan(entries(2), { starts, breaks: [lunch] })));
    expect(at(9 * HOUR)).toEqual(['101 540–542', '102 543–545']);
    expect(at(11 * HOUR + 58 * MINUTE)).toEqual(['101 718–720', '102 721–723', 'Lunch 723–753']);
    expect(at(12 * HOUR + 10 * MINUTE)).toEqual(['Lunch 720–750', '101 750–752', '102 753–755']);
    expect(at(12 * HOUR + 30 * MINUTE)).toEqual(['101 750–752', '102 753–755']);
  });

  test('of nobody are empty', () => {
    expect(goTimes(plan([], { starts: 9 * HOUR }))).toMatchObject({ rows: [], from: 9 * HOUR, to: 9 * HOUR });
  });
});

const anyList = fc.array(fc.record({ scratched: fc.boolean(), late: fc.nat(900) }), { maxLength: 40 }).map((each) =>
  entries(each.length, (i) => ({
    ...(each[i]?.scratched ? { scratched: true as const } : {}),
    ...(each[i]?.late ? { late: each[i].late } : {}),
  })),
);
const anyPlan = fc
  .record({ list: anyList, go: fc.integer({ min: 1, max: 600 }), changeover: fc.nat(120), dragEvery: fc.nat(9) })
  .map(({ list, go, changeover, dragEvery }) => plan(list, { go, class: { changeover, dragEvery, drag: 480 } }));

describe('laws of the times', () => {
  test('rows follow one another and never overlap', () => {
    fc.assert(
      fc.property(anyPlan, (of) => {
        const { rows } = goTimes(of);
        rows.slice(1).forEach((row, i) => {
          expect(row.from).toBeGreaterThanOrEqual(rows[i]?.to ?? 0);
        });
      }),
    );
  });

  test('a later start moves every row by as much', () => {
    fc.assert(
      fc.property(anyPlan, fc.nat(36_000), (of, starts) => {
        const [a, b] = [goTimes({ ...of, starts: 0 }), goTimes({ ...of, starts })];
        expect(b.rows.map(({ from, to }) => [from - starts, to - starts])).toEqual(
          a.rows.map(({ from, to }) => [from, to]),
        );
      }),
    );
  });

  test('minutes late at an entry move it and all after it by just that', () => {
    fc.assert(
      fc.property(anyPlan, fc.nat(39), fc.integer({ min: 1, max: 900 }), (of, at, more) => {
        const late = of.list.map((each, i) => (i === at ? { ...each, late: (each.late ?? 0) + more } : each));
        const [a, b] = [goTimes(of), goTimes({ ...of, list: late })];
        const place = a.rows.findIndex((row) => row.kind === 'go' && row.entry.id === of.list[at]?.id);
        const moved = a.rows.map(({ from }, i) => from + (place >= 0 && i >= place ? more : 0));
        expect(b.rows.map(({ from }) => from)).toEqual(moved);
      }),
    );
  });

  test('scratching closes up: the others go as if the entry had never been there', () => {
    fc.assert(
      fc.property(anyPlan, fc.nat(39), (of, at) => {
        const without = goTimes({ ...of, list: of.list.filter((_, i) => i !== at) });
        const list = of.list.map((each, i): Entry => (i === at ? { ...each, scratched: true } : each));
        expect(goTimes({ ...of, list }).rows).toEqual(without.rows);
      }),
    );
  });
});

test.each(STARTERS)('in %s the class takes as long as its clock says', (_, course) => {
  const of = survey(course);
  const { from, to, rows } = goTimesOf(of);
  expect(rows.filter(({ kind }) => kind === 'go').length).toBe(of.classClock.entries);
  expect(rows.filter(({ kind }) => kind === 'drag').length).toBe(of.classClock.drags);
  expect(to - from).toBeCloseTo(of.classClock.whole, 6);
});

describe('a course with a list', () => {
  const [, course = DAY] = STARTERS.find(([name]) => name.includes('open')) ?? [];
  const listed = addEntries(
    course,
    entries(7).map(({ id: _, ...rest }) => rest),
  );

  test('has the clock of those who ride', () => {
    expect(survey(listed).classClock.entries).toBe(7);
    const scratched = changeEntry(listed, 'entry-3', { scratched: true });
    const { classClock } = survey(scratched);
    expect(classClock.entries).toBe(6);
    const { from, to } = goTimesOf(survey(scratched));
    expect(to - from).toBeCloseTo(classClock.whole, 6);
  });

  test('counts from the first go until a start is typed', () => {
    const open = goTimesOf(survey(listed));
    expect(open.counts).toBe('from-start');
    expect(goTimeWords(open, 90)).toBe('+ 1 min 30 s');
    const times = goTimesOf(survey(startClass(listed, 9 * HOUR)));
    expect(goTimeWords(times, times.from)).toBe('9:00 am');
  });
});

test('the class of the day is the one of the same title, and its set start is the start', () => {
  const current = DAY.day?.classes.find(({ startsAt }) => startsAt !== undefined);
  expect(current).toBeDefined();
  const shown: Course = {
    ...DAY,
    current: current?.layout ?? '',
    class: { ...DAY.class, title: current?.title ?? '' },
  };
  expect(dayClassOf(shown)).toBe(current);
  expect(dayClassOf({ ...shown, current: DAY.layouts[0].id })).toBe(current);
  expect(dayClassOf({ ...shown, class: { ...shown.class, title: 'Another' } })).toBeUndefined();
  expect(startOf(shown)).toBe(current?.startsAt);
  expect(startOf(startClass(shown, 5 * HOUR))).toBe(5 * HOUR);
});

describe('a day', () => {
  const [first, ...others] = DAY.day?.classes ?? [];
  if (first === undefined) throw new Error('the day has no class');
  const shown: Course = { ...DAY, current: first.layout, class: { ...DAY.class, title: first.title } };
  const listed = addEntries(
    shown,
    entries(5).map(({ id: _, ...rest }) => rest),
  );
  const riding = (course: Course) => dayProblem(course, () => 0)?.tasks.map((task) => task.riding) ?? [];

  test('counts the list of the course for the class that is the course’s own, and for no other', () => {
    expect(dayEntryCount(listed, first)).toBe(5);
    expect(others.map((each) => dayEntryCount(listed, each))).toEqual(others.map(({ entries: count }) => count));
    const [before, after] = [riding(shown), riding(listed)];
    expect(after[0]).toBeCloseTo((Number(before[0]) * 5) / first.entries, 6);
    expect(after.slice(1)).toEqual(before.slice(1));
  });

  test('counts the list of any other class for that class, from its own start', () => {
    const [, second] = DAY.day?.classes ?? [];
    if (second === undefined) throw new Error('the day has one class');
    const given = entries(3).map(({ id: _, ...rest }) => rest);
    const course = startClass(addEntries(listed, given, second.id), 13 * HOUR, second.id);
    const of = course.day?.classes.find(({ id }) => id === second.id) ?? second;
    expect(dayEntryCount(course, of)).toBe(3);
    expect(course.class).toBe(listed.class);
    const times = goTimesOf(layoutSurvey(course, of.layout, classEntryOf(of, course)), course.day);
    expect(times.rows.filter(({ kind }) => kind === 'go').length).toBe(3);
    expect(times.from).toBe(13 * HOUR);
    expect(() => addEntries(course, given, 'no-such')).toThrow('the day has no class no-such');
  });
});
