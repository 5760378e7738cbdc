import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { currentLayout } from '../../../src/core/course/course.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { SHORTCUTS } from '../../../src/desk/keyboard/shortcuts.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { keyPressFor, pointerDriver } from '../pointer-driver.ts';
import { threeObstacles, withObstacle } from '../three-obstacles.ts';

function keyboard(desk: Desk) {
  return pointerDriver(desk, { after: expectDeskInvariants });
}

function obstacle(desk: Desk, id: string) {
  const found = currentLayout(desk.state().course).obstacles.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

describe('the list of keys', () => {
  test('gives every stroke one meaning', () => {
    const strokes = SHORTCUTS.flatMap((twin) => twin.keyPresses.map((stroke) => JSON.stringify(stroke)));
    expect(new Set(strokes).size).toBe(strokes.length);
  });

  test('says what each does, for the help page', () => {
    for (const { shown, says } of SHORTCUTS) expect([shown, says].every((text) => text.length > 0)).toBe(true);
  });

  test('lets a stroke through that means nothing here', () => {
    const desk = createDesk(threeObstacles());
    for (const keys of ['q', 'Ctrl+s', 'ArrowLeft', 'Delete', 'm', 'r', 'Enter', 'f', 'b', 'Escape']) {
      expect(desk.press(keyPressFor(keys)), keys).toBe(false);
    }
  });
});

describe('Tab', () => {
  test('walks the obstacles in the order of the go and leaves the arena at the end', () => {
    const desk = createDesk(threeObstacles());
    const walked: (string | undefined)[] = [];
    while (desk.press(keyPressFor('Tab')) && walked.length < 10) walked.push(desk.state().chosen[0]);
    expect(walked).toEqual(['run-1', 'fan-1', 'spoke-1']);
    expect(desk.state().chosen).toEqual([]);
  });

  test('walks back with shift, and leaves at the beginning', () => {
    const desk = createDesk(threeObstacles());
    const walked: (string | undefined)[] = [];
    while (desk.press(keyPressFor('Shift+Tab')) && walked.length < 10) walked.push(desk.state().chosen[0]);
    expect(walked).toEqual(['spoke-1', 'fan-1', 'run-1']);
  });

  test('leaves an empty arena at once', () => {
    expect(createDesk(blankCourse()).press(keyPressFor('Tab'))).toBe(false);
  });

  test('walks the pieces after Enter, and Escape goes back out', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('Enter').press('Tab');
    expect(desk.state().chosen).toEqual(['run-1/pole-2']);
    keyboard(desk).press('Escape');
    expect(desk.state().chosen).toEqual(['run-1']);
    keyboard(desk).press('Escape');
    expect(desk.state().chosen).toEqual([]);
  });
});

