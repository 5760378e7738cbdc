import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Course, Layout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { minTurnRadius } from '../../../src/core/horses/turns.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { pathEnd, pathLength, pathPoints } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { compose, mirrorImage, normalizeAngle, type Pose, pose } from '../../../src/core/plane/pose.ts';
import type { Line } from '../../../src/core/ride/line.ts';
import { lineOfTravel } from '../../../src/core/ride/line-of-travel.ts';
import { survey } from '../../../src/core/survey.ts';
import { ARENA, course, leg, roundCourse, run } from './hand-laid.ts';

function lineOf(of: Course): Line {
  const [layout] = of.layouts;
  return lineOfTravel({ arena: of.arena, horse: STOCK_HORSE, layout, obstacles: layout.obstacles.map(placedObstacle) });
}

/** The course with every pose changed by a rigid motion, in an arena whose walls are out of the way. */
function carried(of: Course, carry: (at: Pose) => Pose, mirror: (o: Obstacle) => Obstacle = (o) => o): Course {
  const [layout] = of.layouts;
  const moved: Layout = {
    ...layout,
    obstacles: layout.obstacles.map((each) => mirror({ ...each, pose: carry(each.pose) })),
    ride: { ...layout.ride, start: carry(layout.ride.start), legs: layout.ride.legs.map((each) => ({ ...each })) },
  };
  return { ...of, arena: { ...ARENA, length: 1000, width: 1000 }, layouts: [moved] };
}

/** Lengths, gaps and times, which no rigid motion changes. */
function measures(line: Line): number[] {
  return [
    line.length,
    line.clock.go,
    ...line.elements.flatMap((each) => [each.from, each.length, each.seconds]),
    ...line.gaps.flatMap((each) => [each.taped, each.ridden, each.from, each.landings.each]),
    ...line.crossings.map(({ at }) => at),
  ];
}

function expectSame(a: Line, b: Line): void {
  const [before, after] = [measures(a), measures(b)];
  expect(after).toHaveLength(before.length);
  for (const [i, value] of before.entries()) expect(after[i]).toBeCloseTo(value, 6);
}

const MIDDLE = carried(roundCourse(), (at) => ({ ...at, x: at.x + 400, y: at.y + 400 }));

