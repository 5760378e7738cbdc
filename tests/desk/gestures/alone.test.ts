import { describe, expect, test } from 'vitest';
import * as checker from '../../../src/core/checks/checks.ts';
import { presentCourse } from '../../../src/core/course/history.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

const POLE = 'run-1/pole-2';

function place(desk: Desk, key: string) {
  const piece = desk.state().survey.pieces.find((each) => each.key === key);
  if (piece === undefined) throw new Error(`no ${key}`);
  return piece.pose;
}

function poleChosen(): Desk {
  const desk = createDesk(threeObstacles());
  desk.choose([POLE]);
  return desk;
}

/** Where every piece of the run but one lies. */
function others(desk: Desk) {
  return desk
    .state()
    .survey.pieces.filter((each) => each.obstacle === 'run-1' && each.key !== POLE)
    .map(({ pose }) => [pose.x, pose.y]);
}

describe('one pole of a run', () => {
  test('says before and in a drag that others move along', () => {
    const desk = poleChosen();
    expect(desk.state().along).toMatch(/^Moves all \d poles: what is kept between them stays$/);
    const { x, y } = place(desk, POLE);
    const before = others(desk);
    pointerDriver(desk, { loose: true })
      .down(x, y)
      .move(x + 1, y)
      .move(x + 2, y);
    expect(desk.state().along).toMatch(/^Moves /);
    expect(others(desk)).not.toEqual(before);
  });

  test('moved alone leaves the others, in one step, and says what gave way', () => {
    const desk = poleChosen();
    const { x, y } = place(desk, POLE);
    const before = others(desk);
    desk.toggleAlone();
    pointerDriver(desk, { loose: true, after: expectDeskInvariants }).drag([x, y], [x + 0.3, y]);
    expect(others(desk)).toEqual(before);
    expect(place(desk, POLE).x).toBeCloseTo(x + 0.3, 6);
    expect(desk.state().said).toMatch(/Just this one: Gap.* now .* \(was /);
    expect(desk.state().history.present).toBe(1);
    desk.undo();
    expect(place(desk, POLE).x).toBeCloseTo(x, 9);
  });

  test('becomes alone in the middle of a drag, and again not', () => {
    const desk = poleChosen();
    const { x, y } = place(desk, POLE);
    const before = others(desk);
    const hand = pointerDriver(desk, { loose: true });
    hand
      .down(x, y)
      .move(x + 1, y)
      .move(x + 2, y)
      .press('j');
    expect(others(desk)).toEqual(before);
    hand.press('j');
    expect(others(desk)).not.toEqual(before);
    hand.press('j').up();
    expect(others(desk)).toEqual(before);
  });

  test('is moved alone after a drag that took the others along, in the same step', () => {
    const desk = poleChosen();
    const { x, y } = place(desk, POLE);
    const before = others(desk);
    pointerDriver(desk, { loose: true }).drag([x, y], [x + 2, y]);
    expect(desk.state().canRedoAlone).toBe(true);
    expect(others(desk)).not.toEqual(before);
    desk.toggleAlone();
    expect(others(desk)).toEqual(before);
    expect(place(desk, POLE).x).toBeCloseTo(x + 2, 6);
    expect(desk.state().history.present).toBe(1);
    desk.undo();
    expect(presentCourse(desk.state().history).title).toBe(threeObstacles().title);
    expect(place(desk, POLE).x).toBeCloseTo(x, 9);
  });

  test('is nudged alone by the keyboard, and only while it is chosen', () => {
    const desk = poleChosen();
    const before = others(desk);
    pointerDriver(desk).press('j').press('ArrowRight');
    expect(others(desk)).toEqual(before);
    desk.choose(['run-1/pole-1']);
    expect(desk.state().isAlone).toBe(false);
  });
});

describe('the ends of the go', () => {
  test('are dragged at the Set stage, stay inside the walls, and the set end is taken away again', () => {
    const desk = createDesk(threeObstacles());
    const { ride } = desk.state().survey.layout;
    const hand = pointerDriver(desk, { pickRadius: 0.2, after: expectDeskInvariants });
    hand.drag([ride.start.x, ride.start.y], [-4, 9]);
    expect(desk.state().survey.layout.ride.start).toMatchObject({ x: 0, y: expect.closeTo(9, 6) });
    expect(desk.state().said).toMatch(/^Moved the start: /);
    desk.choose(['ride:end']);
    desk.nudge(1, 0);
    expect(desk.state().survey.layout.ride.end).toBeDefined();
    desk.erase();
    expect(desk.state().survey.layout.ride.end).toBeUndefined();
  });
});

describe('another arena', () => {
  test('takes the way in and the start along, names what no longer fits, and is one step', () => {
    const desk = createDesk(threeObstacles(), checker);
    const { arena } = desk.state().course;
    const far = Math.max(...desk.state().survey.obstacles.map(({ bounds }) => bounds.maxX));
    desk.changeArena({ length: far - 1, width: arena.width / 2 });
    const now = desk.state().course.arena;
    expect(now.entrance.at).toBeCloseTo(arena.entrance.at / 2, 6);
    expect(desk.state().said).toMatch(/^The arena is now .*\. .* no longer fits?$/);
    expect(desk.state().history.present).toBe(1);
    desk.undo();
    expect(desk.state().course.arena).toBe(arena);
  });

  test('with its way in on another wall starts there', () => {
    const desk = createDesk(threeObstacles());
    desk.edit('start at the way in', (course) => ({
      ...course,
      layouts: [
        {
          ...course.layouts[0],
          ride: { ...course.layouts[0].ride, start: { x: 3, y: course.arena.entrance.at, angle: 0 } },
        },
      ],
    }));
    const { arena } = desk.state().course;
    desk.changeArena({ entrance: { ...arena.entrance, wall: 'east' } });
    const { start } = desk.state().survey.layout.ride;
    expect(start.x).toBeCloseTo(arena.length - 3, 6);
    expect(Math.abs(start.angle)).toBeCloseTo(Math.PI, 6);
  });
});

describe('snapping', () => {
  test('is switched off and on, and the held key does the other', () => {
    const desk = createDesk(threeObstacles());
    const drags = (loose: boolean) => {
      const { bounds } = desk.state().survey.obstacles.find(({ obstacle }) => obstacle.id === 'spoke-1') ?? {};
      if (bounds === undefined) throw new Error('no spoke');
      const [x, y] = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
      desk.choose(['spoke-1']);
      const hand = pointerDriver(desk, loose ? { loose: true } : {});
      hand
        .down(x, y)
        .move(x + 1, y)
        .move(x + 0.04, y + 0.04);
      const { length } = desk.state().guides;
      hand.cancel();
      return length;
    };
    const on = drags(false);
    desk.toggleSnaps();
    const off = drags(false);
    expect([drags(true), drags(false)]).toEqual([on, off]);
    expect(off).toBe(0);
  });
});
