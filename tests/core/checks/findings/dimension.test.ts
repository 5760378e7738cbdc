import { describe, expect, test } from 'vitest';
import { flipObstacles, placeAt } from '../../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../../src/core/course/edit-ride.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { judged, saidBy, scene } from '../scene.ts';

describe('sizes are taken on the ground, not from the parameters', () => {
  test('a lane that was dragged narrow at one end is told at that end', () => {
    const lane = scene([{ kind: 'back-lane', at: [60, 50] }]);
    const [, upper] = lane.layouts[0].obstacles[0]?.pieces ?? [];
    const y = 50 * FOOT + (upper?.pose.y ?? 0);
    const narrow = placeAt(lane, 'back-lane-1/pole-2', { x: 60 * FOOT, y, angle: 0.1 });
    const [finding] = saidBy(narrow, 'back-width');
    // It turns about its middle: half a pole's length of 12 ft at 0.1 rad.
    expect(finding?.measured).toBeLessThan((36 - 5) * INCH);
    expect(finding?.at.x).toBeLessThan(56 * FOOT);
    expect(finding?.keys).toEqual(expect.arrayContaining(['back-lane-1/pole-1', 'back-lane-1/pole-2']));
  });

  test('both legs of an L are measured where the horse backs', () => {
    const narrow = scene([{ kind: 'back-l', at: [60, 50], values: { width: 26 * INCH } }]);
    const [finding] = saidBy(narrow, 'back-width');
    expect(finding?.measured).toBeCloseTo(26 * INCH, 6);
    expect(saidBy(scene([{ kind: 'back-l', at: [60, 50] }]), 'back-width')).toEqual([]);
  });

  test('a lane that is ridden through forwards is no back-through', () => {
    const lane = scene([{ kind: 'back-lane', at: [60, 50], values: { width: 26 * INCH } }]);
    expect(saidBy(lane, 'back-width')).toHaveLength(1);
    expect(saidBy(changeLeg(lane, 'leg-1', { passage: 'through' }), 'back-width')).toEqual([]);
  });

  test('a box that is ridden through has no size to keep', () => {
    const box = judged(
      scene([{ kind: 'box', at: [60, 50], values: { side: 12 * FOOT, length: 12 * FOOT } }]),
      'trade-press',
    );
    expect(saidBy(box, 'box-side')[0]?.measured).toBeCloseTo(12 * FOOT, 9);
    expect(saidBy(changeLeg(box, 'leg-1', { passage: 'through' }), 'box-side')).toEqual([]);
  });

  test('a serpentine at the walk may be tighter than at the jog', () => {
    const tight = scene([{ kind: 'serpentine', at: [60, 50], values: { gap: 6 * FOOT, gait: 'walk' } }]);
    expect(saidBy(tight, 'serpentine-spacing')).toEqual([]);
  });

  test('the inner gap of a mirrored fan is the same tape', () => {
    const fan = scene([{ kind: 'fan', at: [60, 50], values: { innerGap: 9 * INCH } }]);
    expect(saidBy(fan, 'fan-inner-gap')[0]?.measured).toBeCloseTo(9 * INCH, 9);
    expect(saidBy(flipObstacles(fan, ['fan-1']), 'fan-inner-gap')[0]?.measured).toBeCloseTo(9 * INCH, 9);
  });

  test('a house rule is named as such', () => {
    const house = { 'bridge.width': { least: 48 * INCH, reason: 'young horses' } };
    const strict = judged(
      scene([{ kind: 'bridge', at: [60, 50], values: { width: 40 * INCH } }]),
      'mule-association',
      house,
    );
    const [finding] = saidBy(strict, 'bridge-width');
    expect(finding?.says).toBe("The width of the bridge (obstacle 1) is 3' 4\"; the house rule asks for at least 4'.");
    expect(finding?.source).toBe('house rule: young horses');
  });
});

// A badge stands where the fault is: a person walks there with the tape.
describe('the place of a finding about a size', () => {
  const inFeet = (at: { readonly x: number; readonly y: number } | undefined) => [
    Number(((at?.x ?? Number.NaN) / FOOT).toFixed(3)),
    Number(((at?.y ?? Number.NaN) / FOOT).toFixed(3)),
  ];

  test('a piece: its middle', () => {
    const bridge = scene([{ kind: 'bridge', at: [60, 50], values: { width: 30 * INCH } }]);
    expect(inFeet(saidBy(bridge, 'bridge-width')[0]?.at)).toEqual([60, 50]);
  });

  test.each([0, 90])('two markers of a row turned by %d°: half-way between them', (turn) => {
    const markers = scene([{ kind: 'serpentine', at: [80, 50, turn], values: { gap: 9.5 * FOOT, gait: 'jog' } }]);
    const [finding] = saidBy(markers, 'serpentine-spacing');
    const named = (finding?.keys ?? []).filter((key) => key.includes('/'));
    const poses = survey(markers).pieces.flatMap(({ key, pose }) => (named.includes(key) ? [pose] : []));
    expect(poses).toHaveLength(2);
    expect(finding?.at.x).toBeCloseTo(((poses[0]?.x ?? Number.NaN) + (poses[1]?.x ?? Number.NaN)) / 2, 9);
    expect(finding?.at.y).toBeCloseTo(((poses[0]?.y ?? Number.NaN) + (poses[1]?.y ?? Number.NaN)) / 2, 9);
  });

  test('a lane: on its middle line, between the two poles, where it is narrowest', () => {
    const lane = scene([{ kind: 'back-lane', at: [60, 50], values: { width: 26 * INCH } }]);
    const [, y] = inFeet(saidBy(lane, 'back-width')[0]?.at);
    expect(y).toBeCloseTo(50, 3);
  });
});