describe('the line of travel', () => {
  const round = roundCourse();
  const line = lineOf(round);

  test('has no breaks, and each leg an approach and its obstacle, in order', () => {
    expect(line.breaks).toEqual([]);
    expect(line.elements.map(({ leg: of, part }) => `${of} ${part}`)).toEqual(
      [0, 1, 2, 3, 4].flatMap((i) => [`${i} approach`, `${i} obstacle`]),
    );
  });

  test('starts at the start, and each element begins where the one before ended, heading as it did', () => {
    let here: Pose = round.layouts[0].ride.start;
    let along = 0;
    for (const { path, from, length } of line.elements) {
      const [first] = path;
      expect(distance(first?.start ?? here, here)).toBeLessThan(1e-6);
      expect(Math.abs(normalizeAngle((first?.start.angle ?? 9) - here.angle))).toBeLessThan(1e-6);
      expect(from).toBeCloseTo(along, 9);
      expect(pathLength(path)).toBeCloseTo(length, 9);
      here = pathEnd(path);
      along += length;
    }
    expect(line.length).toBeCloseTo(along, 9);
  });

  test('within an element each stretch begins where the one before ended', () => {
    for (const { path } of line.elements) {
      for (const [i, stretch] of path.slice(1).entries()) {
        const end = pathEnd(path.slice(0, i + 1));
        expect(distance(end, stretch.start)).toBeLessThan(1e-6);
        expect(Math.abs(normalizeAngle(end.angle - stretch.start.angle))).toBeLessThan(1e-6);
      }
    }
  });

  test('passes each pole at its fraction and in its direction, further and further along', () => {
    const stations = round.layouts[0].obstacles.flatMap((each) => each.passages[0]?.stations ?? []);
    expect(line.crossings).toHaveLength(stations.length);
    const pieces = new Map(survey(round).pieces.map((piece) => [piece.key, piece]));
    for (const [i, crossing] of line.crossings.entries()) {
      const station = stations[i];
      const lying = pieces.get(crossing.key);
      if (station?.kind !== 'cross' || lying === undefined) throw new Error('the course rides only over poles');
      const towards = Math.sin(crossing.pose.angle - lying.pose.angle);
      expect(Math.sign(towards)).toBe(station.way);
      expect(crossing.fraction).toBe(station.fraction);
      expect(crossing.at).toBeGreaterThan(line.crossings[i - 1]?.at ?? -1);
    }
  });

  test('never turns tighter than the gait allows between obstacles', () => {
    for (const { part, path, gait } of line.elements) {
      if (part !== 'approach') continue;
      const least = minTurnRadius(STOCK_HORSE, gait);
      for (const { curvature } of path) expect(Math.abs(curvature)).toBeLessThanOrEqual(1 / least + 1e-9);
    }
  });

  test('is straight for a horse’s length before the first pole and after the last, where there is room', () => {
    for (const { part, path, leg: of } of line.elements) {
      if (part !== 'approach') continue;
      expect(path.at(-1)?.curvature).toBe(0);
      expect(path.at(-1)?.length).toBeGreaterThanOrEqual(STOCK_HORSE.bodyLength.value - 1e-6);
      if (of > 0) expect(path[0]?.length).toBeGreaterThanOrEqual(STOCK_HORSE.bodyLength.value - 1e-6);
    }
  });

  test('the go takes as long as its legs together, and each metre its time', () => {
    expect(line.clock.go).toBeCloseTo(
      line.clock.legs.reduce((sum, each) => sum + each, 0),
      9,
    );
    const ridden = line.length / (STOCK_HORSE.gaits.jog.stride.value / STOCK_HORSE.gaits.jog.period.value);
    // One transition up, from the stand at the start; all else is the same gait.
    expect(line.clock.go).toBeCloseTo(ridden + STOCK_HORSE.transition.up.value, 6);
  });
});

describe('no rigid motion changes a length, a gap or a time', () => {
  const motion = fc.record({
    x: fc.double({ min: -200, max: 200, noNaN: true }),
    y: fc.double({ min: -200, max: 200, noNaN: true }),
    angle: fc.double({ min: -3, max: 3, noNaN: true }),
  });

  test('turned and shifted', () => {
    const line = lineOf(MIDDLE);
    fc.assert(
      fc.property(motion, (by) => {
        const about = (at: Pose): Pose => {
          const turned = compose({ x: 0, y: 0, angle: by.angle }, { ...at, x: at.x - 430, y: at.y - 415 });
          return { ...turned, x: turned.x + 430 + by.x, y: turned.y + 415 + by.y };
        };
        expectSame(line, lineOf(carried(MIDDLE, about)));
      }),
      { numRuns: 20 },
    );
  });

  test('mirrored', () => {
    const flip = (each: Obstacle): Obstacle => ({
      ...each,
      pieces: each.pieces.map((piece) => ({ ...piece, pose: mirrorImage(piece.pose) })),
      passages: each.passages.map((passage) => ({
        ...passage,
        stations: passage.stations.map((station) =>
          station.kind === 'cross' ? { ...station, way: station.way === 1 ? -1 : 1 } : station,
        ),
      })),
    });
    const about = (at: Pose): Pose => ({ x: at.x, y: 830 - at.y, angle: -at.angle });
    expectSame(lineOf(MIDDLE), lineOf(carried(MIDDLE, about, flip)));
  });
});

