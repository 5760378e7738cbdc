import { describe, expect, test } from 'vitest';
import { hoofRectangle, sweepsOf } from '../../../../src/core/checks/geometry/sweep.ts';
import { rotateByKeys, shiftByKeys } from '../../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../../src/core/course/layouts.ts';
import { STOCK_HORSE } from '../../../../src/core/horses/horses.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { ringArea, ringContains } from '../../../../src/core/plane/ring.ts';
import { survey } from '../../../../src/core/survey.ts';
import { roomThrough } from '../../../bench/truth/lane-search.ts';
import { roomOf, turnsOf } from '../../../bench/truth/lanes.ts';
import { scene, type Thing } from '../scene.ts';

const only = (thing: Thing) => {
  const [sweep] = sweepsOf(survey(scene([thing])));
  if (sweep === undefined) throw new Error('the test has nothing that is swept');
  return sweep;
};
const { length, width } = hoofRectangle(STOCK_HORSE);

describe('what a horse sweeps over', () => {
  test('in a straight lane is the lane less its hooves, half on each side', () => {
    const lane = only({ kind: 'back-lane', at: [60, 50], values: { width: 36 * INCH } });
    expect(lane.move).toBe('back');
    expect(lane.clear).toBeCloseTo((36 * INCH - width) / 2, 3);
    expect(lane.area).toHaveLength(1);
  });

  test('in a box is narrowest where its diagonal lies along a side', () => {
    const box = only({ kind: 'box', at: [60, 50], values: { side: 5 * FOOT } });
    expect(box.move).toBe('turn');
    // Turning about the middle, the furthest that a corner comes out is half the diagonal.
    expect(box.clear).toBeCloseTo((5 * FOOT - Math.hypot(length, width)) / 2, 3);
  });

  test('on the haunches in a box goes round the hind feet, and needs the room behind them', () => {
    const course = scene([{ kind: 'box', at: [60, 50], values: { side: 14 * FOOT, length: 16 * FOOT } }]);
    const onHaunches = replaceLayout(course, (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => ({
        ...each,
        passages: each.passages.map((passage) => ({
          ...passage,
          stations: passage.stations.map((station) =>
            station.kind === 'turn' ? ({ ...station, about: 'haunches' } as const) : station,
          ),
        })),
      })),
    }));
    const [sweep] = sweepsOf(survey(onHaunches));
    expect(sweep?.move).toBe('turn');
    // Half round, its front stands a whole base and half a hoof behind the hind feet, which are half a base off the middle.
    const base = STOCK_HORSE.wheelbase.value;
    expect(sweep?.clear).toBeCloseTo((14 * FOOT) / 2 - base - length / 2, 2);
  });

  test('in a lane that is too narrow for the hooves overlaps the poles by what is missing', () => {
    const lane = only({ kind: 'back-lane', at: [60, 50], values: { width: 24 * INCH } });
    expect(lane.clear).toBeGreaterThan(0);
    const house = only({ kind: 'box', at: [60, 50], values: { side: 4 * FOOT } });
    expect(house.clear).toBeCloseTo((4 * FOOT - Math.hypot(length, width)) / 2, 3);
  });

  test('is wider in a wider L, and never better than in a straight lane of the same width', () => {
    const clear = (inches: number) => only({ kind: 'back-l', at: [60, 50], values: { width: inches * INCH } }).clear;
    const widths = [28, 30, 33, 36, 40].map(clear);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    expect(widths[3]).toBeLessThan((36 * INCH - width) / 2);
  });

  test('is as much wherever the obstacle lies and however it is turned', () => {
    const course = scene([{ kind: 'back-l', at: [60, 50] }]);
    const [here] = sweepsOf(survey(course));
    const far = shiftByKeys(rotateByKeys(course, ['back-l-1'], 1.1, { x: 20, y: 15 }), ['back-l-1'], 3, 1);
    const [there] = sweepsOf(survey(far));
    expect(there?.clear).toBeCloseTo(here?.clear ?? 0, 6);
    const area = (sweep: typeof here) => sweep?.area.reduce((sum, ring) => sum + ringArea(ring), 0) ?? 0;
    expect(area(there)).toBeCloseTo(area(here), 2);
  });

  test('holds the place where it is narrowest', () => {
    const sweep = only({ kind: 'back-l', at: [60, 50] });
    expect(sweep.area.some((ring) => ringContains(ring, sweep.at))).toBe(true);
    expect(sweep.key).toMatch(/^back-l-1\//);
  });

  test('is nothing where the horse neither backs nor turns', () => {
    expect(sweepsOf(survey(scene([{ kind: 'run', at: [60, 50] }])))).toEqual([]);
  });
});

// The same by a flood over place and heading on one fine grid; `npm run bench -- truth` compares some 400 lanes.
describe('the room in a turn is that of a motion that is connected', () => {
  const lane = (degrees: number) => ({ kind: 'back-v', values: { angle: (degrees * Math.PI) / 180 } });
  test.each([
    ['an L', { kind: 'back-l', values: {} }, 28, 'stock-horse'],
    ['a U', { kind: 'back-u', values: {} }, 32, 'pony'],
    ['a T', { kind: 'back-t', values: {} }, 34, 'large-horse'],
    ['a sharp V', lane(60), 30, 'mule'],
    ['a wide V', lane(125), 26, 'large-horse'],
    ['a zigzag', { kind: 'back-zigzag', values: {} }, 30, 'stock-horse'],
  ] as const)('%s of %s', (_, shape, width, horse) => {
    const turns = turnsOf(shape, width * INCH, horse);
    expect(turns.length).toBeGreaterThan(0);
    for (const turn of turns) {
      const [first] = turn.blocks;
      if (first === undefined) throw new Error('nothing is in the way');
      const rings = turn.blocks.map(({ ring }) => ring);
      const flood = roomThrough(rings, first.base, turn.poses);
      expect(Math.abs(Math.min(roomOf(turn), 0.3) - flood)).toBeLessThan(INCH / 2);
    }
  });

  test('a narrow V for a long horse is too narrow, by more than one in which it fits', () => {
    const [turn] = turnsOf(lane(80), 24 * INCH, 'large-horse');
    const [wider] = turnsOf(lane(80), 34 * INCH, 'large-horse');
    if (turn === undefined || wider === undefined) throw new Error('no turn');
    expect(roomOf(turn)).toBeLessThan(0);
    expect(roomOf(wider)).toBeGreaterThan(roomOf(turn));
  });

  test('in a side pass the horse stands over the pole: no rectangle says what room it has', () => {
    expect(sweepsOf(survey(scene([{ kind: 'side-pass-v', at: [60, 50] }])))).toEqual([]);
  });
});
