import { describe, expect, test } from 'vitest';
import { flipObstacles, placeAt } from '../../../../src/core/course/edit-obstacles.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { saidBy, scene } from '../scene.ts';

const gaps = (course: Parameters<typeof saidBy>[0]) => saidBy(course, 'gap-band');

describe('gap-band', () => {
  test('tells the tape and the line apart on a fan, and judges along the line', () => {
    const fan = scene([{ kind: 'fan', at: [80, 50], values: { gap: 5.5 * FOOT } }]);
    const [first] = gaps(fan);
    // A fan of 12 ft poles, 1 ft to 5 ft 6 in at two-thirds: sin(θ/2) = 4.5/16, and the arc is longer than its chord.
    const half = Math.asin(4.5 / 16);
    const radius = (5.5 + 1 / 3 / Math.cos(half)) / (2 * Math.sin(half));
    const arc = radius * 2 * half - 2 * radius * Math.asin(1 / 6 / radius);
    expect(first?.measured).toBeCloseTo(arc * FOOT, 6);
    expect(arc).toBeGreaterThan(5.5 + 1 / 12);
    expect(first?.says).toMatch(
      /^Gaps 1 and 2 of the fan \(obstacle 1\) are 5' \d.*" along the line \(5' 6" by a straight tape\); a jog asks for/,
    );
  });

  test('the first fix of a fan is its own gap in the middle of the nearest band', () => {
    const fan = scene([{ kind: 'fan', at: [80, 50], values: { gap: 5.6 * FOOT } }]);
    const remedy = gaps(fan)[0]?.remedies[0];
    expect(remedy?.says).toMatch(/^Set the gaps of the fan \(obstacle 1\) to 6' 5.*" by the tape$/);
    const mended = remedy?.apply(fan);
    const [gap] = mended === undefined ? [] : survey(mended).line.gaps;
    // Two steps of 3 ft to 3 ft 6 in: 6 ft 6 in along the line, nearly: the tape is not the line.
    expect(Math.abs((gap?.ridden ?? 0) - 6.5 * FOOT)).toBeLessThan(INCH);
  });

  test('a multiple that is missed by less than a horse’s own spread is only noted', () => {
    // The usual spoke: 18 ft of arc from pole to pole, 17 ft 8¾ in inside to inside (common practice, no source).
    const spoke = scene([{ kind: 'spoke', at: [80, 50], leg: { gait: 'lope' } }]);
    expect(gaps(spoke).map(({ weight, members }) => [weight, members?.length])).toEqual([['note', 3]]);
    const [remedy] = gaps(spoke)[0]?.remedies ?? [];
    expect(remedy === undefined ? undefined : gaps(remedy.apply(spoke))).toEqual([]);
  });

  test('walk-overs wider than recommended are a should, narrower than allowed a must', () => {
    const walk = (gap: number) =>
      gaps(scene([{ kind: 'run', at: [80, 50], values: { gap: gap * INCH, gait: 'walk' } }]));
    expect(walk(22)).toEqual([]);
    expect(walk(27).map(({ weight, members }) => [weight, members?.length])).toEqual([['should', 3]]);
    expect(walk(27)[0]?.says).toBe(
      "Gaps 1 to 3 of the set of walk-overs (obstacle 1) are 2' 3\"; a walk is better with 1' 8\" to 2' or a whole multiple.",
    );
    expect(walk(18).map(({ weight, members }) => [weight, members?.length])).toEqual([['must', 3]]);
    expect(walk(18)[0]?.says).toContain('a walk asks for at least 1\' 8"');
    // A fix aims at what is recommended, which lies inside what is allowed.
    expect(walk(18)[0]?.remedies[0]?.says).toContain('to 1\' 10"');
    // A gap of 2 ft 6 in goes back to the usual one, not on to twice the least.
    const [first = '', second = ''] = walk(30)[0]?.remedies.map(({ says }) => says) ?? [];
    expect(first).toContain('to 1\' 10"');
    expect(second).toContain('to 3\' 8"');
  });

  test('a pole that was dragged is put back by building anew, or moved alone', () => {
    const run = scene([{ kind: 'run', at: [80, 50], values: { gap: 3 * FOOT } }]);
    const pole = run.layouts[0].obstacles[0]?.pieces[3];
    const dragged = placeAt(run, 'run-1/pole-4', { x: (80 + 6) * FOOT, y: 50 * FOOT, angle: Math.PI / 2 });
    expect(pole).toBeDefined();
    const found = gaps(dragged);
    expect(found.map(({ keys }) => keys)).toEqual([['run-1', 'run-1/pole-3', 'run-1/pole-4']]);
    expect(found[0]?.remedies.map(({ says }) => says)).toEqual([
      'Set the gaps of the set of jog-overs (obstacle 1) to 3\' 3"',
      'Set the gaps of the set of jog-overs (obstacle 1) to 6\' 6"',
      'Move pole 4 of the set of jog-overs (obstacle 1) so that the gap is 3\' 3"',
    ]);
  });

  test('a mirrored fan is judged like the fan', () => {
    const fan = scene([{ kind: 'fan', at: [80, 50], values: { gap: 5.5 * FOOT } }]);
    const measures = (course: typeof fan) => gaps(course).map(({ measured }) => measured?.toFixed(9));
    expect(measures(flipObstacles(fan, ['fan-1']))).toEqual(measures(fan));
  });

  test('a spoke is brought into its band by laying its poles closer to the marker or further off', () => {
    const spoke = scene([{ kind: 'spoke', at: [80, 50], values: { clear: 1.5 * FOOT }, leg: { gait: 'lope' } }]);
    // 4 arms: a quarter of the circle of R = 0.5 + 1.5 + 9 ft, less the half of each pole's 4 in that the arc lies in.
    const ridden = 11 * (Math.PI / 2 - 2 * Math.asin(1 / 6 / 11)) * FOOT;
    const [first] = gaps(spoke);
    expect(first?.measured).toBeCloseTo(ridden, 6);
    const [remedy] = first?.remedies ?? [];
    const after = remedy === undefined ? undefined : remedy.apply(spoke);
    expect(after?.layouts[0].obstacles[0]?.values.clear).not.toBe(1.5 * FOOT);
  });
});
