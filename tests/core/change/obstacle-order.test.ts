import { expect, test } from 'vitest';
import { bestWalk } from '../../../src/core/change/best-walk.ts';
import { layoutChangeOver } from '../../../src/core/change/layout-change-over.ts';
import { byObstacle } from '../../../src/core/change/obstacle-order.ts';
import { schedule, type WalkProblem } from '../../../src/core/change/walk.ts';
import { STARTERS } from '../ride/courses.ts';

test.each(STARTERS)(
  'the long things of %s are set out obstacle by obstacle, but for the last round of each team',
  (_, course) => {
    const { carries, teams } = layoutChangeOver(course, { from: null, to: course.current });
    for (const team of teams.keys()) {
      // Small things are taken several at once, for more than one obstacle.
      const long = carries.filter((carry) => carry.team === team && carry.load.held.length === 2);
      const own = long.map(({ load }) => load.obstacle);
      const blocks = own.filter((each, i) => own[i - 1] !== each);
      expect(blocks.length - new Set(blocks).size).toBeLessThanOrEqual(1);
    }
  },
);

/** Four things from a truck at the origin to places on a line; 0 and 2 belong together, and 1 and 3. */
function line(places: readonly number[]): WalkProblem {
  const count = places.length;
  const at = [...places.flatMap((place) => [0, place]), 0];
  const size = at.length;
  const metres = Float64Array.from({ length: size * size }, (_, i) =>
    Math.abs((at[Math.floor(i / size)] ?? 0) - (at[i % size] ?? 0)),
  );
  const work = new Float64Array(size);
  return {
    count,
    metres,
    empty: metres,
    loaded: metres,
    work: { 1: work, 2: work },
    pass: new Int32Array(count),
    passes: 1,
    bulk: new Int32Array(count).fill(1),
    hands: 1,
  };
}

test('it takes no longer, and the last round stays the last', () => {
  const problem = line([1, 2, 3, 9]);
  const best = bestWalk(problem, 1);
  const order = { fromTruck: [true, true, true, true], group: [0, 1, 0, 1] };
  const walk = byObstacle(problem, best, order);
  expect(walk.schedule.seconds).toBeCloseTo(best.schedule.seconds, 9);
  // To 9 m and not back: 2 (1 + 2 + 3) + 9.
  expect(walk.schedule.seconds).toBe(21);
  expect(walk.routes).toEqual([[0, 1, 4, 5, 2, 3, 6, 7]]);
  expect(schedule(problem, walk.teams, walk.routes)).toEqual(walk.schedule);
});
