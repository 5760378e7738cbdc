import { expect, test } from 'vitest';
import * as checks from '../../src/core/checks/checks.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { pointerDriver } from './pointer-driver.ts';
import { threeObstacles } from './three-obstacles.ts';

test('a desk without checks shows the course and does not say that nothing is found', () => {
  const { survey, findings, closerFindings, isChecked } = createDesk(threeObstacles()).state();
  expect(survey.obstacles).toHaveLength(3);
  expect(isChecked).toBe(false);
  expect([findings, closerFindings]).toEqual([[], []]);
});

test('checks that come later find what they would have found from the start, and those who listen hear of it', () => {
  const [early, late] = [createDesk(threeObstacles(), checks), createDesk(threeObstacles())];
  let heard = 0;
  late.subscribe(() => {
    heard += 1;
  });
  late.takeChecker(checks);
  expect(heard).toBe(1);
  expect(late.state().isChecked).toBe(true);
  const ids = (desk: typeof early) => desk.state().findings.map(({ id }) => id);
  expect(ids(late)).not.toEqual([]);
  expect(ids(late)).toEqual(ids(early));
  late.edit('Crowd it', (course) => ({ ...course, arena: { ...course.arena, length: 12, width: 8 } }));
  expect(late.state().findings).toEqual(checks.findingsOf(late.state().survey));
});

test('at rest the checks look closer, and during a drag no further than a pointer move has time for', () => {
  const desk = createDesk(threeObstacles(), checks);
  expect(desk.state().closerFindings).toEqual(checks.closerFindingsOf(desk.state().survey));
  const pole = desk.state().survey.pieces.find(({ key }) => key === 'run-1/pole-1');
  if (pole === undefined) throw new Error('there is no pole');
  const { x, y } = pole.pose;
  pointerDriver(desk, { pickRadius: 0.3 })
    .down(x, y)
    .move(x + 2, y);
  expect(desk.state().gesture).not.toBeNull();
  const found = checks.dragFindingsOf(desk.state().survey);
  expect([desk.state().findings, desk.state().closerFindings]).toEqual([found, found]);
});

test('what the rule book asks for comes with the checks: until then nobody asks', () => {
  const desk = createDesk(threeObstacles());
  expect(desk.state().bandAsked('wall.clear')).toBeUndefined();
  desk.takeChecker(checks);
  const { course, bandAsked } = desk.state();
  expect(bandAsked('wall.clear')?.least).toBeGreaterThan(0);
  expect(bandAsked('wall.clear')).toEqual(checks.bandAsked(course, 'wall.clear'));
});
