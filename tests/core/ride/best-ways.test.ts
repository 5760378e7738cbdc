import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { changeLeg, takeWays } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { speed } from '../../../src/core/horses/horse.ts';
import { sameWork } from '../../../src/core/obstacles/same-work.ts';
import { bestWays } from '../../../src/core/ride/best-ways.ts';
import { cachedPassage } from '../../../src/core/ride/cached-ways.ts';
import {
  arrivalAt,
  arrivalAtEnd,
  type Departure,
  departureAtStart,
  departureFrom,
  type WayQuery,
  wayBetween,
} from '../../../src/core/ride/way-between.ts';
import { leastWayPrice, passagePrice, wayPrice } from '../../../src/core/ride/way-price.ts';
import { bestWaysOf, survey } from '../../../src/core/survey.ts';
import { scene } from '../checks/scene.ts';
import { RANDOM_COURSES, STARTERS } from './courses.ts';

/** What a leg that is ridden another way is charged, seconds. */
const TRIFLE = 0.5;

/** The course with its legs ridden by these passages, in the order of the go. */
function riddenBy(course: Course, passages: readonly string[]): Course {
  return passages.reduce(
    (now, passage, i) => changeLeg(now, now.layouts[0].ride.legs[i]?.id ?? '', { passage }),
    course,
  );
}

function bestOf(course: Course): readonly string[] {
  const { legs } = survey(course).layout.ride;
  const changes = bestWaysOf(survey(course)).groups.flat();
  return legs.map(({ passage }, i) => changes.find(({ index }) => index === i)?.passage ?? passage);
}

/** Every way of the ride as it is, sought anew. */
function waysOf(course: Course): readonly WayQuery[] {
  const { layout, obstacles, horse } = survey(course);
  const { start, legs, end } = layout.ride;
  let from: Departure = departureAtStart(start);
  const ways: WayQuery[] = [];
  for (const leg of legs) {
    const placed = obstacles.find(({ obstacle }) => obstacle.id === leg.obstacle);
    const line = placed === undefined ? undefined : cachedPassage(placed, leg, horse);
    if (line === undefined) throw new Error(`${leg.id} cannot be ridden`);
    ways.push({ from, to: arrivalAt(leg.obstacle, line), gait: leg.approach, bends: leg.bends });
    from = departureFrom(leg.obstacle, line);
  }
  const last = legs.at(-1);
  if (end !== undefined && last !== undefined) ways.push({ from, to: arrivalAtEnd(end), gait: last.gait, bends: [] });
  return ways;
}

/** The price of the ride as it is, every way sought anew. */
function priceOf(course: Course): number {
  const surveyed = survey(course);
  const { layout, obstacles, horse } = surveyed;
  const around = { arena: course.arena, horse, obstacles };
  const passages = layout.ride.legs.reduce((sum, leg) => {
    const placed = obstacles.find(({ obstacle }) => obstacle.id === leg.obstacle);
    const line = placed === undefined ? undefined : cachedPassage(placed, leg, horse);
    return placed === undefined || line === undefined ? sum : sum + passagePrice(placed, line, around);
  }, 0);
  return waysOf(course).reduce((sum, way) => sum + wayPrice(wayBetween({}, way, around), way, around), passages);
}

/** Every choice of passages that keep the work, for a course whose legs have no words and no lead. */
function choices(course: Course): readonly (readonly string[])[] {
  const { obstacles, ride } = course.layouts[0];
  return ride.legs.reduce<readonly (readonly string[])[]>(
    (all, leg) => {
      const obstacle = obstacles.find(({ id }) => id === leg.obstacle);
      const ridden = obstacle?.passages.find(({ id }) => id === leg.passage);
      if (obstacle === undefined || ridden === undefined) throw new Error(`${leg.id} cannot be ridden`);
      const ids = sameWork(obstacle, ridden).map(({ id }) => id);
      return all.flatMap((one) => ids.map((id) => [...one, id]));
    },
    [[]],
  );
}

const EMPTY = blankCourse();

function withEnd(course: Course): Course {
  const end = { x: course.arena.length - 3, y: 5, angle: -Math.PI / 2 };
  return replaceLayout(course, (layout) => ({ ...layout, ride: { ...layout.ride, end } }));
}

const SMALL: readonly (readonly [string, Course])[] = [
  [
    'a curved run and a box',
    scene([
      { kind: 'curved-run', at: [60, 40, 30], leg: { gait: 'jog', approach: 'jog' } },
      { kind: 'box', at: [130, 60, 100] },
    ]),
  ],
  [
    'a fan, an L and a serpentine that lie across each other’s ways',
    scene([
      { kind: 'fan', at: [50, 30, 200] },
      { kind: 'back-l', at: [100, 60, 40] },
      { kind: 'serpentine', at: [150, 30, 250], leg: { gait: 'jog', approach: 'jog' } },
    ]),
  ],
  [
    'chevrons, a gate and a side pass, with an end to go to',
    withEnd(
      scene([
        { kind: 'chevron', at: [60, 70, 170] },
        { kind: 'gate', at: [110, 30, 60] },
        { kind: 'side-pass', at: [160, 70, 15] },
      ]),
    ),
  ],
];