describe('the keyboard twin', () => {
  test('of a drag: arrows move by an inch, with shift by a foot', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('ArrowRight').press('Shift+ArrowUp');
    expect(obstacle(desk, 'run-1').pose).toEqual({
      x: expect.closeTo(15 + INCH, 8),
      y: expect.closeTo(9 + FOOT, 8),
      angle: 0,
    });
  });

  test('of a drag in a metric course: a centimetre, with shift ten', () => {
    const desk = createDesk(withObstacle(blankCourse({ unit: 'm' }), 'run-1', { x: 15, y: 9 }));
    keyboard(desk).press('Tab').press('ArrowLeft').press('Shift+ArrowDown');
    expect(obstacle(desk, 'run-1').pose).toEqual({ x: expect.closeTo(14.99, 8), y: expect.closeTo(8.9, 8), angle: 0 });
  });

  test('of a drag of a piece: arrows move it as far as its constraints let it', () => {
    const desk = createDesk(threeObstacles());
    const at = () => desk.state().survey.pieces.find((each) => each.key === 'run-1/pole-1')?.pose ?? { x: 0, y: 0 };
    keyboard(desk).press('Tab').press('Enter');
    const before = at();
    keyboard(desk).press('Shift+ArrowUp');
    expect(at().y - before.y).toBeCloseTo(FOOT, 3);
  });

  test('of the turn handle: R turns by 15°, Alt + R by 1°', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('r').press('Alt+r').press(']').press(']');
    expect((obstacle(desk, 'run-1').pose.angle * 180) / Math.PI).toBeCloseTo(14, 6);
    keyboard(desk).press('Shift+R');
    expect((obstacle(desk, 'run-1').pose.angle * 180) / Math.PI).toBeCloseTo(-1, 6);
  });

  test('of adding by hand: N adds the next in the go', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('n').press('n');
    expect(desk.state().chosen).toEqual(['run-1', 'fan-1', 'spoke-1']);
    expect(desk.press(keyPressFor('n')), 'all are chosen').toBe(false);
  });

  test('of the rectangle: Ctrl + A chooses every obstacle', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Ctrl+a');
    expect(desk.state().chosen).toEqual(['run-1', 'fan-1', 'spoke-1']);
  });

  test('of pulling the line: B puts a bend into the way to an obstacle, arrows move it, Delete takes it out', () => {
    const desk = createDesk(threeObstacles());
    const bends = () => currentLayout(desk.state().course).ride.legs[1]?.bends ?? [];
    keyboard(desk).press('2').press('Tab').press('Tab').press('b');
    expect(desk.state().chosen).toEqual(['bend:leg-2:0']);
    const [before] = bends();
    keyboard(desk).press('Shift+ArrowRight');
    expect(bends()[0]?.x).toBeCloseTo((before?.x ?? 0) + FOOT, 8);
    keyboard(desk).press('Delete');
    expect(bends()).toEqual([]);
    expect(desk.state().chosen).toEqual([]);
  });

  test('of the buttons: delete, copy, mirror, stages', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('m');
    expect(obstacle(desk, 'run-1').side).toBe(-1);
    keyboard(desk).press('Ctrl+d');
    expect(desk.state().chosen).toEqual(['run-2']);
    keyboard(desk).press('Delete').press('4');
    expect(desk.state().chosen).toEqual([]);
    expect(desk.state().stage).toBe('post');
    expect(currentLayout(desk.state().course).obstacles.map((each) => each.id)).toEqual(['run-1', 'fan-1', 'spoke-1']);
  });

  test('F fixes a piece and frees it again', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('Enter').press('f');
    expect(obstacle(desk, 'run-1').pieces[0]?.fixed).toBe(true);
    const before = desk.state().course;
    keyboard(desk).press('ArrowUp');
    expect(desk.state().course).toBe(before);
    expect(desk.state().said).toContain('is pinned');
    keyboard(desk).press('f');
    expect(obstacle(desk, 'run-1').pieces[0]).not.toHaveProperty('fixed');
  });
});

describe('undo and redo', () => {
  test('give back the very same objects', () => {
    const desk = createDesk(threeObstacles());
    const seen = [desk.state().course];
    for (const keys of ['Tab', 'r', 'Shift+ArrowUp', 'Ctrl+d', 'm', 'Delete']) {
      keyboard(desk).press(keys);
      if (desk.state().course !== seen.at(-1)) seen.push(desk.state().course);
    }
    expect(seen).toHaveLength(6);
    for (const course of seen.slice(0, -1).reverse()) {
      keyboard(desk).press('Ctrl+z');
      expect(desk.state().course).toBe(course);
    }
    for (const course of seen.slice(1)) {
      keyboard(desk).press('Ctrl+y');
      expect(desk.state().course).toBe(course);
    }
    expect(desk.press(keyPressFor('Ctrl+Shift+Z'))).toBe(true);
    expect(desk.state().said).toBe('There is nothing to redo');
  });

  test('take a row of nudges back at once, and stop where another deed came between', () => {
    const desk = createDesk(threeObstacles());
    const first = desk.state().course;
    keyboard(desk).press('Tab').press('ArrowUp').press('ArrowUp').press('ArrowUp');
    expect(desk.state().history.steps).toHaveLength(2);
    keyboard(desk).press('r').press('ArrowUp');
    expect(desk.state().history.steps).toHaveLength(4);
    keyboard(desk).press('Ctrl+z').press('Ctrl+z').press('Ctrl+z');
    expect(desk.state().course).toBe(first);
  });

  test('drop from what is chosen whatever no longer exists', () => {
    const desk = createDesk(threeObstacles());
    keyboard(desk).press('Tab').press('Ctrl+d').press('n').press('Ctrl+z');
    expect(desk.state().chosen).not.toContain('run-2');
    expect(desk.state().chosen.length).toBeGreaterThan(0);
  });
});
