import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { presentCourse } from '../../src/core/course/history.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { point } from '../../src/core/plane/point.ts';
import type { Desk } from '../../src/desk/desk.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { turnHandle } from '../../src/desk/gestures/turn-handle.ts';
import { SHORTCUTS } from '../../src/desk/keyboard/shortcuts.ts';
import { expectDeskInvariants } from './invariants.ts';
import { pointerDriver } from './pointer-driver.ts';
import { threeObstacles } from './three-obstacles.ts';

/** One thing that somebody does to the desk; written so that a failing script can be read. */
type Deed =
  | { readonly does: 'down' | 'move'; readonly pointer: number; readonly x: number; readonly y: number }
  | { readonly does: 'up' | 'cancel'; readonly pointer: number }
  | {
      readonly does: 'grab';
      readonly piece: number;
      readonly dx: number;
      readonly dy: number;
      readonly adding: boolean;
    }
  | { readonly does: 'turn'; readonly dx: number; readonly dy: number }
  | { readonly does: 'key'; readonly key: number }
  | { readonly does: 'place'; readonly kind: number; readonly x: number; readonly y: number }
  | { readonly does: 'type'; readonly obstacle: number; readonly param: number; readonly text: string };

const metres = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((value) => value / 4);
const where = { x: metres(-4, 65), y: metres(-4, 35) };
const pointer = fc.integer({ min: 1, max: 2 });
const DEEDS: fc.Arbitrary<Deed> = fc.oneof(
  fc.record({ does: fc.constantFrom('down' as const, 'move' as const), pointer, ...where }),
  fc.record({ does: fc.constantFrom('up' as const, 'cancel' as const), pointer }),
  fc.record({
    does: fc.constant('grab' as const),
    piece: fc.nat(40),
    dx: metres(-8, 8),
    dy: metres(-8, 8),
    adding: fc.boolean(),
  }),
  fc.record({ does: fc.constant('turn' as const), dx: metres(-5, 5), dy: metres(-5, 5) }),
  fc.record({ does: fc.constant('key' as const), key: fc.nat(200) }),
  fc.record({ does: fc.constant('place' as const), kind: fc.nat(50), ...where }),
  fc.record({
    does: fc.constant('type' as const),
    obstacle: fc.nat(9),
    param: fc.nat(9),
    text: fc.constantFrom('3', `3' 6"`, '2/3', '7', '1.2 m', 'jog', 'x', '', '-4'),
  }),
);

function pick<T>(list: readonly T[], index: number): T | undefined {
  return list[index % Math.max(1, list.length)];
}

function carryOut(desk: Desk, deed: Deed): void {
  const { survey } = desk.state();
  switch (deed.does) {
    case 'down':
    case 'move':
      pointerDriver(desk, { pointer: deed.pointer })[deed.does](deed.x, deed.y);
      return;
    case 'up':
    case 'cancel':
      pointerDriver(desk, { pointer: deed.pointer })[deed.does]();
      return;
    case 'grab': {
      const at = pick(survey.pieces, deed.piece)?.pose ?? { x: 0, y: 0 };
      pointerDriver(desk, { pointer: 3, ...(deed.adding ? { adding: true } : {}) }).drag(
        [at.x, at.y],
        [at.x + deed.dx, at.y + deed.dy],
      );
      return;
    }
    case 'turn': {
      const at = turnHandle(desk.state(), 0.3)?.at;
      if (at !== undefined) pointerDriver(desk, { pointer: 3 }).drag([at.x, at.y], [at.x + deed.dx, at.y + deed.dy]);
      return;
    }
    case 'key': {
      const strokes = SHORTCUTS.flatMap((twin) => twin.keyPresses);
      const stroke = pick(strokes, deed.key);
      if (stroke !== undefined) desk.press(stroke);
      return;
    }
    case 'place':
      desk.place(pick(OBSTACLE_KINDS, deed.kind)?.id ?? 'run', {}, point(deed.x, deed.y));
      return;
    case 'type': {
      const obstacle = pick(survey.layout.obstacles, deed.obstacle);
      const params = Object.keys(OBSTACLE_KINDS.find((kind) => kind.id === obstacle?.kind)?.params ?? {});
      desk.setValue(obstacle?.id ?? 'none', pick(params, deed.param) ?? 'none', deed.text);
    }
  }
}

describe('whatever a hand does', () => {
  test('the desk stays sound, and undoing everything gives the first course itself', () => {
    fc.assert(
      fc.property(fc.array(DEEDS, { maxLength: 25 }), (deeds) => {
        const first = threeObstacles();
        const desk = createDesk(first);
        for (const deed of deeds) {
          const before = desk.state();
          carryOut(desk, deed);
          expectDeskInvariants(desk);
          const after = desk.state();
          // What was done before is never rewritten, but for a row of nudges or turns that become one step.
          const kept = Math.min(before.history.present, after.history.present);
          expect(after.history.steps.slice(0, kept)).toEqual(before.history.steps.slice(0, kept));
        }
        desk.cancel();
        const last = presentCourse(desk.state().history);
        const { present } = desk.state().history;
        for (let step = 0; step < present; step += 1) desk.undo();
        expect(desk.state().course).toBe(first);
        for (let step = 0; step < present; step += 1) desk.redo();
        expect(desk.state().course).toBe(last);
      }),
      { numRuns: 60 },
    );
  });
});
