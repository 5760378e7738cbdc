import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { presentCourse } from '../../../src/core/course/history.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { turnHandle } from '../../../src/desk/gestures/turn-handle.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

const REACH = 0.3;

function poseOf(desk: Desk, id: string) {
  const obstacle = currentLayout(desk.state().course).obstacles.find((each) => each.id === id);
  if (obstacle === undefined) throw new Error(`no ${id}`);
  return obstacle.pose;
}

/** The middle of a piece on the ground. */
function middle(desk: Desk, key: string): readonly [number, number] {
  const piece = desk.state().survey.pieces.find((each) => each.key === key);
  if (piece === undefined) throw new Error(`no ${key}`);
  return [piece.pose.x, piece.pose.y];
}

function sure(desk: Desk): Desk {
  expectDeskInvariants(desk);
  return desk;
}

/** A pointer after each phase of which the whole desk is checked. */
function carefulHand(desk: Desk, options: { loose?: true; adding?: true; pointer?: number } = {}) {
  return pointerDriver(desk, { pickRadius: REACH, after: sure, ...options });
}

describe('a tap', () => {
  test('on a pole chooses its obstacle', () => {
    const desk = createDesk(threeObstacles());
    carefulHand(desk).tap(...middle(desk, 'fan-1/pole-1'));
    expect(desk.state().chosen).toEqual(['fan-1']);
    expect(desk.state().history.steps).toHaveLength(1);
  });

  test('that trembles less than a quarter of the reach is still a tap', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'run-1/pole-1');
    const course = desk.state().course;
    carefulHand(desk)
      .down(x, y)
      .move(x + REACH / 5, y)
      .up();
    expect(desk.state().course).toBe(course);
    expect(desk.state().chosen).toEqual(['run-1']);
  });

  test('beside a thin pole still finds it, within the reach and no farther', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'run-1/pole-1');
    const thickness = desk.state().survey.pieces[0]?.figure.width ?? 0;
    carefulHand(desk).tap(x - thickness / 2 - REACH * 0.9, y);
    expect(desk.state().chosen).toEqual(['run-1']);
    carefulHand(desk).tap(x - thickness / 2 - REACH * 1.5, y);
    expect(desk.state().chosen).toEqual([]);
  });

  test('on bare ground clears what is chosen', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'fan-1']);
    carefulHand(desk).tap(55, 25);
    expect(desk.state().chosen).toEqual([]);
  });

  test('with adding puts an obstacle in, and takes it out again', () => {
    const desk = createDesk(threeObstacles());
    carefulHand(desk).tap(...middle(desk, 'run-1/pole-1'));
    carefulHand(desk, { adding: true }).tap(...middle(desk, 'fan-1/pole-2'));
    expect(desk.state().chosen).toEqual(['run-1', 'fan-1']);
    carefulHand(desk, { adding: true }).tap(...middle(desk, 'run-1/pole-1'));
    expect(desk.state().chosen).toEqual(['fan-1']);
  });

  test('on a pole of the chosen obstacle goes into its pieces', () => {
    const desk = createDesk(threeObstacles());
    const at = middle(desk, 'run-1/pole-2');
    carefulHand(desk)
      .tap(...at)
      .tap(...at);
    expect(desk.state().chosen).toEqual(['run-1/pole-2']);
    carefulHand(desk).tap(...middle(desk, 'run-1/pole-3'));
    expect(desk.state().chosen).toEqual(['run-1/pole-3']);
  });
});

