import { describe, expect, test } from 'vitest';
import type { ChangeOver, Crew, Load } from '../../../src/core/change/change-over.ts';
import { layoutChangeOver } from '../../../src/core/change/layout-change-over.ts';
import { loadsOf } from '../../../src/core/change/loads.ts';
import { changeOver } from '../../../src/core/change/plan-change-over.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { setCrew } from '../../../src/core/course/edit-crew.ts';
import { branchLayout } from '../../../src/core/course/layouts.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { STARTERS } from '../ride/courses.ts';
import { ground, nextThings, randomThings, type Thing } from './grounds.ts';

const CREW: Crew = { people: 2, truckAt: { x: 0, y: 15 } };

function plan(from: readonly Thing[], to: readonly Thing[], crew = CREW): ChangeOver {
  return changeOver(ground(from), ground(to), crew);
}

const keys = (loads: readonly Load[]) => loads.map(({ key, type }) => `${key} ${type}`).sort();

/** Each place is filled once, by a thing of its type; each thing leaves its place once or stays. */
function expectSound(from: readonly Thing[], to: readonly Thing[], crew: Crew): ChangeOver {
  const made = plan(from, to, crew);
  const [lying, wanted] = [loadsOf(ground(from), crew.people), loadsOf(ground(to), crew.people)];
  const left = made.carries.flatMap((each) => (each.from.kind === 'ground' ? [each.from.load] : []));
  const laid = made.carries.flatMap((each) => (each.to.kind === 'ground' ? [each.to.load] : []));
  expect(keys([...left, ...made.stays.map((each) => each.from)])).toEqual(keys(lying));
  expect(keys([...laid, ...made.stays.map((each) => each.to)])).toEqual(keys(wanted));
  for (const { load, from: a, to: b } of made.carries) {
    for (const stop of [a, b]) if (stop.kind === 'ground') expect(stop.load.type).toBe(load.type);
  }
  expect(made.leastCost).toBeCloseTo(made.cost, 6);
  expect(made.carries.map(({ number }) => number)).toEqual(made.carries.map((_, i) => i + 1));
  const ends = Math.max(0, ...made.carries.map((each) => each.ends));
  expect(made.seconds).toBeCloseTo(ends, 9);
  for (const [i, carry] of made.carries.entries()) {
    expect(carry.ends).toBeGreaterThan(carry.begins);
    expect(made.teams[carry.team]?.people ?? 0).toBeGreaterThanOrEqual(carry.load.held.length);
    // A pass begins when the one before it is done.
    for (const other of made.carries.slice(0, i)) {
      expect(other.pass).toBeLessThanOrEqual(carry.pass);
      if (other.pass < carry.pass) expect(other.ends).toBeLessThanOrEqual(carry.begins);
    }
  }
  return made;
}

