import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type IdleTime, PACES, pacedDesk } from '../../src/app/paced-desk.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import { point } from '../../src/core/plane/point.ts';
import type { Desk } from '../../src/desk/desk.ts';
import { createDesk } from '../../src/desk/editor.ts';
import type { PointerInput } from '../../src/desk/input.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function pointer(desk: Desk, phase: PointerInput['phase'], x: number): void {
  desk.pointer({ phase, pointerId: 1, at: point(x, 20), pickRadius: 0.5, isAdding: false, isSnapOff: true });
}

/** A desk with one fan at x = 20, and a page that listens at a pace; `idle` gives it the browser's idle time. */
function dragged(pace: keyof typeof PACES) {
  const desk = createDesk(blankCourse());
  desk.place('fan', {}, point(20, 20));
  desk.choose([]);
  let waiting: (() => void) | null = null;
  const asked: number[] = [];
  const whenIdle: IdleTime = (run, needed) => {
    waiting = run;
    asked.push(needed);
    return () => {
      waiting = null;
    };
  };
  const page = pacedDesk(desk, PACES[pace], whenIdle);
  const seen: (number | undefined)[] = [];
  const shownX = () => page.state().course.layouts[0]?.obstacles[0]?.pose.x;
  page.subscribe(() => seen.push(shownX()));
  return { desk, page, seen, shownX, asked, idle: () => waiting?.() };
}

test('at rest the page hears of a change at once', () => {
  const { desk, page } = dragged('following');
  desk.choose(['fan-1']);
  expect(page.state()).toBe(desk.state());
});

test('a drag does not wait for the page, which is true at its end', () => {
  const { desk, page, seen } = dragged('following');
  pointer(desk, 'down', 20);
  const before = seen.length;
  for (let x = 21; x < 30; x += 1) {
    pointer(desk, 'move', x);
    vi.advanceTimersByTime(16);
  }
  expect(seen.length).toBe(before);
  pointer(desk, 'up', 30);
  expect(page.state()).toBe(desk.state());
  expect(seen.at(-1)).toBeCloseTo(30);
});

test('the page follows a hand that rests in a drag', () => {
  const { desk, shownX } = dragged('following');
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  expect(shownX()).toBeCloseTo(20);
  vi.advanceTimersByTime(PACES.following.inGesture.still);
  expect(shownX()).toBeCloseTo(25);
});

test('a hand that does not rest is followed when the browser has time, and not before a second is over', () => {
  const { desk, shownX, idle } = dragged('following');
  pointer(desk, 'down', 20);
  for (let i = 0; i < 40; i += 1) {
    pointer(desk, 'move', 25 + i / 100);
    vi.advanceTimersByTime(16);
  }
  idle();
  expect(shownX()).toBeCloseTo(20);
  for (let i = 40; i < 80; i += 1) {
    pointer(desk, 'move', 25 + i / 100);
    vi.advanceTimersByTime(16);
  }
  expect(shownX()).toBeCloseTo(20);
  idle();
  expect(shownX()).toBeCloseTo(25.79);
});

test('the page asks for as much idle time as it took to follow last; until it knows, for more than there is', async () => {
  const { desk, page, asked } = dragged('following');
  page.subscribe(() => vi.advanceTimersByTime(7));
  const goOnMoving = () => {
    for (let i = 0; i < 80; i += 1) {
      pointer(desk, 'move', 25 + i / 100);
      vi.advanceTimersByTime(16);
    }
  };
  pointer(desk, 'down', 20);
  goOnMoving();
  expect(asked).toEqual([Number.POSITIVE_INFINITY]);
  pointer(desk, 'up', 25);
  await Promise.resolve();
  pointer(desk, 'down', 25);
  goOnMoving();
  expect(asked).toEqual([Number.POSITIVE_INFINITY, 7]);
});

test('a drag that is cancelled, and one that is undone, leave the page as the desk is', () => {
  const { desk, page, shownX } = dragged('following');
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  desk.cancel();
  expect(page.state()).toBe(desk.state());
  expect(shownX()).toBeCloseTo(20);
  pointer(desk, 'up', 25);
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  pointer(desk, 'up', 25);
  expect(shownX()).toBeCloseTo(25);
  desk.undo();
  expect(page.state()).toBe(desk.state());
  expect(shownX()).toBeCloseTo(20);
});

test('what rests hears nothing of a drag until its end, however long the hand rests', () => {
  const { desk, page, shownX } = dragged('resting');
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  vi.advanceTimersByTime(60_000);
  expect(shownX()).toBeCloseTo(20);
  pointer(desk, 'up', 25);
  expect(page.state()).toBe(desk.state());
});

test('what takes long waits until the course has lain still', () => {
  const { desk, shownX } = dragged('settled');
  pointer(desk, 'down', 20);
  pointer(desk, 'move', 25);
  pointer(desk, 'up', 25);
  vi.advanceTimersByTime(PACES.settled.atRest - 1);
  expect(shownX()).toBeCloseTo(20);
  vi.advanceTimersByTime(1);
  expect(shownX()).toBeCloseTo(25);
});
