import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exampleDrag } from '../../../src/app/first/example-drag.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { createDesk } from '../../../src/desk/editor.ts';

function novice() {
  const reading = readCourse(readFileSync('seeds/starters/larkhollow-novice.course.json', 'utf8'));
  if (reading.kind !== 'read') throw new Error(reading.why);
  return createDesk(reading.course);
}

const STEP = 50;

test('a pole is dragged with its run, and at the end everything is as it was', () => {
  const desk = novice();
  desk.choose(['fan-1']);
  const before = desk.state();
  const example = exampleDrag(desk, 0.3);
  if (example === undefined) throw new Error('there is no pole to drag');
  const dragged = new Set<string>();
  let elapsed = 0;
  while (example.at(elapsed) !== null) {
    const { gesture, survey } = desk.state();
    if (gesture !== null) dragged.add(gesture);
    if (elapsed === 2500) expect(survey.pieces).not.toEqual(before.survey.pieces);
    elapsed += STEP;
  }
  expect([...dragged]).toEqual([expect.stringContaining('pole 2')]);
  const after = desk.state();
  expect(after.course).toBe(before.course);
  expect(after.history).toBe(before.history);
  expect(after.chosen).toEqual(['fan-1']);
  expect(after.gesture).toBeNull();
});

test.each([0, 900, 2000])('stopped after %i ms it leaves everything as it was, and does not go on', (elapsed) => {
  const desk = novice();
  const before = desk.state();
  const example = exampleDrag(desk, 0.3);
  for (let now = 0; now <= elapsed; now += STEP) example?.at(now);
  example?.stop();
  expect(example?.at(elapsed + STEP)).toBeNull();
  const after = desk.state();
  expect([after.course, after.history, after.gesture]).toEqual([before.course, before.history, null]);
  expect(after.course).toBe(before.course);
  // Its pointer is not down any more: another one drags by itself.
  const pole = after.survey.pieces.find(({ key }) => key === 'run-1/pole-1');
  if (pole === undefined) throw new Error('the run is gone');
  const press = { pointerId: 1, pickRadius: 0.3, isAdding: false, isSnapOff: true } as const;
  desk.pointer({ ...press, phase: 'down', at: pole.pose });
  desk.pointer({ ...press, phase: 'move', at: { x: pole.pose.x + 2, y: pole.pose.y } });
  expect(desk.state().gesture).not.toBeNull();
});

test('without a pole, or while somebody drags, there is no example', () => {
  expect(exampleDrag(createDesk(blankCourse()), 0.3)).toBeUndefined();
  const desk = novice();
  const pole = desk.state().survey.pieces.find(({ key }) => key === 'run-1/pole-1');
  if (pole === undefined) throw new Error('the run is gone');
  const press = { pointerId: 1, pickRadius: 0.3, isAdding: false, isSnapOff: true } as const;
  desk.pointer({ ...press, phase: 'down', at: pole.pose });
  desk.pointer({ ...press, phase: 'move', at: { x: pole.pose.x + 2, y: pole.pose.y } });
  expect(exampleDrag(desk, 0.3)).toBeUndefined();
});
