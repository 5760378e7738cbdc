import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandAsked, findingsOf } from '../../../src/core/checks/checks.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { survey } from '../../../src/core/survey.ts';
import { shiftBounds } from '../../../src/desk/selection/selection.ts';
import {
  type SnapCandidate,
  type SnapContext,
  type SnapSource,
  type SnapSubject,
  snap,
} from '../../../src/desk/snapping/snap.ts';
import { snapContext } from '../../../src/desk/snapping/snap-context.ts';
import { midways, PLACE_SOURCES, TURN_SOURCES } from '../../../src/desk/snapping/snap-sources.ts';
import { threeObstacles } from '../three-obstacles.ts';

/** What the keys of a course may snap to under its rule book. */
function groundOf(course: Course, keys: readonly string[]): SnapContext {
  return snapContext({ survey: survey(course), bandAsked: (limit) => bandAsked(course, limit) }, keys);
}

const GROUND = groundOf(threeObstacles(), ['run-1']);
const EVERY = [...PLACE_SOURCES, ...TURN_SOURCES];
const FOOT = 0.3048;

function box(minX: number, minY: number, size = 2): SnapSubject {
  return {
    bounds: { minX, minY, maxX: minX + size, maxY: minY + size },
    pieces: [],
    shift: { x: 0, y: 0 },
  };
}

const place = fc.record({
  x: fc.double({ min: -5, max: 65, noNaN: true }),
  y: fc.double({ min: -5, max: 35, noNaN: true }),
  size: fc.double({ min: 0.1, max: 10, noNaN: true }),
  angle: fc.double({ min: -7, max: 7, noNaN: true }),
  reach: fc.double({ min: 0, max: 2, noNaN: true }),
});

describe('a snap', () => {
  test('never moves anything farther than the reach', () => {
    fc.assert(
      fc.property(place, ({ x, y, size, angle, reach }) => {
        const end = snap({ ...box(x, y, size), angle }, GROUND, {
          sources: EVERY,
          reach: { ground: reach, angle: reach / 10 },
        });
        expect(Math.hypot(end.x, end.y)).toBeLessThanOrEqual(reach + 1e-8);
        expect(Math.abs(end.angle)).toBeLessThanOrEqual(reach / 10 + 1e-8);
      }),
    );
  });

  test('without sources leaves everything where it is', () => {
    fc.assert(
      fc.property(place, ({ x, y, size, reach }) => {
        const end = snap(box(x, y, size), GROUND, { sources: [], reach: { ground: reach, angle: 1 } });
        expect(end).toEqual({ x: 0, y: 0, angle: 0, guides: [] });
      }),
    );
  });

  test('once taken is taken: snapping again moves nothing that could be nearer', () => {
    fc.assert(
      fc.property(place, ({ x, y, size, reach }) => {
        const options = { sources: PLACE_SOURCES, reach: { ground: reach, angle: 0 } };
        const first = snap(box(x, y, size), GROUND, options);
        const again = snap(box(x + first.x, y + first.y, size), GROUND, options);
        if (first.x !== 0) expect(Math.abs(again.x)).toBeLessThan(1e-6);
        if (first.y !== 0) expect(Math.abs(again.y)).toBeLessThan(1e-6);
      }),
    );
  });

  const pull = (axis: SnapCandidate['axis'], by: number, says: string): SnapSource => {
    return () => [{ axis, by, guide: () => ({ says, marks: [] }) }];
  };
  const REACH = { ground: 0.5, angle: 0.1 };

  test('takes the nearest offer of each axis', () => {
    const sources = [pull('x', 0.4, 'far'), pull('x', -0.2, 'near'), pull('y', 0.1, 'up'), pull('angle', 0.3, 'no')];
    const end = snap(box(0, 0), GROUND, { sources, reach: REACH });
    expect([end.x, end.y, end.angle]).toEqual([-0.2, 0.1, 0]);
    expect(end.guides.map((guide) => guide.says)).toEqual(['near', 'up']);
  });

  test('gives a draw to the earlier source', () => {
    const sources = [pull('x', 0.2, 'first'), pull('x', -0.2, 'second')];
    expect(snap(box(0, 0), GROUND, { sources, reach: REACH }).guides.map((guide) => guide.says)).toEqual(['first']);
  });

  test('drops the farther axis when both together are out of reach', () => {
    const sources = [pull('x', 0.45, 'x'), pull('y', 0.4, 'y')];
    const end = snap(box(0, 0), GROUND, { sources, reach: REACH });
    expect([end.x, end.y]).toEqual([0, 0.4]);
  });

  test('is not taken where it brings what is ridden nearer to a wall than is asked for', () => {
    const sources = [pull('x', -0.4, 'nearer')];
    const clear = { ...GROUND, clear: 2 * FOOT };
    expect(snap(box(0.8, 12), clear, { sources, reach: REACH }).x).toBe(0);
    expect(snap(box(0.8, 12), { ...clear, isRidden: false }, { sources, reach: REACH }).x).toBe(-0.4);
    expect(snap(box(1.2, 12), clear, { sources, reach: REACH }).x).toBe(-0.4);
  });

  test('is not taken where it brings a piece over another', () => {
    const [other] = GROUND.others;
    const pole = survey(threeObstacles()).pieces.find((each) => each.obstacle === 'run-1');
    if (other === undefined || pole === undefined) throw new Error('the course has no run and no neighbour');
    const [first] = other.pieces;
    if (first === undefined) throw new Error('the neighbour has no piece');
    // 0.3 m left of the neighbour's first piece, and level with it.
    const shift = {
      x: first.bounds.minX - pole.bounds.maxX - 0.3,
      y: (first.bounds.minY + first.bounds.maxY - pole.bounds.minY - pole.bounds.maxY) / 2,
    };
    const moving = { bounds: shiftBounds(pole.bounds, shift.x, shift.y), pieces: [pole], shift };
    expect(snap(moving, GROUND, { sources: [pull('x', 0.4, 'over it')], reach: REACH }).x).toBe(0);
    expect(snap(moving, GROUND, { sources: [pull('x', 0.2, 'up to it')], reach: REACH }).x).toBe(0.2);
  });
});

