import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { crossingsOf, moveCrossings } from '../../../src/core/course/edit-crossings.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { crossingHandles, crossingsOn, isRiddenOnOneLine, placeOnPole } from '../../../src/desk/gestures/crossing.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

/** The run is ridden by leg-1, the fan by leg-2. */
function riding(...chosen: string[]): Desk {
  const desk = createDesk(threeObstacles());
  desk.switchStage('ride');
  desk.choose(chosen);
  return desk;
}

function fractions(desk: Desk, leg: string): readonly number[] {
  return crossingsOf(currentLayout(desk.state().course), leg).map(({ fraction }) => fraction);
}

/** A place so many metres along the pole from a handle, towards the pole's +x end. */
function along(desk: Desk, leg: string, { index, by }: { index: number; by: number }) {
  const handle = crossingsOn(desk.state().survey, leg)[index];
  if (handle === undefined) throw new Error('no such crossing');
  const { angle } = handle.pole.pose;
  return {
    from: [handle.at.x, handle.at.y] as const,
    to: [handle.at.x + by * Math.cos(angle), handle.at.y + by * Math.sin(angle)] as const,
    length: handle.pole.figure.length,
  };
}

describe('where the line crosses a run', () => {
  test('is dragged along the pole, the whole line at once; the poles stay and the landings go along', () => {
    const desk = riding('run-1');
    const { pieces, line } = desk.state().survey;
    const { from, to, length } = along(desk, 'leg-1', { index: 1, by: 0.7 });
    const before = fractions(desk, 'leg-1');
    pointerDriver(desk, { after: expectDeskInvariants, pickRadius: 0.3, loose: true }).drag(from, to);
    const after = fractions(desk, 'leg-1');
    expect(after).toEqual(before.map((each) => expect.closeTo(each + 0.7 / length, 6)));
    expect(desk.state().survey.pieces).toEqual(pieces);
    expect(desk.state().chosen).toEqual(['run-1']);
    const places = (of: typeof line) =>
      of.gaps.filter(({ leg }) => leg === 0).flatMap(({ landings }) => landings.places.map(({ point }) => point));
    for (const [i, { x, y }] of places(desk.state().survey.line).entries()) {
      const old = places(line)[i] ?? { x: 0, y: 0 };
      expect(Math.hypot(x - old.x, y - old.y)).toBeCloseTo(0.7, 6);
    }
    expect(desk.state().history.steps.at(-1)?.label).toBe('Move the line over the set of jog-overs (obstacle 1)');
    desk.undo();
    expect(fractions(desk, 'leg-1')).toEqual(before);
  });

  test('is moved at one pole alone when that crossing is chosen', () => {
    const desk = riding('run-1');
    const { from, to, length } = along(desk, 'leg-1', { index: 1, by: 0.4 });
    const hands = pointerDriver(desk, { after: expectDeskInvariants, loose: true });
    hands.tap(...from);
    expect(desk.state().chosen).toEqual(['cross:leg-1:1']);
    const before = fractions(desk, 'leg-1');
    hands.drag(from, to);
    expect(fractions(desk, 'leg-1')).toEqual(
      before.map((each, i) => (i === 1 ? expect.closeTo(each + 0.4 / length, 6) : each)),
    );
    hands.tap(...to);
    expect(desk.state().chosen, 'a second tap goes back to the whole').toEqual(['run-1']);
  });

  test('is drawn to the shares that people name, and never leaves the pole', () => {
    const desk = riding('run-1');
    const { from, to, length } = along(desk, 'leg-1', { index: 0, by: 0 });
    const third = along(desk, 'leg-1', { index: 0, by: (2 / 3 - 0.5) * length + 0.05 });
    expect(to).toEqual(from);
    pointerDriver(desk, { pickRadius: 0.3 }).drag(from, third.to);
    expect(fractions(desk, 'leg-1')[0]).toBeCloseTo(2 / 3, 9);
    expect(desk.state().said).toMatch(/^The line over the set of jog-overs \(obstacle 1\): .* from the nearer end$/);
    const far = along(desk, 'leg-1', { index: 0, by: 9 });
    pointerDriver(desk, { pickRadius: 0.3 }).drag(far.from, far.to);
    expect(fractions(desk, 'leg-1')[0]).toBeCloseTo(0.98, 9);
  });

  test('is taken and moved by keys: C, arrows along the pole, Tab for the next pole, Escape back', () => {
    const desk = riding('run-1');
    const { length } = along(desk, 'leg-1', { index: 0, by: 0 });
    const before = fractions(desk, 'leg-1');
    const hands = pointerDriver(desk, { after: expectDeskInvariants });
    hands.press('c');
    expect(desk.state().chosen).toEqual(['cross:leg-1:all']);
    hands.press('Shift+ArrowUp').press('Shift+ArrowUp');
    expect(Math.abs((fractions(desk, 'leg-1')[2] ?? 0) - (before[2] ?? 0))).toBeCloseTo((2 * 0.3048) / length, 6);
    expect(desk.state().history.steps, 'strokes alike are one step').toHaveLength(2);
    const { course } = desk.state();
    hands.press('ArrowLeft');
    expect(desk.state().course).toBe(course);
    expect(desk.state().said).toContain('along the pole only');
    hands.press('Tab');
    expect(desk.state().chosen).toEqual(['cross:leg-1:0']);
    hands.press('ArrowUp');
    expect(fractions(desk, 'leg-1')[0]).not.toBe(fractions(desk, 'leg-1')[1]);
    hands.press('Escape');
    expect(desk.state().chosen).toEqual(['run-1']);
  });

  test('has handles in the Ride stage only, and only for what is chosen', () => {
    const desk = riding();
    expect(crossingHandles(desk.state())).toEqual([]);
    desk.choose(['run-1']);
    expect(crossingHandles(desk.state()).map(({ leg }) => leg)).toEqual(
      Array(5).fill('leg-1').slice(0, fractions(desk, 'leg-1').length),
    );
    desk.switchStage('set');
    expect(crossingHandles(desk.state())).toEqual([]);
    desk.press({ key: 'c', mod: false, shift: false, alt: false });
    expect(desk.state().chosen).toEqual(['run-1']);
  });
});

test('a leg that is not there has no crossings, and cannot be crossed', () => {
  const course = threeObstacles();
  expect(crossingsOf(currentLayout(course), 'leg-9')).toEqual([]);
  expect(isRiddenOnOneLine({ layout: currentLayout(course) }, 'leg-9')).toBe(false);
  expect(() => moveCrossings(course, 'leg-9', new Map())).toThrow('leg-9');
});

test('crossing where it already crosses gives the same course', () => {
  const course = threeObstacles();
  const now = new Map(crossingsOf(currentLayout(course), 'leg-2').map(({ fraction }, i) => [i, fraction]));
  expect(moveCrossings(course, 'leg-2', now)).toBe(course);
});

test('a place on a pole is told from its nearer end', () => {
  expect(placeOnPole(3.048, 0.3, 'ft')).toBe("3' from the nearer end");
  expect(placeOnPole(3.048, 0.7, 'ft')).toBe("3' from the nearer end");
  expect(placeOnPole(3.048, 0.5, 'ft')).toBe('over the middle');
});