describe('the best ways of a ride', () => {
  test.each(SMALL)('of %s are the cheapest of all choices, each tried whole', (_, course) => {
    const kept = course.layouts[0].ride.legs.map(({ passage }) => passage);
    const prices = choices(course).map((passages) => {
      const changed = passages.filter((passage, i) => passage !== kept[i]).length;
      return { passages, price: priceOf(riddenBy(course, passages)) + TRIFLE * changed };
    });
    const best = bestOf(course);
    const found = prices.find(({ passages }) => passages.join() === best.join());
    expect(prices.length).toBeGreaterThanOrEqual(8);
    expect(found?.price).toBeCloseTo(Math.min(...prices.map(({ price }) => price)), 6);
  });

  test('ridden so, nothing is better any more', () => {
    for (const course of [...STARTERS.map(([, each]) => each), ...RANDOM_COURSES.slice(0, 25)]) {
      const best = riddenBy(course, bestOf(course));
      expect(bestWaysOf(survey(best)).groups).toEqual([]);
    }
  });

  test('the whole ride takes no longer by the clock', () => {
    for (const course of RANDOM_COURSES.slice(0, 50)) {
      const best = riddenBy(course, bestOf(course));
      // Where a gait changes on a way, and so how much of the way is ridden in which gait, is not in the price.
      expect(survey(best).line.clock.go).toBeLessThan(survey(course).line.clock.go + 2);
    }
  });

  test('no way costs less than its lower bound', () => {
    for (const course of [...STARTERS.map(([, each]) => each), ...RANDOM_COURSES.slice(0, 50)]) {
      const { horse, obstacles } = survey(course);
      const around = { arena: course.arena, horse, obstacles };
      for (const way of waysOf(course)) {
        const price = wayPrice(wayBetween({}, way, around), way, around);
        expect(price).toBeGreaterThan(leastWayPrice(way, around) - 1e-6);
      }
    }
  });

  test('a curve that lies to the other hand is ridden from its other end', () => {
    // From (10, 30) the middle of the curve is ahead; it bends to the left as it is ridden first.
    const [right, left] = [20, 200].map((degrees) =>
      bestOf(scene([{ kind: 'curved-run', at: [100, 30, degrees], leg: { passage: 'left' } }])),
    );
    expect(new Set([right?.[0], left?.[0]])).toEqual(new Set(['left', 'right']));
  });

  test('a chosen lead, words of one’s own and the kind of work are kept', () => {
    const [legs] = SMALL.map(([, course]) => course.layouts[0].ride.legs);
    const course = SMALL[0]?.[1] ?? EMPTY;
    const turned = bestOf(course);
    const first = legs?.[0]?.id ?? '';
    const worst = turned[0] === 'left' ? 'right' : 'left';
    const against = riddenBy(course, [worst, turned[1] ?? '']);
    expect(bestOf(against)[0]).toBe(turned[0]);
    expect(bestOf(changeLeg(against, first, { lead: worst, gait: 'lope' }))[0]).toBe(worst);
    expect(bestOf(changeLeg(against, first, { words: 'Jog over the curve' }))[0]).toBe(worst);
    expect(turned[1]).toMatch(/^turn-/);
  });

  test('a leg that cannot be ridden is passed over, and a course without a ride has nothing to change', () => {
    const course = SMALL[1]?.[1] ?? EMPTY;
    const { layouts } = course;
    const legs = layouts[0].ride.legs.map((leg, i) => (i === 1 ? { ...leg, obstacle: 'nowhere' } : leg));
    const broken: Course = { ...course, layouts: [{ ...layouts[0], ride: { ...layouts[0].ride, legs } }] };
    expect(
      bestWaysOf(survey(broken))
        .groups.flat()
        .every(({ index }) => index !== 1),
    ).toBe(true);
    expect(bestWaysOf(survey(EMPTY))).toEqual({ groups: [], sought: 0, edges: 1 });
  });

  test('legs that change one after the other are one group; a group alone saves what it says', () => {
    for (const course of RANDOM_COURSES.slice(0, 40)) {
      const { groups } = bestWaysOf(survey(course));
      const indexes = groups.map((group) => group.map(({ index }) => index));
      for (const [i, group] of indexes.entries()) {
        expect(group).toEqual(group.map((_, n) => (group[0] ?? 0) + n));
        expect(group[0]).toBeGreaterThan((indexes[i - 1]?.at(-1) ?? -2) + 1);
      }
      const saved = groups.map((group) => priceOf(course) - priceOf(takeWays(course, group)));
      const whole = priceOf(course) - priceOf(takeWays(course, groups.flat()));
      expect(saved.reduce((sum, each) => sum + each, 0)).toBeCloseTo(whole, 6);
      for (const each of saved) expect(each).toBeGreaterThan(TRIFLE - 1e-6);
    }
  });

  test('few of the ways are sought, and the answer belongs to its survey', () => {
    const [sought, all] = STARTERS.map(([, course]) => bestWaysOf(survey(course))).reduce(
      ([some, every], { sought, edges }) => [some + sought, every + edges],
      [0, 0],
    );
    expect(sought).toBeLessThan(0.7 * all);
    const surveyed = survey(SMALL[0]?.[1] ?? EMPTY);
    expect(bestWaysOf(surveyed)).toBe(bestWaysOf(surveyed));
    expect(bestWays({ ...surveyed, arena: surveyed.course.arena })).toEqual(bestWaysOf(surveyed));
  });

  test('the unit is seconds: a faster gait has the same way in less time', () => {
    const course = scene([{ kind: 'run', at: [100, 30, 0] }]);
    const { horse, obstacles } = survey(course);
    const around = { arena: course.arena, horse, obstacles };
    const [way] = waysOf(course);
    if (way === undefined) throw new Error('the course has no way');
    const [jog, walk] = (['jog', 'walk'] as const).map((gait) => leastWayPrice({ ...way, gait }, around));
    expect(jog).toBeLessThan(walk ?? 0);
    expect((jog ?? 0) * speed(horse, 'jog')).toBeCloseTo((walk ?? 0) * speed(horse, 'walk'), 0);
  });
});
