import { expect, test } from 'vitest';
import * as checks from '../../src/core/checks/checks.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { createEarlyDesk } from '../../src/desk/early-desk.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { INSTRUMENTS } from '../../src/desk/measuring/all-instruments.ts';
import { pointerDriver } from './pointer-driver.ts';
import { threeObstacles } from './three-obstacles.ts';

/** Where a pole of the course lies. */
function placeOf(desk: ReturnType<typeof createDesk>) {
  const piece = desk.state().survey.pieces.find(({ key }) => key === 'run-1/pole-1');
  if (piece === undefined) throw new Error('there is no pole');
  return piece.pose;
}

/** Drags the obstacle down to where its ends are a hair over 2 ft off the south wall. */
function dragged(desk: ReturnType<typeof createDesk>) {
  const before = placeOf(desk);
  pointerDriver(desk).drag([before.x, before.y], [before.x + 0.37, 8 * FOOT + 0.1]);
  return { before, after: placeOf(desk) };
}

test('without instruments things are moved freely, to where they are asked for', () => {
  const early = createEarlyDesk(threeObstacles(), checks);
  const free = dragged(early);
  expect(free.after.x).toBeCloseTo(free.before.x + 0.37, 9);
  expect(free.after.y).toBeCloseTo(8 * FOOT + 0.1, 9);
  expect(early.state().suggestion).toBeNull();
  const snapped = dragged(createDesk(threeObstacles(), checks));
  expect(snapped.after.y).not.toBeCloseTo(free.after.y, 3);
});

test('instruments that come later snap and suggest as if they had been there, and those who listen hear of it', () => {
  const late = createEarlyDesk(threeObstacles(), checks);
  let heard = 0;
  late.subscribe(() => {
    heard += 1;
  });
  late.takeInstruments(INSTRUMENTS);
  expect(heard).toBe(1);
  const whole = createDesk(threeObstacles(), checks);
  expect(dragged(late).after).toEqual(dragged(whole).after);
  expect(late.state().suggestion?.says).toBe(whole.state().suggestion?.says);
  expect(late.state().suggestion).not.toBeNull();
});

test('the tape is not taken up before it has come, and the desk says so', () => {
  const desk = createEarlyDesk(threeObstacles());
  desk.measure();
  expect(desk.state().tape).toBeNull();
  expect(desk.state().said).toMatch(/on its way/);
  desk.takeInstruments(INSTRUMENTS);
  desk.measure();
  expect(desk.state().tape).not.toBeNull();
});

test('instruments that come in the middle of a drag leave it as it was begun', () => {
  const desk = createEarlyDesk(threeObstacles(), checks);
  const { x, y } = placeOf(desk);
  const hand = pointerDriver(desk).down(x, y);
  hand.move(x + 0.2, y + 0.1);
  desk.takeInstruments(INSTRUMENTS);
  expect(desk.state().gesture).not.toBeNull();
  hand.move(x + 0.37, 8 * FOOT + 0.1);
  hand.up();
  expect(placeOf(desk).y).toBeCloseTo(8 * FOOT + 0.1, 9);
  desk.undo();
  expect(placeOf(desk)).toMatchObject({ x, y });
});
