import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { approachSamples } from '../../../src/desk/gestures/bend.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

/** The middle of the way from the run to the fan. */
function onTheWay(desk: Desk): readonly [number, number] {
  const samples = approachSamples(desk.state().survey, 1);
  const at = samples[Math.floor(samples.length / 2)];
  if (at === undefined) throw new Error('no way');
  return [at.x, at.y];
}

function bends(desk: Desk) {
  return currentLayout(desk.state().course).ride.legs[1]?.bends ?? [];
}

function riding(): Desk {
  const desk = createDesk(threeObstacles());
  desk.switchStage('ride');
  return desk;
}

describe('the line', () => {
  test('dragged in the Ride stage is pulled through a bend', () => {
    const desk = riding();
    const [x, y] = onTheWay(desk);
    pointerDriver(desk, { after: expectDeskInvariants }).drag([x, y], [x, y + 3]);
    expect(bends(desk)).toEqual([{ x: expect.closeTo(x, 8), y: expect.closeTo(y + 3, 8) }]);
    expect(desk.state().chosen).toEqual(['bend:leg-2:0']);
    const passes = approachSamples(desk.state().survey, 1).some((at) => Math.hypot(at.x - x, at.y - y - 3) < 0.3);
    expect(passes, 'the line goes through the bend').toBe(true);
  });

  test('dragged in the Set stage stays: a rectangle is pulled instead', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = onTheWay(desk);
    pointerDriver(desk).drag([x, y], [x, y + 3]);
    expect(bends(desk)).toEqual([]);
  });

  test('tapped is not bent', () => {
    const desk = riding();
    pointerDriver(desk).tap(...onTheWay(desk));
    expect(bends(desk)).toEqual([]);
  });

  test('keeps its bends in the order in which it passes them', () => {
    const desk = riding();
    const [x, y] = onTheWay(desk);
    pointerDriver(desk).drag([x, y], [x, y + 1]);
    const samples = approachSamples(desk.state().survey, 1);
    const early = samples[Math.floor(samples.length / 5)] ?? { x: 0, y: 0 };
    pointerDriver(desk).drag([early.x, early.y], [early.x, early.y - 1]);
    expect(bends(desk).map((bend) => bend.y)).toEqual([expect.closeTo(early.y - 1, 6), expect.closeTo(y + 1, 6)]);
    expect(desk.state().chosen).toEqual(['bend:leg-2:0']);
  });
});

describe('a bend', () => {
  test('is moved by dragging it and taken out by erasing it; undo brings the same line back', () => {
    const desk = riding();
    const [x, y] = onTheWay(desk);
    pointerDriver(desk).drag([x, y], [x, y + 3]);
    const bent = desk.state().course;
    pointerDriver(desk, { after: expectDeskInvariants }).drag([x, y + 3], [x + 1, y + 2]);
    expect(bends(desk)).toEqual([{ x: expect.closeTo(x + 1, 8), y: expect.closeTo(y + 2, 8) }]);
    desk.erase();
    expect(bends(desk)).toEqual([]);
    expect(desk.state().history.steps.at(-1)?.label).toBe('Delete a bend');
    desk.undo();
    desk.undo();
    expect(desk.state().course).toBe(bent);
  });
});

describe('the start of the go', () => {
  test('goes where its place and heading are typed', () => {
    const desk = riding();
    const { start } = currentLayout(desk.state().course).ride;
    expect(desk.setPose('ride:start', 'x', '5 m')).toBeUndefined();
    expect(desk.setPose('ride:start', 'angle', '90')).toBeUndefined();
    expect(currentLayout(desk.state().course).ride.start).toEqual({ x: 5, y: start.y, angle: Math.PI / 2 });
  });

  test('is turned by the key that turns everything', () => {
    const desk = riding();
    const { start } = currentLayout(desk.state().course).ride;
    desk.choose(['ride:start']);
    desk.turn(Math.PI / 12);
    desk.turn(Math.PI / 12);
    expectDeskInvariants(desk);
    expect(currentLayout(desk.state().course).ride.start).toEqual({ ...start, angle: expect.closeTo(Math.PI / 6, 9) });
    expect(desk.state().said).toBe('Turned the start: heading 30° (was 15°)');
    expect(desk.state().history.steps).toHaveLength(2);
  });

  test('is moved by dragging it, and cannot be deleted', () => {
    const desk = riding();
    const { start } = currentLayout(desk.state().course).ride;
    pointerDriver(desk, { after: expectDeskInvariants }).drag([start.x, start.y], [start.x + 2, start.y + 1]);
    const moved = currentLayout(desk.state().course).ride.start;
    expect(moved).toEqual({ ...start, x: expect.closeTo(start.x + 2, 8), y: expect.closeTo(start.y + 1, 8) });
    const { course } = desk.state();
    desk.erase();
    expect(desk.state().course).toBe(course);
    expect(desk.state().said).toBe('The start cannot be deleted');
  });
});
