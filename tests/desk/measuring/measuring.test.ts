import { describe, expect, test } from 'vitest';
import * as checks from '../../../src/core/checks/checks.ts';
import { currentLayout } from '../../../src/core/course/course.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { keyPressFor, pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

function middle(desk: Desk, key: string): readonly [number, number] {
  const found = desk.state().survey.pieces.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return [found.pose.x, found.pose.y];
}

function measuring(): Desk {
  const desk = createDesk(threeObstacles());
  desk.measure();
  return desk;
}

describe('the tape in the hand', () => {
  test('is laid by pressing one pole and then another: inside to inside, and how they lie', () => {
    const desk = measuring();
    const it = pointerDriver(desk, { after: expectDeskInvariants });
    it.tap(...middle(desk, 'run-1/pole-1'));
    expect(desk.state()).toMatchObject({ tapeReading: null, tape: { isLaid: false } });
    it.tap(...middle(desk, 'run-1/pole-2'));
    expect(desk.state().tapeReading).toMatchObject({ text: `3'`, angle: 0 });
    expect(desk.state().tapeReading?.length).toBeCloseTo(3 * FOOT, 9);
    expect(desk.state().said).toBe(
      `3' from pole 1 of the set of jog-overs (obstacle 1) to pole 2 of the set of jog-overs (obstacle 1), inside to inside, parallel`,
    );
  });

  test('is laid by one drag too, and touches nothing of the course', () => {
    const desk = measuring();
    const { course } = desk.state();
    pointerDriver(desk, { after: expectDeskInvariants }).drag(
      middle(desk, 'run-1/pole-1'),
      middle(desk, 'run-1/pole-3'),
    );
    expect(desk.state().tapeReading?.text).toBe(`6' 4"`);
    expect(desk.state().course).toBe(course);
    expect(desk.state().history.steps).toHaveLength(1);
  });

  test('measures between two places on the ground as the crow flies', () => {
    const desk = measuring();
    pointerDriver(desk).drag([20, 2], [23, 6]);
    expect(desk.state().tapeReading?.length).toBeCloseTo(5, 9);
    expect(desk.state().tapeReading?.suggestion).toBeNull();
  });

  test('measures a pole to a wall square to the wall, and offers to keep it', () => {
    const desk = measuring();
    const [x, y] = middle(desk, 'run-1/pole-1');
    pointerDriver(desk).tap(x, y).tap(x, 0.1);
    expect(desk.state().tapeReading?.length).toBeCloseTo(9 - 6 * FOOT, 9);
    expect(desk.state().suggestion?.says).toMatch(/off the south wall$/);
    pointerDriver(desk).press('k');
    expect(currentLayout(desk.state().course).constraints).toMatchObject([{ kind: 'off-wall' }]);
  });

  test('shows where it would end while a mouse hovers', () => {
    const desk = measuring();
    const it = pointerDriver(desk);
    it.tap(20, 2).move(23, 6);
    expect(desk.state().tapeReading?.length).toBeCloseTo(5, 9);
    it.move(20, 7);
    expect(desk.state().tapeReading?.length).toBeCloseTo(5, 9);
    it.tap(20, 6);
    expect(desk.state()).toMatchObject({ tapeReading: { length: expect.closeTo(4, 9) }, tape: { isLaid: true } });
  });

  test('is put away by Escape, and by going to another stage', () => {
    const desk = measuring();
    pointerDriver(desk).tap(20, 2).press('Escape');
    expect(desk.state()).toMatchObject({ tape: null, tapeReading: null, said: 'Put the tape away' });
    desk.measure();
    desk.switchStage('ride');
    expect(desk.state().tape).toBeNull();
  });

  test('forgets a press that became a pinch or was taken away', () => {
    const desk = measuring();
    const before = desk.state().tape;
    pointerDriver(desk, { pointer: 1 }).down(20, 2);
    pointerDriver(desk, { pointer: 2 }).down(25, 2);
    pointerDriver(desk, { pointer: 1 }).move(22, 2).up();
    pointerDriver(desk, { pointer: 2 }).up();
    expect(desk.state().tape).toEqual(before);
    pointerDriver(desk).down(20, 2).cancel();
    expect(desk.state().tape).toEqual(before);
  });

  test('is wound up when what it held to is taken away', () => {
    const desk = measuring();
    pointerDriver(desk).drag(middle(desk, 'run-1/pole-1'), middle(desk, 'run-1/pole-2'));
    desk.choose(['run-1']);
    desk.erase();
    expect(desk.state()).toMatchObject({ tapeReading: null, tape: { from: null, to: null } });
  });
});

