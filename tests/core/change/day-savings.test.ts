import { describe, expect, test } from 'vitest';
import { bestOrder, givenOrder } from '../../../src/core/change/day-order.ts';
import { dayProblem, type LayoutChange } from '../../../src/core/change/day-problem.ts';
import { daySavings } from '../../../src/core/change/day-savings.ts';
import { crewChange } from '../../../src/core/change/layout-change-over.ts';
import { layoutSurvey } from '../../../src/core/change/layout-survey.ts';
import { sharedLayouts } from '../../../src/core/change/shared-layouts.ts';
import { findingsOf } from '../../../src/core/checks/checks.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { addBreak, addClass, changeClass, changeDay } from '../../../src/core/course/edit-day.ts';
import { removeLeg } from '../../../src/core/course/edit-ride.ts';
import { branchLayout, chooseLayout } from '../../../src/core/course/layouts.ts';
import { survey } from '../../../src/core/survey.ts';
import { DAY } from './larkhollow-day.ts';

const MINUTE = 60;
const TEN: LayoutChange = () => 10 * MINUTE;

function problemOf(course: Course, change: LayoutChange = TEN) {
  const problem = dayProblem(course, change);
  if (problem === undefined) throw new Error('the course has no day');
  return problem;
}

describe('a day as times', () => {
  test('has each class as long as its clock says, with its drags inside', () => {
    const classes = addClass(changeClass(DAY, 'open', { entries: 60, changeover: 20, dragEvery: 25, drag: 300 }), {
      layout: 'novice',
      title: 'Evening',
      entries: 0,
    });
    const { tasks } = problemOf(classes);
    const open = tasks.find(({ id }) => id === 'open');
    const go = layoutSurvey(DAY, 'open').line.clock.go;
    expect(open?.seconds).toBeCloseTo(60 * go + 59 * 20 + 2 * 300, 6);
    expect(open?.riding).toBeCloseTo(60 * go, 6);
    // 25 goes with 24 pauses between them; then the next 25 with the pause before each.
    expect(open?.drags.map(({ from }) => from)).toEqual([
      expect.closeTo(25 * go + 24 * 20, 6),
      expect.closeTo(50 * go + 49 * 20 + 300, 6),
    ]);
    expect(tasks.find(({ id }) => id === 'class-1')?.seconds).toBe(0);
  });

  test('asks for each change-over once, and for none where the layout lies already', () => {
    const asked: string[] = [];
    const problem = problemOf(DAY, (from, to) => {
      asked.push(`${from?.id ?? '-'} ${to?.id ?? '-'}`);
      return 60;
    });
    bestOrder(problem);
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked.every((pair) => new Set(pair.split(' ')).size === 2)).toBe(true);
  });
});

describe('what a day takes and what would save time', () => {
  const savings = daySavings(DAY, { crew: crewChange(DAY), more: { people: 4, change: crewChange(DAY, 4) } });
  if (savings === undefined) throw new Error('the starter has a day');

  test('is all told in its parts', () => {
    const sum = Object.values(savings.parts).reduce((all, part) => all + part, 0);
    expect(sum).toBeCloseTo(savings.total, 6);
    expect(Object.values(savings.parts).every((part) => part >= -1e-6)).toBe(true);
    expect(savings.parts.riding).toBeGreaterThan(3600);
  });

  test('counts a break only where nothing is changed over', () => {
    const two = changeDay(addBreak(DAY, { from: 0, length: 600 }), { starts: 3600 });
    const plain = daySavings(two, { crew: TEN });
    const without = daySavings(changeDay(DAY, { starts: 3600 }), { crew: TEN });
    // Ten minutes of break while ten minutes of setting out go on.
    expect(plain?.parts.breaks).toBeCloseTo(without?.parts.breaks ?? -1, 6);
  });

  test('proposes another order that keeps what is fixed, by the time that it saves', () => {
    const [order] = savings.savings;
    expect(order?.kind).toBe('order');
    expect(savings.best.proven).toBe(true);
    expect(savings.best.cost.broken).toBe(0);
    expect(savings.given.cost.broken).toBeGreaterThan(0);
    const after = order?.edit?.(DAY);
    const problem = dayProblem(after ?? DAY, crewChange(DAY));
    expect(problem && givenOrder(problem).cost).toEqual(savings.best.cost);
    expect(order?.saves).toBe(savings.given.cost.finish - savings.best.cost.finish);
  });

  test('proposes only what saves a minute, and each edit does what it says', () => {
    expect(savings.savings.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['order', 'crew', 'shared', 'obstacle', 'pauses']),
    );
    for (const { kind, saves, edit } of savings.savings.slice(1)) {
      expect(saves).toBeGreaterThanOrEqual(60);
      if (edit === undefined) {
        expect(kind).toBe('crew');
        continue;
      }
      const after = edit(DAY);
      expect(after.current).toBe(DAY.current);
      expect(savings.best.cost.finish - bestOrder(problemOf(after, crewChange(after))).cost.finish).toBeCloseTo(
        saves,
        6,
      );
    }
  });

  test('is not known of a course without a day', () => {
    const { day: _, ...rest } = DAY;
    expect(daySavings(rest, { crew: TEN })).toBeUndefined();
  });
});

