/** What lies where: overlap, outside, line-crosses, line-in-arena. */
import { describe, expect, test } from 'vitest';
import { placeAt, shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { BLANK, saidBy, scene } from './scene.ts';

describe('overlap', () => {
  test.each(OBSTACLE_KINDS.map(({ id }) => id))('a %s as it is usually built does not overlap itself', (kind) => {
    for (const turn of [0, 17, 45, 90]) {
      expect(saidBy(scene([{ kind, at: [100, 50, turn] }]), 'overlap')).toEqual([]);
    }
  });

  test('poles that touch do not overlap; a millimetre further they do', () => {
    const touching = (by: number) =>
      scene([
        { kind: 'run', at: [60, 50], values: { poles: 1 } },
        { kind: 'run', at: [60 + 1 / 3 + by / FOOT, 50], values: { poles: 1 } },
      ]);
    expect(saidBy(touching(0), 'overlap')).toEqual([]);
    expect(saidBy(touching(-0.001), 'overlap')).toHaveLength(1);
    // One millimetre along a pole of 12 ft.
    expect(saidBy(touching(-0.001), 'overlap')[0]?.measured).toBeCloseTo(0.001 * 12 * FOOT, 3);
  });

  test('a pole dragged over its neighbour is found within the obstacle', () => {
    const run = scene([{ kind: 'run', at: [60, 50] }]);
    const crossed = placeAt(run, 'run-1/pole-2', { x: 55 * FOOT, y: 50 * FOOT, angle: Math.PI / 2 + 0.3 });
    expect(saidBy(crossed, 'overlap').map(({ keys }) => keys)).toEqual([['run-1', 'run-1/pole-1', 'run-1/pole-2']]);
  });

  test('a box that merely holds another thing in its bounds is no overlap', () => {
    const inside = scene([
      { kind: 'box', at: [60, 50] },
      { kind: 'scenery', at: [60, 50] },
    ]);
    expect(saidBy(inside, 'overlap')).toEqual([]);
  });
});

describe('outside', () => {
  test('a pole nearer the wall than good practice is a should, and moving it in is offered', () => {
    // Poles of 12 ft across: one foot is left.
    const near = scene([{ kind: 'run', at: [60, 7] }]);
    const [finding] = saidBy(near, 'outside');
    expect(finding?.weight).toBe('should');
    expect(finding?.says).toBe(
      "The set of jog-overs (obstacle 1) comes to 1' from the south wall; it wants at least 2'.",
    );
    expect(finding?.remedies[0]?.says).toBe("Move it 1' into the arena");
  });

  test('scenery may stand against the wall, not in it', () => {
    const plant = (y: number) => saidBy(scene([{ kind: 'scenery', at: [60, y] }]), 'outside');
    const deep = plant(0.2)[0];
    expect(plant(1.5)).toEqual([]);
    expect(deep?.weight).toBe('must');
    expect(deep?.remedies).toHaveLength(1);
  });

  test.each([
    ['west', -2, 50],
    ['east', 202, 50],
    ['north', 100, 101],
    ['south', 100, -1],
  ] as const)('names the %s wall', (wall, x, y) => {
    const [finding] = saidBy(scene([{ kind: 'bridge', at: [x, y] }]), 'outside');
    expect(finding?.says).toContain(`beyond the ${wall} wall`);
  });

  test('a corner needs both ways at once', () => {
    const corner = scene([{ kind: 'bridge', at: [-3, -1] }]);
    const moved = saidBy(corner, 'outside')[0]?.remedies[0]?.apply(corner);
    const pose = moved?.layouts[0].obstacles[0]?.pose;
    // Half a bridge of 8 × 4 ft, and 2 ft of room.
    expect(pose?.x).toBeCloseTo(6 * FOOT, 6);
    expect(pose?.y).toBeCloseTo(4 * FOOT, 6);
  });
});

describe('line-crosses', () => {
  test('a pole in the way is a should, a thing that stands a must', () => {
    const on = (kind: string, piece: string) =>
      saidBy(
        scene([
          { kind: 'run', at: [110, 50] },
          { kind, at: [110, 50.5], values: kind === 'scenery' ? { piece } : {} },
        ]),
        'line-crosses',
      ).find(({ id }) => id.startsWith('line-crosses:leg-1:obstacle'))?.weight;
    expect(on('bridge', '')).toBe('should');
    expect(on('scenery', 'barrel')).toBe('must');
  });

  test.each(OBSTACLE_KINDS.map(({ id }) => id))('a %s alone in the arena is not in its own way', (kind) => {
    for (const turn of [0, 90, 200]) {
      expect(saidBy(scene([{ kind, at: [100, 50, turn] }]), 'line-crosses').map(({ says }) => says)).toEqual([]);
    }
  });

  test('half a body must pass beside what stands: nearer than that is told with both numbers', () => {
    // A marker is 1 ft square; the line is straight through the run at y = 50 ft.
    const marker = (y: number) =>
      saidBy(
        scene([
          { kind: 'run', at: [110, 50] },
          { kind: 'scenery', at: [110, y], values: { piece: 'barrel' } },
        ]),
        'line-crosses',
      );
    const [near] = marker(51.9);
    expect(near?.says).toMatch(
      /^The line through the set of jog-overs \(obstacle 1\) passes .* from the scenery; the horse needs 1' on each side\.$/,
    );
    expect(near?.measured).toBeGreaterThan(0);
    expect(marker(56)).toEqual([]);
  });
});

describe('line-in-arena', () => {
  test('the opening where horses come in is no wall', () => {
    const at = (x: number, y: number) =>
      replaceLayout(scene([{ kind: 'run', at: [60, 50] }]), (layout) => ({
        ...layout,
        ride: { ...layout.ride, start: { x, y, angle: 0 } },
      }));
    expect(saidBy(at(-1, BLANK.arena.entrance.at), 'line-in-arena')).toEqual([]);
    expect(saidBy(at(-1, 20 * FOOT), 'line-in-arena')).toHaveLength(1);
  });

  test('an obstacle carried over the wall takes its line along', () => {
    const run = scene([{ kind: 'run', at: [60, 50] }]);
    const out = saidBy(shiftByKeys(run, ['run-1'], 0, -50.5 * FOOT), 'line-in-arena');
    expect(out.map(({ weight }) => weight)).toContain('must');
    expect(out.map(({ says }) => says).join()).toContain('at the south wall');
  });
});