describe('the keyboard twin of the tape', () => {
  test('is T with two things chosen: it is laid between them at once', () => {
    const desk = createDesk(threeObstacles());
    pointerDriver(desk).press('Tab').press('Enter').press('n').press('t');
    expect(desk.state().tapeReading?.text).toBe(`3'`);
    pointerDriver(desk).press('Escape').press('Shift+n').press('t');
    expect(desk.state().tapeReading?.text).toBe(`6' 4"`);
    pointerDriver(desk).press('t');
    expect(desk.state().tape).toBeNull();
  });

  test('keeps what it reads by K', () => {
    const desk = createDesk(threeObstacles());
    expect(desk.press(keyPressFor('k')), 'nothing is offered').toBe(false);
    pointerDriver(desk).press('Tab').press('Enter').press('n').press('Shift+n').press('t').press('k');
    expect(currentLayout(desk.state().course).constraints).toMatchObject([
      { kind: 'gap', grips: [{ piece: 'run-1/pole-1' }, { piece: 'run-1/pole-3' }] },
    ]);
    expect(desk.state().suggestion).toBeNull();
  });

  test('adds pieces of other obstacles after the last of one', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-4']);
    pointerDriver(desk).press('n');
    expect(desk.state().chosen).toEqual(['run-1/pole-4', 'fan-1/pole-1']);
  });
});

describe('what a snap found', () => {
  function snapped(): Desk {
    // How far a wall is kept off is asked for by the rule book, which comes with the checks.
    const desk = createDesk(threeObstacles(), checks);
    const [x, y] = middle(desk, 'run-1/pole-1');
    // Down to where its ends are a hair over 2 ft off the south wall.
    pointerDriver(desk, { after: expectDeskInvariants }).drag([x, y], [x + 0.37, 8 * FOOT + 0.1]);
    return desk;
  }

  test('is offered to be kept after the drag, and kept by K', () => {
    const desk = snapped();
    expect(desk.state().suggestion?.says).toBe(`Keep it 2' off the south wall`);
    const { obstacles } = currentLayout(desk.state().course);
    pointerDriver(desk).press('k');
    expect(desk.state().suggestion).toBeNull();
    expect(currentLayout(desk.state().course).obstacles).toBe(obstacles);
    expect(currentLayout(desk.state().course).constraints).toMatchObject([
      { kind: 'off-wall', hold: expect.closeTo(2 * FOOT, 9) },
    ]);
  });

  test('is forgotten when something else is done, and nothing is kept', () => {
    const desk = snapped();
    desk.choose([]);
    expect(desk.state().suggestion).toBeNull();
    expect(currentLayout(desk.state().course).constraints).toEqual([]);
    const other = snapped();
    other.dismiss();
    expect(other.state().suggestion).toBeNull();
  });

  test('is not offered after a loose drag, nor when it is kept already', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'run-1/pole-1');
    pointerDriver(desk, { loose: true }).drag([x, y], [x, 8 * FOOT]);
    expect(desk.state().suggestion).toBeNull();
    const kept = snapped();
    pointerDriver(kept).press('k');
    const at = middle(kept, 'run-1/pole-1');
    pointerDriver(kept).drag(at, [at[0] + 1.1, at[1]]);
    expect(kept.state().suggestion?.says ?? '').not.toContain('south');
  });
});
