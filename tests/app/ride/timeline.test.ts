import { describe, expect, test } from 'vitest';
import { feetAt } from '../../../src/app/ride/feet.ts';
import { leadAt, momentAt } from '../../../src/app/ride/moment.ts';
import { timelineOf } from '../../../src/app/ride/timeline.ts';
import { ridePositionAt } from '../../../src/core/ride/playing.ts';
import { survey } from '../../../src/core/survey.ts';
import { printsOf } from '../../../src/core/survey-prints.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

const surveyed = survey(threeObstacles());
const { line } = surveyed;

describe('a go that is played', () => {
  test('stops once at each landing, from the start to the end', () => {
    const { cuePoints: stops, duration: whole } = timelineOf(line);
    expect(whole).toBe(line.clock.go);
    expect(stops[0]).toBe(0);
    expect(stops.at(-1)).toBeCloseTo(whole, 9);
    for (const [i, stop] of stops.entries()) if (i > 0) expect(stop).toBeGreaterThan(stops[i - 1] ?? 0);
    for (const gap of line.gaps) {
      for (const { at } of gap.landings.places) {
        const near = stops.map((stop) => Math.abs((ridePositionAt(line, stop)?.at ?? -9) - at));
        expect(Math.min(...near)).toBeLessThan(0.1);
      }
    }
  });

  test('is told by gait, lead and number', () => {
    expect(momentAt(surveyed, 0)?.where).toBe('to number 1, Jog-overs');
    const over = line.elements.find((element) => element.part === 'obstacle' && element.leg === 1);
    const time = line.clock.legs[0] ?? 0;
    expect(over).toBeDefined();
    expect(momentAt(surveyed, time + 0.01)?.where).toMatch(/^to number 2, Fan/);
  });

  test('has a lead only where it is loped', () => {
    for (const element of line.elements) {
      if (element.gait !== 'lope') expect(leadAt(line, element, element.from)).toBeNull();
    }
  });
});

test('a foot on the ground stands on one of its prints, and stays there', () => {
  const prints = printsOf(surveyed);
  let down = 0;
  for (let time = 2; time < line.clock.go - 2; time += 0.37) {
    const riding = ridePositionAt(line, time);
    if (riding === undefined) throw new Error('no line');
    const feet = feetAt(prints, time, { pose: riding.pose, horse: surveyed.horse });
    expect(feet.map(({ foot }) => foot)).toEqual(['LH', 'LF', 'RH', 'RF']);
    for (const { foot, point, isDown } of feet) {
      expect(Math.hypot(point.x - riding.pose.x, point.y - riding.pose.y)).toBeLessThan(3);
      const onPrint = prints.some((each) => each.foot === foot && each.point === point);
      const near = prints.some(
        (each) => each.foot === foot && Math.hypot(each.point.x - point.x, each.point.y - point.y) < 1e-9,
      );
      if (isDown && (onPrint || near)) down += 1;
    }
  }
  expect(down).toBeGreaterThan(50);
});