describe('a drag', () => {
  test('moves the obstacle under it by the way of the hand', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'fan-1/pole-1');
    const before = poseOf(desk, 'fan-1');
    carefulHand(desk, { loose: true }).drag([x, y], [x + 3.1, y - 2.3]);
    expect(poseOf(desk, 'fan-1').x).toBeCloseTo(before.x + 3.1, 8);
    expect(poseOf(desk, 'fan-1').y).toBeCloseTo(before.y - 2.3, 8);
    expect(desk.state().history.steps.at(-1)?.label).toBe('Move the fan (obstacle 2)');
  });

  test('moves everything that is chosen, and leaves the rest the same object', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'fan-1']);
    const spoke = currentLayout(desk.state().course).obstacles[2];
    const [run, fan] = [poseOf(desk, 'run-1'), poseOf(desk, 'fan-1')];
    const [x, y] = middle(desk, 'run-1/pole-1');
    carefulHand(desk, { loose: true }).drag([x, y], [x + 1.7, y + 0.4]);
    expect(poseOf(desk, 'run-1').x - run.x).toBeCloseTo(1.7, 8);
    expect(poseOf(desk, 'fan-1').x - fan.x).toBeCloseTo(1.7, 8);
    expect(currentLayout(desk.state().course).obstacles[2]).toBe(spoke);
  });

  test('shows on the way exactly the course that it leaves behind', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'fan-1/pole-1');
    const finger = pointerDriver(desk)
      .down(x, y)
      .move(x + 2, y);
    expect(desk.state().gesture).toBe('Moving the fan (obstacle 2)');
    const shown = desk.state().course;
    finger.up();
    expect(desk.state().course).toEqual(shown);
    expect(presentCourse(desk.state().history)).toBe(desk.state().course);
    expect(desk.state().gesture).toBeNull();
  });

  test('ends where the finger is lifted, even when no move told of it', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'fan-1/pole-1');
    const before = poseOf(desk, 'fan-1');
    const touch = { pointerId: 1, pickRadius: REACH, isAdding: false, isSnapOff: true };
    desk.pointer({ ...touch, phase: 'down', at: { x, y } });
    desk.pointer({ ...touch, phase: 'move', at: { x: x + 1, y } });
    desk.pointer({ ...touch, phase: 'up', at: { x: x + 2, y } });
    expect(poseOf(desk, 'fan-1').x).toBeCloseTo(before.x + 2, 8);
  });

  test('back to where it began is no step in the history', () => {
    const desk = createDesk(threeObstacles());
    const course = desk.state().course;
    const [x, y] = middle(desk, 'fan-1/pole-1');
    carefulHand(desk, { loose: true })
      .down(x, y)
      .move(x + 5, y)
      .move(x, y)
      .up();
    expect(desk.state().course).toBe(course);
    expect(desk.state().history.steps).toHaveLength(1);
  });

  test('takes hold between the poles of what is chosen', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const before = poseOf(desk, 'run-1');
    carefulHand(desk, { loose: true }).drag([15, 9], [18, 9]);
    expect(poseOf(desk, 'run-1').x).toBeCloseTo(before.x + 3, 8);
  });

  test('tells the distances from the same two walls when it is done, with what they were', () => {
    const desk = createDesk(threeObstacles());
    carefulHand(desk, { loose: true }).drag(middle(desk, 'run-1/pole-1'), [20, 9]);
    expect(desk.state().said).toMatch(
      /^Moved the set of jog-overs \(obstacle 1\): .+ from the west wall \(was 49' 2½"\), .+ from the south wall/,
    );
  });
});

describe('a rectangle pulled over the ground', () => {
  test('chooses what lies wholly inside', () => {
    const desk = createDesk(threeObstacles());
    carefulHand(desk).drag([8, 2], [40, 28]);
    expect(desk.state().chosen).toEqual(['run-1', 'fan-1']);
    expect(desk.state().history.steps).toHaveLength(1);
  });

  test('leaves out what is only partly inside', () => {
    const desk = createDesk(threeObstacles());
    const { maxX } = desk.state().survey.obstacles[1]?.bounds ?? { maxX: 0 };
    carefulHand(desk).drag([8, 2], [maxX - 0.1, 28]);
    expect(desk.state().chosen).toEqual(['run-1']);
  });

  test('is drawn while it is pulled, in either direction', () => {
    const desk = createDesk(threeObstacles());
    pointerDriver(desk).down(40, 28).move(8, 2);
    expect(desk.state().guides[0]?.marks).toHaveLength(1);
    expect(desk.state().chosen).toEqual(['run-1', 'fan-1']);
  });

  test('with adding keeps what was chosen', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['spoke-1']);
    carefulHand(desk, { adding: true }).drag([8, 2], [22, 17]);
    expect(desk.state().chosen).toEqual(['spoke-1', 'run-1']);
  });
});

describe('the turn handle', () => {
  test('stands outside the outline and turns about its middle', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const handle = turnHandle(desk.state(), REACH);
    if (handle === null) throw new Error('no handle');
    expect(handle.about).toEqual({ x: expect.closeTo(15, 6), y: expect.closeTo(9, 6), angle: undefined });
    const arm = handle.at.y - handle.about.y;
    carefulHand(desk).drag([handle.at.x, handle.at.y], [handle.about.x - arm, handle.about.y]);
    expect(poseOf(desk, 'run-1').angle).toBeCloseTo(Math.PI / 2, 8);
    expect(poseOf(desk, 'run-1').x).toBeCloseTo(15, 6);
    expect(desk.state().history.steps.at(-1)?.label).toBe('Turn the set of jog-overs (obstacle 1)');
  });

  test('snaps to whole steps of 15°, and loosely to none', () => {
    for (const loose of [false, true]) {
      const desk = createDesk(threeObstacles());
      desk.choose(['run-1']);
      const handle = turnHandle(desk.state(), REACH);
      if (handle === null) throw new Error('no handle');
      const arm = handle.at.y - handle.about.y;
      const asked = Math.PI / 2 + (Math.PI / 180) * 31;
      const to = [handle.about.x + arm * Math.cos(asked), handle.about.y + arm * Math.sin(asked)] as const;
      carefulHand(desk, loose ? { loose: true } : {}).drag([handle.at.x, handle.at.y], to);
      expect((poseOf(desk, 'run-1').angle * 180) / Math.PI).toBeCloseTo(loose ? 31 : 30, 6);
    }
  });
});