describe('a change-over', () => {
  test('of nothing to nothing is nothing', () => {
    expect(plan([], [])).toMatchObject({ carries: [], stays: [], passes: 0, metres: 0, cost: 0, seconds: 0 });
  });

  test('of a layout to itself leaves everything', () => {
    const things = randomThings(1, 25);
    const made = plan(things, things);
    expect([made.carries.length, made.seconds]).toEqual([0, 0]);
    expect(made.stays.length).toBe(loadsOf(ground(things), 2).length);
  });

  test('fills every place once and takes every thing away once, whoever carries', () => {
    for (let seed = 0; seed < 12; seed += 1) {
      const from = randomThings(seed, 14);
      expectSound(from, nextThings(from, seed), { ...CREW, people: 1 + (seed % 4) });
    }
  });

  test('is as long carried back as it is carried there', () => {
    const [from, to] = [randomThings(5, 20), nextThings(randomThings(5, 20), 5)];
    expect(plan(from, to).cost).toBeCloseTo(plan(to, from).cost, 6);
  });

  test('costs the same on ground that is shifted, turned or mirrored', () => {
    const from = randomThings(6, 20);
    const to = nextThings(from, 6);
    const cost = plan(from, to).cost;
    const frames = [
      (x: number, y: number) => ({ x: x + 7, y: y - 3, turn: 0, side: 1 }),
      (x: number, y: number) => ({ x: -y, y: x, turn: Math.PI / 2, side: 1 }),
    ];
    for (const frame of frames) {
      const placed = (things: readonly Thing[]) =>
        things.map((each) => {
          const { x, y, turn } = frame(each.pose.x, each.pose.y);
          return { ...each, pose: { x, y, angle: each.pose.angle + turn } };
        });
      const { x, y } = frame(CREW.truckAt.x, CREW.truckAt.y);
      expect(plan(placed(from), placed(to), { ...CREW, truckAt: { x, y } }).cost).toBeCloseTo(cost, 6);
    }
    const mirrored = (things: readonly Thing[]) =>
      things.map((each) => ({ ...each, pose: { x: each.pose.x, y: 30 - each.pose.y, angle: -each.pose.angle } }));
    expect(plan(mirrored(from), mirrored(to)).cost).toBeCloseTo(cost, 6);
  });

  test('brings everything from the truck to an empty arena, and back', () => {
    const things = randomThings(8, 12);
    const [out, back] = [plan([], things), plan(things, [])];
    expect(out.carries.every(({ from, to }) => from.kind === 'truck' && to.kind === 'ground')).toBe(true);
    expect(back.carries.every(({ from, to }) => from.kind === 'ground' && to.kind === 'truck')).toBe(true);
    expect(out.metres).toBeCloseTo(back.metres, 9);
  });

  test('has the time of a hand calculation', () => {
    // Truck to pole 5 m at 1.3 m/s, 5 s to lift, 10 m at 1 m/s, 45 s to lay.
    const pole = (x: number): Thing => ({ sort: 'banded', pose: { x, y: 15, angle: 0 } });
    const made = plan([pole(5)], [pole(15)]);
    expect(made.seconds).toBeCloseTo(5 / 1.3 + 5 + 10 + 45, 9);
    expect(made.teams).toEqual([{ people: 2, walked: 15, done: made.seconds }]);
    expect(made.metres).toBeCloseTo(20, 9);
    expect(made.cost).toBeCloseTo(26, 9);
    expect(made.carries[0]?.begins).toBeCloseTo(5 / 1.3, 9);
  });

  test('one person carries all alone', () => {
    const from = randomThings(9, 10);
    const { teams } = expectSound(from, nextThings(from, 9), { ...CREW, people: 1 });
    expect(teams.map(({ people }) => people)).toEqual([1]);
  });

  test('of two layouts of a course is worked out once for each crew', () => {
    const course = branchLayout(STARTERS[0]?.[1] ?? blankCourse());
    const ends = { from: course.layouts[0].id, to: course.current };
    const two = layoutChangeOver(course, ends);
    const three = layoutChangeOver(setCrew(course, { people: 3 }), ends);
    expect(three).not.toBe(two);
    // By turns, as a day asks, and whatever else of the course is edited.
    expect(layoutChangeOver({ ...course, title: 'Other' }, ends)).toBe(two);
    expect(layoutChangeOver(setCrew(course, { people: 3 }), ends)).toBe(three);
  });

  test('of a starter to each other starter is proven', () => {
    const layouts = STARTERS.map(([, course]) => course.layouts[0].obstacles.map(placedObstacle));
    for (const [i, from] of layouts.entries()) {
      const to = layouts[(i + 1) % layouts.length] ?? from;
      const made = changeOver(from, to, CREW);
      expect(made.leastCost).toBeCloseTo(made.cost, 6);
      expect(made.carries.filter((each) => each.to.kind === 'ground').length).toBe(
        loadsOf(to, 2).length - made.stays.length,
      );
    }
  });
});
