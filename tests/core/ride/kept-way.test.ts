import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { pathEnd, pathLength } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { approach, sameDetour } from '../../../src/core/ride/approach.ts';
import { tightestRadius } from '../../../src/core/ride/connection.ts';
import { isSameSide } from '../../../src/core/ride/same-side.ts';
import { dragSurvey, type Survey, survey } from '../../../src/core/survey.ts';
import { STARTERS } from './courses.ts';
import { course, leg, obstacle, pole, run } from './hand-laid.ts';
import { smallArena } from './small-arenas.ts';

/** The course with one obstacle further along x and y, metres. */
function shifted(of: Course, id: string, [x, y]: readonly [number, number]): Course {
  return replaceLayout(of, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each) =>
      each.id === id ? { ...each, pose: { ...each.pose, x: each.pose.x + x, y: each.pose.y + y } } : each,
    ),
  }));
}

/** The surveys of a drag in inches, in the order of its steps. */
function dragged(of: Course, id: string, by: readonly (readonly [number, number])[]): Survey[] {
  const surveys = [survey(of)];
  let now = of;
  for (const step of by) {
    now = shifted(now, id, step);
    surveys.push(dragSurvey(now, surveys.at(-1) as Survey));
  }
  return surveys;
}

/** A pole lies across the straight ride from number 1 to number 2, 8 in below its middle: it may be passed above or below. */
const DIVIDED = course(
  [
    run('a', pose(12, 15), { poles: 1 }),
    run('b', pose(36, 15), { poles: 1 }),
    obstacle('across', pose(24, 15 - (8 * FOOT) / 12, Math.PI / 2), [pole('only', pose(0, 0))], []),
  ],
  { start: pose(4, 15), legs: [leg('a'), leg('b')] },
);

function inches(count: number, x: number, y: number): [number, number][] {
  return Array<[number, number]>(count).fill([(x * FOOT) / 12, (y * FOOT) / 12]);
}

/** Whether the way to number 2 passes above the pole. */
function isAbove({ line }: Survey): boolean {
  const path = line.ways[1]?.kept.found.path ?? [];
  return path.some(({ start }) => start.y > 15.5);
}

describe('during a drag', () => {
  test('a way keeps its side to and fro across the middle, and the best one is taken at rest', () => {
    const to = dragged(DIVIDED, 'across', [...inches(16, 0, 1), ...inches(16, 0, -1), ...inches(16, 0, 1)]);
    expect(to.map(isAbove)).toEqual(to.map(() => true));
    const last = to.at(-1) as Survey;
    expect(isAbove(survey(structuredClone(last.course)))).toBe(false);
  });

  test('a side that has become much longer is left, once', () => {
    const sides = dragged(DIVIDED, 'across', inches(240, 0, 1)).map(isAbove);
    const changes = sides.filter((side, i) => i > 0 && side !== sides[i - 1]);
    expect(changes).toEqual([false]);
  });
  test.each(STARTERS.slice(0, 4))('every way of %s joins its ends, and is no tighter than the gait allows', (_, of) => {
    const { obstacles } = currentLayout(of);
    for (const { id } of obstacles.slice(0, 3)) {
      for (const { line } of dragged(of, id, Array<[number, number]>(24).fill([FOOT / 4, FOOT / 6]))) {
        for (const { kept } of line.ways) {
          const { path } = kept.found;
          expect(distance(pathEnd(path), kept.query.to)).toBeLessThan(1e-6);
          expect(tightestRadius(path)).toBeGreaterThan(0.5);
        }
      }
    }
  });
});

describe('a detour laid anew', () => {
  const arena = { title: 'Small', entrance: { wall: 'west', at: 1, width: 1 } as const };
  const found = Array.from({ length: 120 }, (_, i) => {
    const { small, obstacles, begin, finish } = smallArena(i + 1);
    const { length, width } = small;
    const context = {
      ...{ arena: { ...arena, length, width }, obstacles, horse: STOCK_HORSE },
      ...{ fromEnd: undefined, toEnd: undefined },
    };
    const ends = { straightAfter: i % 2 === 0, straightBefore: i % 3 === 0, bends: [] };
    const query = { from: begin, to: finish, gait: 'jog' as const, horse: STOCK_HORSE, ...ends };
    return { query, context, way: approach(query, context) };
  });

  test('is the same way while nothing has moved', () => {
    const detours = found.flatMap(({ query, context, way }) => {
      if (way.detour === undefined || way.blocked !== undefined) return [];
      const again = sameDetour(query, context, way.detour);
      expect(again).toBeDefined();
      expect(again?.cost).toBeLessThan(way.cost + 0.05);
      expect(isSameSide(again?.path ?? [], way.path, { obstacles: context.obstacles, except: [] })).toBe(true);
      expect(pathLength(again?.path ?? [])).toBeCloseTo(pathLength(way.path), 0);
      return [way];
    });
    expect(detours.length).toBeGreaterThan(20);
  });
});