describe('a way between obstacles', () => {
  test('goes through the bends it is pulled through', () => {
    const bends = [
      { x: 20, y: 14 },
      { x: 30, y: 17 },
    ];
    const pulled = course([run('run-1', pose(45, 5, 0))], { start: pose(3, 5, 0), legs: [leg('run-1', { bends })] });
    const places = pathPoints(lineOf(pulled).elements[0]?.path ?? [], 0.02);
    for (const bend of bends) expect(Math.min(...places.map((each) => distance(each, bend)))).toBeLessThan(0.011);
  });

  test('goes round poles that lie across the straight when another word is clear of them', () => {
    const target = run('run-1', pose(30, 15, -Math.PI / 2), { poles: 2 });
    const ride = { start: pose(10, 20, 0), legs: [leg('run-1')] };
    const open = lineOf(course([target], ride)).elements[0];
    const inWay = run('run-9', pose(20, 20, 0), { poles: 2 });
    const blocked = lineOf(course([target, inWay], ride)).elements[0];
    const crosses = (path: Line['elements'][number]['path'] = []) =>
      pathPoints(path, 0.05).some(({ x, y }) => Math.abs(x - 20) < 0.6 && Math.abs(y - 20) < 2.1);
    expect(crosses(open?.path)).toBe(true);
    expect(crosses(blocked?.path)).toBe(false);
  });

  test('keeps off the wall when a tighter turn will do', () => {
    const target = run('run-1', pose(48, 16, Math.PI), { poles: 2 });
    const ride = { start: pose(48, 10, 0), legs: [leg('run-1')] };
    const arena = { ...ARENA, length: 55 };
    const [way] = lineOf(course([target], ride, arena)).elements;
    for (const { x } of pathPoints(way?.path ?? [], 0.05)) expect(x).toBeLessThanOrEqual(54.5 + 1e-9);
  });

  test('to the end of the go belongs to the last leg', () => {
    const ride = { start: pose(3, 5, 0), legs: [leg('run-1')], end: pose(50, 20, 1) };
    const line = lineOf(course([run('run-1', pose(20, 5, 0))], ride));
    const last = line.elements.at(-1);
    expect(last).toMatchObject({ part: 'finish', leg: 0 });
    expect(distance(pathEnd(last?.path ?? []), { x: 50, y: 20 })).toBeLessThan(1e-6);
    expect(line.clock.legs).toHaveLength(1);
  });
});

describe('a line that cannot be ridden', () => {
  test('says which number of the ride is not there, and goes on', () => {
    const ride = { start: pose(3, 5, 0), legs: [leg('fan-7'), leg('run-1')] };
    const line = lineOf(course([run('run-1', pose(20, 5, 0))], ride));
    expect(line.breaks.map(({ leg: of, why }) => [of, why])).toEqual([
      [0, 'Number 1 of the ride is "fan-7", which is not in the layout.'],
    ]);
    expect(line.elements.map(({ leg: of }) => of)).toEqual([1, 1]);
  });

  test('says when an obstacle lies outside the arena', () => {
    const ride = { start: pose(3, 5, 0), legs: [leg('run-1')] };
    expect(lineOf(course([run('run-1', pose(90, 5, 0))], ride)).breaks[0]?.why).toBe(
      'Number 1 begins outside the arena.',
    );
  });

  test('in an arena without room is no line at all', () => {
    const line = lineOf(
      course([run('run-1', pose(9, 5, 0))], { start: pose(3, 5, 0), legs: [leg('run-1')] }, { ...ARENA, width: 0 }),
    );
    expect(line.elements).toEqual([]);
    expect(line.breaks).toHaveLength(1);
  });

  test('without legs is empty', () => {
    const line = lineOf(course([run('run-1', pose(9, 5, 0))], { start: pose(3, 5, 0), legs: [] }));
    expect(line).toMatchObject({ elements: [], breaks: [], length: 0, clock: { legs: [], go: 0 } });
  });
});

test('remembering changes nothing: a course edited step by step has the line of the same course from cold', () => {
  let now = roundCourse();
  for (let i = 0; i < 60; i += 1) {
    const [layout] = now.layouts;
    const at = i % layout.obstacles.length;
    const obstacles = layout.obstacles.map((each, k) =>
      k === at
        ? {
            ...each,
            pose: {
              ...each.pose,
              x: each.pose.x + 2.5 * FOOT * Math.sin(7 * i),
              y: each.pose.y + 2 * FOOT * Math.cos(5 * i),
            },
          }
        : each,
    );
    now = { ...now, layouts: [{ ...layout, obstacles }] };
    expect(measures(lineOf(now))).toEqual(measures(lineOf(structuredClone(now))));
  }
});