describe('a piece', () => {
  test('that is fixed stays, and says so', () => {
    const course = replaceLayout(threeObstacles(), (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((obstacle) => ({
        ...obstacle,
        pieces: obstacle.pieces.map((piece) => ({ ...piece, fixed: true as const })),
      })),
    }));
    const desk = createDesk(course);
    const [x, y] = middle(desk, 'run-1/pole-1');
    desk.choose(['run-1/pole-1']);
    carefulHand(desk)
      .down(x, y)
      .move(x + 2, y);
    expect(desk.state().said).toContain('is pinned');
    expect(desk.state().course).toBe(course);
    carefulHand(desk).up();
    expect(desk.state().course).toBe(course);
  });

  test('keeps the gaps of its obstacle while it is dragged', () => {
    const desk = createDesk(threeObstacles());
    const gaps = () =>
      desk
        .state()
        .survey.line.gaps.filter((gap) => gap.obstacle === 'run-1')
        .map((gap) => gap.taped);
    const before = gaps();
    desk.choose(['run-1/pole-1']);
    const [x, y] = middle(desk, 'run-1/pole-1');
    carefulHand(desk, { loose: true }).drag([x, y], [x - 1, y + 0.5]);
    const [endX, endY] = middle(desk, 'run-1/pole-1');
    expect([endX, endY]).toEqual([expect.closeTo(x - 1, 3), expect.closeTo(y + 0.5, 3)]);
    expect(before).toHaveLength(3);
    gaps().forEach((gap, index) => {
      expect(gap).toBeCloseTo(before[index] ?? Number.NaN, 5);
    });
  });
});

describe('letting go of a gesture', () => {
  const GESTURES: readonly (readonly [string, (desk: Desk) => readonly (readonly [number, number])[]])[] = [
    ['a tap', (desk) => [middle(desk, 'fan-1/pole-1')]],
    ['a drag of an obstacle', (desk) => [middle(desk, 'fan-1/pole-1'), [32, 15], [12, 8]]],
    [
      'a drag of a piece',
      (desk) => {
        desk.choose(['run-1/pole-1']);
        const [x, y] = middle(desk, 'run-1/pole-1');
        return [
          [x, y],
          [x + 0.5, y],
          [x + 1, y + 1],
        ];
      },
    ],
    [
      'a turn',
      (desk) => {
        desk.choose(['run-1']);
        const at = turnHandle(desk.state(), REACH)?.at ?? { x: 0, y: 0 };
        return [
          [at.x, at.y],
          [at.x - 1, at.y - 0.3],
          [at.x - 2, at.y - 1],
        ];
      },
    ],
    [
      'a rectangle',
      () => [
        [8, 2],
        [20, 16],
        [40, 28],
      ],
    ],
  ];
  const WAYS = {
    'the Escape key': (desk: Desk) => pointerDriver(desk).press('Escape'),
    'a cancelled pointer': (desk: Desk) => pointerDriver(desk).cancel(),
    'a second finger': (desk: Desk) => pointerDriver(desk, { pointer: 2 }).down(1, 1),
    undo: (desk: Desk) => pointerDriver(desk).press('Ctrl+z'),
  };

  for (const [name, path] of GESTURES) {
    for (const [way, letGo] of Object.entries(WAYS)) {
      test(`${name}, by ${way}, at every step leaves the same object`, () => {
        const steps = path(createDesk(threeObstacles())).length;
        for (let upTo = 1; upTo <= steps; upTo += 1) {
          const desk = createDesk(threeObstacles());
          const points = path(desk);
          const before = desk.state();
          const finger = carefulHand(desk);
          for (const [index, [x, y]] of points.slice(0, upTo).entries()) {
            if (index === 0) finger.down(x, y);
            else finger.move(x, y);
          }
          letGo(desk);
          sure(desk);
          expect(desk.state().course).toBe(before.course);
          expect(desk.state().history).toBe(before.history);
          expect(desk.state().chosen).toBe(before.chosen);
          expect(desk.state().guides).toEqual([]);
          // The finger that is still down does nothing more.
          finger.move(50, 20).up();
          expect(desk.state().course).toBe(before.course);
          expect(desk.state().chosen).toBe(before.chosen);
        }
      });
    }
  }

  test('after a pinch a new finger works again', () => {
    const desk = createDesk(threeObstacles());
    const [x, y] = middle(desk, 'fan-1/pole-1');
    const first = pointerDriver(desk).down(x, y);
    const second = pointerDriver(desk, { pointer: 2 }).down(1, 1);
    first.up();
    pointerDriver(desk, { pointer: 3 })
      .down(x, y)
      .move(x + 3, y)
      .up();
    expect(desk.state().history.steps, 'one finger of the pinch is still down').toHaveLength(1);
    second.up();
    pointerDriver(desk).drag([x, y], [x + 3, y]);
    expect(desk.state().history.steps).toHaveLength(2);
  });
});
