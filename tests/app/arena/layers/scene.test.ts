import { expect, test } from 'vitest';
import { movedBy } from '../../../../src/app/arena/layers/scene.ts';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import { point } from '../../../../src/core/plane/point.ts';
import type { Desk } from '../../../../src/desk/desk.ts';
import { createDesk } from '../../../../src/desk/editor.ts';
import type { PointerInput } from '../../../../src/desk/input.ts';

function pointer(desk: Desk, phase: PointerInput['phase'], x: number): void {
  desk.pointer({ phase, pointerId: 1, at: point(x, 20), pickRadius: 0.5, isAdding: false, isSnapOff: true });
}

function twoFans(): Desk {
  const desk = createDesk(blankCourse());
  desk.place('fan', {}, point(20, 20));
  desk.place('fan', {}, point(40, 20));
  desk.choose([]);
  return desk;
}

test('at rest nothing has moved', () => {
  const desk = twoFans();
  const { moved, resting } = movedBy(desk.state(), null);
  expect(moved.size).toBe(0);
  expect(resting).toBe(desk.state().survey);
});

test('a drag moves what is dragged and nothing else, and the answer stays the same object while it goes on', () => {
  const desk = twoFans();
  const before = movedBy(desk.state(), null);
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  const first = movedBy(desk.state(), movedBy(desk.state(), before));
  expect([...first.moved]).toEqual(['fan-1']);
  expect(first.resting).toBe(before.resting);
  pointer(desk, 'move', 26);
  expect(movedBy(desk.state(), first)).toBe(first);
});

test('after the drag, and after one that was cancelled, nothing has moved', () => {
  const desk = twoFans();
  for (const end of [() => pointer(desk, 'up', 25), () => desk.cancel()]) {
    let moved = movedBy(desk.state(), null);
    pointer(desk, 'down', 20);
    pointer(desk, 'move', 25);
    moved = movedBy(desk.state(), moved);
    expect(moved.moved.size).toBe(1);
    end();
    moved = movedBy(desk.state(), moved);
    expect(moved.moved.size).toBe(0);
    expect(moved.resting).toBe(desk.state().survey);
    desk.undo();
  }
});
