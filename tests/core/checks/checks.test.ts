import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CHECKS, findingsOf, silentLimits } from '../../../src/core/checks/checks.ts';
import { LIMITS } from '../../../src/core/checks/rulebooks/limits.ts';
import { PRACTICE, RULEBOOKS } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import type { Course, Layout } from '../../../src/core/course/course.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import type { Point } from '../../../src/core/plane/point.ts';
import { survey } from '../../../src/core/survey.ts';
import { BLANK, findings, judged, saidBy, scene, type Thing } from './scene.ts';

const LIVELY: readonly Thing[] = [
  { kind: 'run', at: [30, 20], values: { gap: 5.4 * FOOT } },
  { kind: 'fan', at: [70, 22, 10], values: { innerGap: 0.25 } },
  { kind: 'back-lane', at: [120, 30, 40], values: { width: 0.7 } },
  { kind: 'bridge', at: [124, 33] },
  { kind: 'gate', at: [160, 96, 20] },
  { kind: 'spoke', at: [80, 70], leg: { approach: 'walk' } },
  { kind: 'scenery', at: [100, 25] },
];

describe('the checks', () => {
  test('have ids that are theirs alone, and say what they ask for and why', () => {
    expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(CHECKS.length);
    for (const check of CHECKS) {
      expect(check.id).toMatch(/^[a-z-]+$/);
      expect(check.says).toMatch(/^[A-Z].*\.$/);
      expect(check.because).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('look up limits that have a title, and every limit of every book is looked up', () => {
    const asked = new Set(CHECKS.flatMap(({ limits }) => limits));
    expect([...asked].filter((name) => LIMITS[name] === undefined)).toEqual([]);
    const printed = [...RULEBOOKS, PRACTICE].flatMap(({ limits, levels = {}, ponies = {} }) =>
      [limits, ...Object.values(levels), ponies].flatMap((each) => Object.keys(each)),
    );
    expect(printed.filter((name) => !asked.has(name))).toEqual([]);
  });

  test('have nothing to say about an empty arena', () => {
    for (const book of RULEBOOKS) expect(findings(judged(BLANK, book.id))).toEqual([]);
  });
});

describe('findings', () => {
  const course = scene(LIVELY);

  test('come by weight and then in the order of the go', () => {
    const weights = findings(course).map(({ weight }) => ['must', 'should', 'note'].indexOf(weight));
    expect(weights).toEqual([...weights].sort());
    expect(new Set(weights).size).toBeGreaterThan(1);
    for (const weight of ['must', 'should', 'note']) {
      const legs = findings(course).flatMap((finding) => (finding.weight === weight ? [finding.leg ?? -1] : []));
      expect(legs).toEqual([...legs].sort((a, b) => a - b));
    }
  });

  test('are the same object for the same survey, and keep their ids when something else moves', () => {
    expect(findingsOf(survey(course))).toBe(findingsOf(survey(course)));
    const other = replaceLayout(course, (layout) => ({ ...layout, title: 'Afternoon' }));
    expect(findings(other).map(({ id }) => id)).toEqual(findings(course).map(({ id }) => id));
  });

  test('name only obstacles and pieces that are there', () => {
    const known = new Set(survey(course).pieces.flatMap(({ key, obstacle }) => [key, obstacle]));
    const named = findings(course).flatMap(({ keys }) => keys);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((key) => !known.has(key))).toEqual([]);
  });

  test('tell an obstacle that is ridden twice once', () => {
    const once = scene([{ kind: 'run', at: [60, 50], values: { gap: 5 * FOOT } }]);
    const twice = replaceLayout(once, (layout) => {
      const [leg] = layout.ride.legs;
      return leg === undefined ? layout : { ...layout, ride: { ...layout.ride, legs: [leg, { ...leg, id: 'leg-2' }] } };
    });
    const gaps = (each: Course) => saidBy(each, 'gap-band').map(({ keys }) => keys.join());
    expect(gaps(twice)).toEqual(gaps(once));
  });

  test('speak plainly: feet or metres, no unit of the program, no id', () => {
    for (const each of [course, { ...course, unit: 'm' } as Course]) {
      for (const { says } of findings(each)) {
        expect(says).toMatch(/^[A-Z“].*\.$/);
        expect(says).not.toMatch(/undefined|NaN|rad\b|\w+-\d|\//);
        if (each.unit === 'm') expect(says.replace(/\(.*? in the book\)/g, '')).not.toMatch(/\d['"]/);
      }
    }
  });
});

describe('a limit that the book does not set', () => {
  test('is named with the check that would have asked', () => {
    const quiet = silentLimits(survey(judged(BLANK, 'mule-association'))).map(({ limit }) => limit);
    expect(quiet).toContain('water-box.length');
    expect(quiet).not.toContain('back.width');
    expect(silentLimits(survey(judged(BLANK, 'trade-press'))).map(({ limit }) => limit)).toContain('serpentine.jog');
  });

  test('is not asked for', () => {
    const long = scene([{ kind: 'water-box', at: [60, 50], values: { length: 7 * FOOT } }]);
    expect(saidBy(judged(long, 'mule-association'), 'water-box-length')).toEqual([]);
    expect(saidBy(judged(long, 'trade-press'), 'water-box-length')).toHaveLength(1);
  });
});

/** The layout carried by a turn of whole quarters and a shift, the arena being large enough for both. */
function carried(layout: Layout, quarters: number, by: Point): Layout {
  const angle = (quarters * Math.PI) / 2;
  const [c, s] = [Math.round(Math.cos(angle)), Math.round(Math.sin(angle))];
  const at = ({ x, y }: Point) => ({ x: c * x - s * y + by.x, y: s * x + c * y + by.y });
  const turned = <P extends Point & { readonly angle: number }>(pose: P) => ({
    ...pose,
    ...at(pose),
    angle: pose.angle + angle,
  });
  return {
    ...layout,
    obstacles: layout.obstacles.map((obstacle) => ({ ...obstacle, pose: turned(obstacle.pose) })),
    ride: {
      ...layout.ride,
      start: turned(layout.ride.start),
      legs: layout.ride.legs.map((leg) => ({ ...leg, bends: leg.bends.map(at) })),
    },
  };
}

describe('laws', () => {
  /** Half a turn takes the arena onto itself: nothing that is measured may change. */
  test('turning a course half round with its arena changes no measure', () => {
    const course = scene(LIVELY);
    const { arena } = course;
    const round: Course = {
      ...replaceLayout(course, (layout) => carried(layout, 2, { x: arena.length, y: arena.width })),
      arena: { ...arena, entrance: { ...arena.entrance, wall: 'east', at: arena.width - arena.entrance.at } },
    };
    const told = (each: Course) => new Map(findings(each).map(({ id, measured }) => [id, measured]));
    const [before, after] = [told(course), told(round)];
    expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
    for (const [id, measured] of before) {
      if (measured === undefined) expect(after.get(id)).toBeUndefined();
      else expect(after.get(id), id).toBeCloseTo(measured, 6);
    }
  });

  test('a quarter turn and a shift inside a wide arena change no measure of gaps, lanes, sizes or crossings', () => {
    const wide: Course = {
      ...BLANK,
      arena: { ...BLANK.arena, length: 300, width: 300, entrance: { wall: 'west', at: 150, width: 4 } },
    };
    const course = scene(
      LIVELY.map(({ at: [x, y, turn], ...thing }) => ({ ...thing, at: [x + 300, y + 300, turn ?? 0] as const })),
      wide,
    );
    const start = { x: 85, y: 95, angle: 0 };
    const placed = replaceLayout(course, (layout) => ({ ...layout, ride: { ...layout.ride, start } }));
    const round = replaceLayout(placed, (layout) => carried(layout, 1, { x: 310, y: 25 }));
    const ids = (each: Course) =>
      findings(each)
        .map(({ id, measured }) => `${id} ${measured?.toFixed(3)}`)
        .sort();
    expect(ids(placed).length).toBeGreaterThan(6);
    expect(ids(round)).toEqual(ids(placed));
  });

  test('the unit in which a course is read changes no finding but its words', () => {
    const course = scene(LIVELY);
    const bare = (each: Course) => findings(each).map(({ id, measured, weight }) => ({ id, measured, weight }));
    expect(bare({ ...course, unit: 'm' })).toEqual(bare(course));
  });

  test('no fix on offer leaves its finding or adds a must', () => {
    const gaits = fc.constantFrom('walk', 'jog', 'lope');
    const places = fc.record({
      x: fc.integer({ min: 4, max: 190 }),
      y: fc.integer({ min: 4, max: 96 }),
      turn: fc.integer({ min: 0, max: 359 }),
    });
    const kinds = fc.constantFrom<Thing>(
      { kind: 'run', at: [0, 0], values: { gap: 5.3 * FOOT } },
      { kind: 'run', at: [0, 0], values: { gap: 0.62 } },
      { kind: 'fan', at: [0, 0], values: { gap: 1.7 } },
      { kind: 'spoke', at: [0, 0], values: { clear: 0.35 } },
      { kind: 'back-lane', at: [0, 0], values: { width: 0.68 } },
      { kind: 'box', at: [0, 0] },
      { kind: 'bridge', at: [0, 0], values: { width: 0.8 } },
      { kind: 'serpentine', at: [0, 0], values: { gap: 2.8 } },
    );
    const things = fc.array(fc.tuple(kinds, places), { minLength: 2, maxLength: 3 });
    let offered = 0;
    fc.assert(
      fc.property(things, gaits, (drawn, gait) => {
        const laid = scene(drawn.map(([thing, { x, y, turn }]) => ({ ...thing, at: [x, y, turn] as const })));
        const course = changeLeg(laid, 'leg-1', { approach: gait });
        const musts = new Set(findings(course).flatMap(({ id, weight }) => (weight === 'must' ? [id] : [])));
        for (const finding of findings(course)) {
          for (const remedy of finding.remedies) {
            offered += 1;
            // A course of its own, so that nothing remembered from trying the fix answers for it.
            const after = findings(remedy.apply(structuredClone(course)));
            expect(
              after.map(({ id }) => id),
              remedy.says,
            ).not.toContain(finding.id);
            const added = after.filter(({ id, weight }) => weight === 'must' && !musts.has(id));
            expect(
              added.map(({ says }) => says),
              remedy.says,
            ).toEqual([]);
          }
        }
      }),
      { numRuns: 8, seed: 7 },
    );
    expect(offered).toBeGreaterThan(15);
  });
});
