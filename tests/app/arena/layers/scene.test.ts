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

test('a drag leaves what of the line it does not change on the still canvas; at rest nothing is on it', () => {
  const desk = twoFans();
  desk.place('fan', {}, point(60, 20));
  desk.place('fan', {}, point(80, 20));
  desk.choose([]);
  const before = movedBy(desk.state(), null);
  expect(before.stillParts.size).toBe(0);
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 21);
  const first = movedBy(desk.state(), movedBy(desk.state(), before));
  const now = new Set<unknown>(desk.state().survey.line.elements.map(({ path }) => path));
  const atRest = before.resting.line.elements;
  expect(atRest.filter(({ path }) => first.stillParts.has(path))).toEqual(atRest.filter(({ path }) => now.has(path)));
  const legs = new Set(atRest.filter(({ path }) => first.stillParts.has(path)).map(({ leg }) => leg));
  expect(legs.has(0)).toBe(false);
  expect(legs.has(3)).toBe(true);
  const stillGaps = before.resting.line.gaps.filter(({ ends }) => first.stillParts.has(ends));
  expect(new Set(stillGaps.map(({ obstacle }) => obstacle))).toEqual(new Set(['fan-2', 'fan-3', 'fan-4']));
  pointer(desk, 'up', 21);
  expect(movedBy(desk.state(), first).stillParts.size).toBe(0);
});

test('a part of the line that a drag has changed once stays off the still canvas until the end', () => {
  const desk = twoFans();
  let moved = movedBy(desk.state(), null);
  pointer(desk, 'down', 20);
  for (const x of [22, 20]) {
    pointer(desk, 'move', x);
    moved = movedBy(desk.state(), moved);
  }
  expect(moved.resting.line.elements.some(({ leg, path }) => leg === 0 && moved.stillParts.has(path))).toBe(false);
});