describe('a snap on a course', () => {
  const BAD: readonly string[] = ['outside', 'overlap', 'entrance-clear'];
  const faults = (course: Course) =>
    new Set(findingsOf(survey(course)).flatMap(({ id, check }) => (BAD.includes(check) ? [id] : [])));

  test('makes no finding of walls and of what lies on what that was not there without it', () => {
    const start = threeObstacles();
    const { obstacles } = survey(start);
    const { length, width } = start.arena;
    const EDGES = {
      x: [0, 2 * FOOT, length, length - 2 * FOOT, ...obstacles.flatMap(({ bounds }) => [bounds.minX, bounds.maxX])],
      y: [0, 2 * FOOT, width, width - 2 * FOOT, ...obstacles.flatMap(({ bounds }) => [bounds.minY, bounds.maxY])],
    };
    let [taken, walls] = [0, 0];
    fc.assert(
      fc.property(
        fc.nat(obstacles.length - 1),
        fc.nat(EDGES.x.length - 1),
        fc.nat(EDGES.y.length - 1),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constantFrom('min' as const, 'max' as const),
        (which, column, row, right, up, side) => {
          const placed = obstacles[which];
          if (placed === undefined) return;
          // An edge near a wall, its clear distance, or an edge of another obstacle: there snaps are taken.
          const [reach, { bounds }] = [0.9, placed];
          const [wide, high] = side === 'min' ? [0, 0] : [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
          const x = (EDGES.x[column] ?? 0) + right * reach - wide;
          const y = (EDGES.y[row] ?? 0) + up * reach - high;
          const key = placed.obstacle.id;
          const shift = { x: x - placed.bounds.minX, y: y - placed.bounds.minY };
          const moving = { bounds: shiftBounds(placed.bounds, shift.x, shift.y), pieces: placed.pieces, shift };
          const end = snap(moving, groundOf(start, [key]), {
            sources: PLACE_SOURCES,
            reach: { ground: reach, angle: 0 },
          });
          if (end.guides.length === 0) return;
          taken += 1;
          const asked = faults(shiftByKeys(start, [key], shift.x, shift.y));
          const snapped = faults(shiftByKeys(start, [key], shift.x + end.x, shift.y + end.y));
          expect([...snapped].filter((id) => !asked.has(id))).toEqual([]);
          // A snap to a wall itself leaves no finding about it, whatever was asked.
          const at = shiftBounds(moving.bounds, end.x, end.y);
          const rooms = { west: at.minX, south: at.minY, east: length - at.maxX, north: width - at.maxY };
          for (const guide of end.guides) {
            if (guide.snap?.to !== 'wall' || !guide.says.endsWith('wall')) continue;
            walls += 1;
            expect(rooms[guide.snap.wall], guide.says).toBeGreaterThan(2 * FOOT - 1e-6);
          }
        },
      ),
      { numRuns: 150 },
    );
    expect(taken).toBeGreaterThan(10);
    expect(walls).toBeGreaterThan(5);
  });
});

describe('what draws', () => {
  const near = { ground: 0.2, angle: 0.05 };
  const says = (moving: SnapSubject) =>
    snap(moving, { ...GROUND, others: [] }, { sources: EVERY, reach: near }).guides.map((guide) => guide.says);

  test('a wall, at contact, where nothing is ridden or no clear distance is asked for', () => {
    const seen = (moving: SnapSubject, ground: Partial<SnapContext>) =>
      snap(moving, { ...GROUND, others: [], ...ground }, { sources: EVERY, reach: near }).guides.map(
        ({ says }) => says,
      );
    expect(seen(box(0.1, 12), { isRidden: false })).toEqual(['Against the west wall']);
    expect(seen(box(30, 30.48 - 2.1), { clear: null })).toContain('Against the north wall');
  });

  test('no wall at contact where what is ridden has to be clear of it', () => {
    expect(says(box(0.1, 12))).toEqual([]);
  });

  test('the clear distance from a wall that the rule book in force asks for: 2 ft', () => {
    expect(GROUND.clear).toBeCloseTo(2 * FOOT, 9);
    const end = snap(box(2 * FOOT + 0.1, 12), GROUND, { sources: EVERY, reach: near });
    expect(end.x).toBeCloseTo(-0.1, 9);
    expect(end.guides[0]?.says).toBe("At the clear distance of 2' from the west wall");
    expect(end.guides[0]?.marks.some((mark) => mark.kind === 'line' && mark.ink === 'measure')).toBe(true);
  });

  test("the arena's centre lines", () => {
    expect(says(box(30.48 - 1.1, 12))).toEqual(["On the arena's cross centre line"]);
    expect(says(box(20, 15.24 - 0.9))).toEqual(["On the arena's long centre line"]);
  });

  test("a neighbour's middle and edges", () => {
    const fan = GROUND.others.find((each) => each.obstacle.id === 'fan-1');
    if (fan === undefined) throw new Error('no fan');
    const end = snap(box(fan.bounds.minX + 0.05, 3), { ...GROUND, others: [fan] }, { sources: EVERY, reach: near });
    expect(end.x).toBeCloseTo(-0.05, 9);
    expect(end.guides[0]?.says).toBe('In line with the edge of the fan (obstacle 2)');
  });

  test('a pole in one line with another pole', () => {
    const found = survey(threeObstacles());
    const mine = found.pieces.filter((piece) => piece.key === 'run-1/pole-1');
    const [pole] = mine;
    if (pole === undefined) throw new Error('no pole');
    const other = { ...pole, pose: { ...pole.pose, x: pole.pose.x + 0.1, y: pole.pose.y + 6 } };
    const [neighbour] = found.obstacles;
    if (neighbour === undefined) throw new Error('no obstacle');
    const far = { minX: 90, minY: 90, maxX: 91, maxY: 91 };
    const ground = { ...GROUND, others: [{ ...neighbour, pieces: [other], bounds: far }] };
    const end = snap({ ...box(7.3, 4.6), pieces: mine }, ground, { sources: EVERY, reach: near });
    expect(end.x).toBeCloseTo(0.1, 9);
    expect(end.guides.map((guide) => guide.says)).toEqual(['Poles in one line']);
  });

  test('half way between two neighbours that have it in line', () => {
    const found = survey(threeObstacles());
    const others = found.obstacles.filter((each) => each.obstacle.id !== 'fan-1');
    const [run, spoke] = others.map((each) => each.bounds);
    if (run === undefined || spoke === undefined) throw new Error('no neighbours');
    const half = (run.maxX + spoke.minX) / 2;
    const end = snap(box(half - 1.06, 6.3), { ...GROUND, others }, { sources: [midways], reach: near });
    expect(end.x).toBeCloseTo(0.06, 9);
    expect(end.guides[0]?.says).toBe('Half way between the set of jog-overs (obstacle 1) and the spoke (obstacle 3)');
    const lengths = end.guides[0]?.marks.map((mark) => {
      const [a, b] = mark.kind === 'line' ? mark.points : [];
      return (b?.x ?? 0) - (a?.x ?? 0);
    });
    expect(lengths?.[0]).toBeCloseTo(lengths?.[1] ?? 0, 9);
    expect(snap(box(half - 1.06, 26), { ...GROUND, others }, { sources: [midways], reach: near }).x).toBe(0);
  });

  test('a heading square to the walls, at half, and in steps of 15°', () => {
    const heading = (degrees: number) => says({ ...box(20, 8), angle: (degrees * Math.PI) / 180 });
    expect(heading(91)).toEqual(['Square to the walls']);
    expect(heading(-46)).toEqual(['At 45° to the walls']);
    expect(heading(31)).toEqual(['At 30° to the long walls']);
    expect(heading(38)).toEqual([]);
  });
});