describe('layouts that serve two classes', () => {
  const found = sharedLayouts(DAY);

  test('have nothing that must be mended and nothing above the level of the class', () => {
    expect(found.length).toBeGreaterThan(3);
    for (const shared of found) {
      const after = shared.edit(DAY);
      const rides = after.day?.classes.find(({ id }) => id === shared.class);
      expect(rides?.layout === shared.layout).toBe(shared.how === 'as-is');
      const own = DAY.day?.classes.find(({ id }) => id === shared.class);
      const study = survey({
        ...chooseLayout(after, rides?.layout ?? ''),
        class: { ...DAY.class, level: own?.level ?? 'open', entries: own?.entries ?? 0 },
      });
      const against = findingsOf(study).filter(({ weight, check }) => weight === 'must' || check === 'level');
      expect(against, shared.says).toEqual([]);
      expect(shared.difficulty.shared).toBeGreaterThanOrEqual(0.75 * shared.difficulty.own);
    }
  });

  test('are ridden as they are, without one obstacle, or with one added', () => {
    const out = found.find(({ how }) => how === 'left-out');
    expect(out?.says).toContain(' without ');
    const branch = out?.edit(DAY);
    expect(branch?.layouts).toHaveLength(DAY.layouts.length + 1);
    const from = DAY.layouts.find(({ id }) => id === out?.layout);
    const to = branch?.layouts.find(({ id }) => DAY.layouts.every((each) => each.id !== id));
    expect(to?.title).toMatch(/ for /);
    expect(to?.obstacles).toBe(from?.obstacles);
    expect(to?.ride.legs).toHaveLength((from?.ride.legs.length ?? 0) - 1);
    expect(found.some(({ how }) => how === 'as-is')).toBe(true);
  });

  test('may need an obstacle of the class’s own: the gate that its book demands', () => {
    // The same layout twice, one of them without its gate on the ground and in the go.
    const copy = branchLayout(DAY, { of: 'novice', title: 'Without a gate' });
    const gate = currentLayout(copy).obstacles.find(({ kind }) => kind === 'gate');
    const leg = currentLayout(copy).ride.legs.find(({ obstacle }) => obstacle === gate?.id);
    const bare = removeLeg(copy, leg?.id ?? '');
    const layouts = bare.layouts.map((each) =>
      each.id === bare.current ? { ...each, obstacles: each.obstacles.filter(({ id }) => id !== gate?.id) } : each,
    ) as unknown as Course['layouts'];
    // A book that demands a gate, and only what it demands of the rest.
    const house = { 'obstacles.count': { least: 4, reason: 'a short evening' } };
    const strict = { ...bare, layouts, rulebook: { id: 'ewu', house } };
    const day = { starts: 0, breaks: [], classes: [] };
    const two = addClass(addClass({ ...strict, day }, { layout: 'novice', level: 'novice', entries: 5 }), {
      layout: bare.current,
      level: 'novice',
      entries: 5,
    });
    const shared = sharedLayouts(two).filter(({ class: of }) => of === 'class-1');
    expect(shared.map(({ how, obstacle }) => [how, obstacle?.kind])).toEqual([['added', 'gate']]);
    const after = shared[0]?.edit(two);
    const branch = after?.layouts.find(({ id }) => id === after.day?.classes[0]?.layout);
    expect(branch?.obstacles.filter(({ kind }) => kind === 'gate')).toHaveLength(1);
    expect(branch?.ride.legs.at(-1)?.obstacle).toBe(branch?.obstacles.find(({ kind }) => kind === 'gate')?.id);
    expect(two.layouts.map(({ id }) => id)).not.toContain(branch?.id);
  });
});
