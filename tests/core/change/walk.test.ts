import { describe, expect, test } from 'vitest';
import { bestWalk, searched } from '../../../src/core/change/best-walk.ts';
import {
  canCarry,
  divisions,
  type Routes,
  schedule,
  type TeamSize,
  type WalkProblem,
} from '../../../src/core/change/walk.ts';
import { exactWalk } from '../../../src/core/change/walk-exact.ts';
import { bestPlace, emptyRoutes, objective, put, withRoutes } from '../../../src/core/change/walk-routes.ts';
import { searchedWalk } from '../../../src/core/change/walk-search.ts';
import { bruteSeconds, randomWalk } from './walk-oracle.ts';

/** Every task once, picked up before it is laid, by one team that can hold it, no pass before the one ahead of it. */
function expectWalked(problem: WalkProblem, teams: readonly TeamSize[], routes: Routes): void {
  const events = routes.flat();
  expect([...events].sort((a, b) => a - b)).toEqual(Array.from({ length: 2 * problem.count }, (_, event) => event));
  for (const [team, route] of routes.entries()) {
    let held = 0;
    let pass = 0;
    for (const [i, event] of route.entries()) {
      const task = event >> 1;
      if (event % 2 === 1) expect(route.slice(0, i)).toContain(event - 1);
      held += (event % 2 === 0 ? 1 : -1) * (problem.bulk[task] ?? 0);
      expect(held).toBeLessThanOrEqual((teams[team] ?? 0) * problem.hands);
      expect(problem.pass[task]).toBeGreaterThanOrEqual(pass);
      pass = problem.pass[task] ?? 0;
    }
  }
}

test('a crew is divided into pairs and single people in every way', () => {
  expect([1, 2, 3, 4].map(divisions)).toEqual([
    [[1]],
    [[2], [1, 1]],
    [
      [2, 1],
      [1, 1, 1],
    ],
    [
      [2, 2],
      [2, 1, 1],
      [1, 1, 1, 1],
    ],
  ]);
});

test('one pole that a pair carries 3-4-5 metres from the truck takes its times and the ways', () => {
  const metres = Float64Array.from([0, 10, 5, 10, 0, 8, 5, 8, 0]);
  const problem: WalkProblem = {
    ...{ count: 1, metres, empty: metres.map((each) => each / 1.25), loaded: metres, passes: 1, hands: 4 },
    ...{
      work: { 1: Float64Array.of(5, 70), 2: Float64Array.of(5, 45) },
      pass: Int32Array.of(0),
      bulk: Int32Array.of(8),
    },
  };
  const { teams, schedule: when } = bestWalk(problem, 2);
  expect(teams).toEqual([2]);
  expect(when).toEqual({ begins: [4], ends: [64], teamOf: [0], walked: [15], done: [64], seconds: 64 });
  expect(canCarry(problem, [1, 1])).toBe(false);
});

describe('a walk of few tasks', () => {
  const cases = Array.from({ length: 24 }, (_, seed) => {
    const small = seed % 3 === 0 ? 0.4 : 0;
    return {
      seed,
      people: 1 + (seed % 4),
      problem: randomWalk(seed, { count: 6, small, later: seed % 2 === 0 ? 0.4 : 0 }),
    };
  });

  test.each(cases)('takes the least time of all orders: seed $seed, crew of $people', ({ problem, people }) => {
    for (const teams of divisions(people)) {
      if (!canCarry(problem, teams)) {
        expect(bruteSeconds(problem, teams)).toBe(Number.POSITIVE_INFINITY);
        continue;
      }
      const routes = exactWalk(problem, teams);
      expectWalked(problem, teams, routes);
      expect(schedule(problem, teams, routes).seconds).toBeCloseTo(bruteSeconds(problem, teams), 6);
    }
  });

  test('of eight does so too: nothing takes less, for a crew of two, three and four', () => {
    for (const people of [2, 3, 4]) {
      const problem = randomWalk(50 + people, { count: 8, small: 0.25, later: 0.3 });
      const { teams, routes, schedule: when } = bestWalk(problem, people);
      expectWalked(problem, teams, routes);
      const limit = when.seconds + 1e-6;
      const possible = divisions(people).filter((each) => canCarry(problem, each));
      const least = Math.min(...possible.map((each) => bruteSeconds(problem, each, limit)));
      expect(when.seconds).toBeCloseTo(least, 6);
    }
  });

  test('never takes longer with one person more', () => {
    for (let seed = 0; seed < 8; seed += 1) {
      const problem = randomWalk(seed + 70, { count: 7, small: 0.3, later: 0.2 });
      const times = [2, 3, 4].map((people) => bestWalk(problem, people).schedule.seconds);
      expect(times[1]).toBeLessThanOrEqual((times[0] as number) + 1e-9);
      expect(times[2]).toBeLessThanOrEqual((times[1] as number) + 1e-9);
    }
  });

  test('of none takes no time', () => {
    const problem = { ...randomWalk(1, { count: 0, small: 0, later: 0 }), passes: 0 };
    expect(bestWalk(problem, 2).schedule).toMatchObject({ begins: [], seconds: 0 });
  });
});

