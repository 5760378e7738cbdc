import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { editCurrentLayout, replaceLayout } from '../../../src/core/course/layouts.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

/** The first pole of the run is kept at the distance from the south wall at which it lies. */
function walled(): Course {
  const hold = 9 - 3.6576 / 2;
  return replaceLayout(threeObstacles(), (layout) => ({
    ...layout,
    constraints: [
      {
        id: 'off-wall-1',
        kind: 'off-wall',
        grips: [{ piece: 'run-1/pole-1', at: 0 }, { wall: 'south' }],
        hold,
      },
    ],
  }));
}

function withFixedPole(): Course {
  return editCurrentLayout(threeObstacles(), ({ obstacles }) => {
    const pole = obstacles.find(({ id }) => id === 'run-1')?.pieces.find(({ id }) => id === 'pole-1');
    if (pole !== undefined) pole.fixed = true;
  });
}

function pole(desk: Desk, key: string) {
  const found = desk.state().survey.pieces.find((piece) => piece.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found.pose;
}

describe('what is held to a wall', () => {
  test('keeps its distance while its obstacle is dragged, and goes along the wall with the hand', () => {
    const desk = createDesk(walled());
    const before = pole(desk, 'run-1/pole-1');
    pointerDriver(desk, { loose: true, after: expectDeskInvariants }).drag(
      [before.x, before.y],
      [before.x + 3, before.y + 2],
    );
    const after = pole(desk, 'run-1/pole-1');
    // What is held is the near corner of the end: the middle may give by a hair when the pole turns.
    expect(Math.abs(after.y - before.y)).toBeLessThan(0.001);
    expect(after.x).toBeCloseTo(before.x + 3, 2);
  });

  test('keeps it against the arrow keys too', () => {
    const desk = createDesk(walled());
    desk.choose(['run-1']);
    const before = pole(desk, 'run-1/pole-1');
    desk.nudge(0.5, 0.5);
    expect(Math.abs(pole(desk, 'run-1/pole-1').y - before.y)).toBeLessThan(0.001);
  });

  test('lets other obstacles go where they like', () => {
    const desk = createDesk(walled());
    const run = currentLayout(desk.state().course).obstacles[0];
    desk.choose(['fan-1']);
    desk.nudge(1, 1);
    const [same, fan] = currentLayout(desk.state().course).obstacles;
    expect(same).toBe(run);
    expect(fan?.pose).toEqual({ x: 31, y: 21, angle: 0 });
  });
});

describe('an obstacle with a fixed pole', () => {
  test('is not carried off by a drag, and the desk says why', () => {
    const desk = createDesk(withFixedPole());
    const { course } = desk.state();
    const [x, y] = [pole(desk, 'run-1/pole-2').x, pole(desk, 'run-1/pole-2').y];
    pointerDriver(desk, { loose: true, after: expectDeskInvariants }).drag([x, y], [x + 3, y + 2]);
    expect(desk.state().course).toBe(course);
    expect(desk.state().said).toMatch(/^The set of jog-overs \(obstacle 1\) does not move: a pinned piece/);
  });
});