describe('a walk of many tasks', () => {
  const cases = [
    { count: 15, people: 2 },
    { count: 15, people: 4 },
    { count: 30, people: 4 },
    { count: 60, people: 2 },
  ];

  test.each(cases)('$count by $people people is within 5 % of a search 20 times as long', ({ count, people }) => {
    const problem = randomWalk(count + people, { count, small: 0.2, later: 0.2 });
    const { teams, routes, schedule: when } = bestWalk(problem, people);
    expectWalked(problem, teams, routes);
    const long = searched(problem, people, 20);
    expect(when.seconds).toBeLessThanOrEqual(1.05 * long.schedule.seconds);
  });

  test('is the same each time', () => {
    const problem = randomWalk(5, { count: 20, small: 0.3, later: 0.3 });
    expect(bestWalk(problem, 4)).toEqual(bestWalk(problem, 4));
  });

  test('comes near the least time where that is known', () => {
    for (let seed = 0; seed < 10; seed += 1) {
      const problem = randomWalk(seed + 90, { count: 8, small: 0.3, later: 0.3 });
      const least = bestWalk(problem, 4).schedule.seconds;
      const found = searched(problem, 4).schedule.seconds;
      expect(found).toBeGreaterThanOrEqual(least - 1e-6);
      expect(found).toBeLessThanOrEqual(1.02 * least);
    }
  });
});

describe('the place of one more task', () => {
  /** Every place that a task can have in any route, by writing the route out. */
  function allCosts(problem: WalkProblem, teams: readonly TeamSize[], routes: Routes, task: number): number[] {
    return routes.flatMap((route, team) => {
      const found: number[] = [];
      for (let lift = 0; lift <= route.length; lift += 1) {
        for (let lay = lift; lay <= route.length; lay += 1) {
          const made = [
            ...route.slice(0, lift),
            2 * task,
            ...route.slice(lift, lay),
            2 * task + 1,
            ...route.slice(lay),
          ];
          const passes = made.map((event) => problem.pass[event >> 1] ?? 0);
          const inOrder = passes.every((pass, i) => i === 0 || pass >= (passes[i - 1] ?? 0));
          let held = 0;
          const most = Math.max(
            ...made.map((event) => (held += (event % 2 === 0 ? 1 : -1) * (problem.bulk[event >> 1] ?? 0))),
          );
          if (!inOrder || most > (teams[team] ?? 0) * problem.hands) continue;
          found.push(objective(withRoutes(problem, teams, routes.with(team, made))));
        }
      }
      return found;
    });
  }

  test('is the best of all places written out, and costs what it says', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const teams: readonly TeamSize[] = seed % 2 === 0 ? [2, 1] : [2];
      const problem = randomWalk(seed + 200, { count: 9, small: 0.6, later: 0.3 });
      const { routes } = searchedWalk(problem, teams, { rounds: 3 });
      const task = seed % 9;
      const without = routes.map((route) => route.filter((event) => event >> 1 !== task));
      const working = withRoutes(problem, teams, without);
      const before = objective(working);
      const place = bestPlace(working, task, () => false);
      if (place === undefined) throw new Error('a pair can hold everything');
      put(working, task, place);
      expect(objective(working)).toBeCloseTo(Math.min(...allCosts(problem, teams, without, task)), 6);
      expect(objective(working) - before).toBeCloseTo(place.cost, 6);
    }
  });

  test('is none where no team can hold it', () => {
    const problem = randomWalk(1, { count: 3, small: 0, later: 0 });
    const long = problem.bulk.indexOf(8);
    expect(bestPlace(emptyRoutes(problem, [1, 1]), long, () => false)).toBeUndefined();
  });
});
