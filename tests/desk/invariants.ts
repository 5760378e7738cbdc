import { expect } from 'vitest';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { presentCourse } from '../../src/core/course/history.ts';
import { placedObstacle } from '../../src/core/course/placed.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { writeCourse } from '../../src/core/files/write.ts';
import { ringArea } from '../../src/core/plane/ring.ts';
import { segmentDistance } from '../../src/core/plane/segment.ts';
import type { Desk } from '../../src/desk/desk.ts';

function unique(ids: readonly string[]): void {
  expect(new Set(ids).size, `ids are given once: ${ids.join(' ')}`).toBe(ids.length);
}

/** No outline crosses itself, and it runs counter-clockwise around some ground. */
function expectSimple(ring: readonly { x: number; y: number }[], key: string): void {
  expect(ringArea(ring), `${key} covers ground`).toBeGreaterThan(0);
  if (ring.length > 12) return;
  const edges = ring.map((corner, index) => [corner, ring[(index + 1) % ring.length] ?? corner] as const);
  edges.forEach((edge, i) => {
    edges.forEach((other, j) => {
      const apart = Math.abs(i - j);
      if (j <= i || apart === 1 || apart === ring.length - 1) return;
      expect(segmentDistance(edge, other), `${key} does not cross itself`).toBeGreaterThan(0);
    });
  });
}

/** What is true of every course that an editor may make, whatever the input was. */
export function expectInvariants(course: Course): void {
  unique(course.layouts.map((layout) => layout.id));
  const layout = currentLayout(course);
  expect(layout.id).toBe(course.current);
  unique(layout.obstacles.map((obstacle) => obstacle.id));
  unique(layout.ride.legs.map((leg) => leg.id));
  for (const obstacle of layout.obstacles) {
    const pieces = obstacle.pieces.map((piece) => piece.id);
    unique(pieces);
    for (const { x, y, angle } of [obstacle.pose, ...obstacle.pieces.map((piece) => piece.pose)]) {
      expect([x, y, angle].every(Number.isFinite), `${obstacle.id} is somewhere`).toBe(true);
    }
    for (const placed of placedObstacle(obstacle).pieces) expectSimple(placed.footprint, placed.key);
    for (const constraint of obstacle.constraints) {
      for (const grip of constraint.grips) if ('piece' in grip) expect(pieces).toContain(grip.piece);
    }
    for (const station of obstacle.passages.flatMap((passage) => passage.stations)) {
      if (station.kind !== 'turn') expect(pieces).toContain(station.piece);
    }
  }
  for (const leg of layout.ride.legs) {
    const obstacle = layout.obstacles.find((each) => each.id === leg.obstacle);
    expect(obstacle, `${leg.id} rides an obstacle that exists`).toBeDefined();
    expect(obstacle?.passages.map((passage) => passage.id)).toContain(leg.passage);
  }
  // What the desk makes, a file may hold: it is read as it was written, with nothing to repair.
  const reading = readCourse(writeCourse(course));
  expect(reading.kind === 'read' ? reading.repairs : reading.why).toEqual([]);
  const pieces = layout.obstacles.flatMap((each) => each.pieces.map((piece) => `${each.id}/${piece.id}`));
  for (const constraint of layout.constraints) {
    for (const grip of constraint.grips) if ('piece' in grip) expect(pieces).toContain(grip.piece);
  }
}

/** The same of a whole desk: its history, what it shows and what is chosen belong together. */
export function expectDeskInvariants(desk: Desk): void {
  const { history, course, survey, chosen, gesture, said } = desk.state();
  expect(history.present).toBeGreaterThanOrEqual(0);
  expect(history.present).toBeLessThan(history.steps.length);
  if (gesture === null) expect(course).toBe(presentCourse(history));
  for (const { label } of history.steps) expect(label).not.toBe('');
  expect(said).not.toBe('');
  expectInvariants(course);
  expect(survey.course).toBe(course);
  unique(chosen);
  const legs = survey.layout.ride.legs;
  const crossings = (leg: string | undefined) => {
    const index = legs.findIndex((each) => each.id === leg);
    return survey.line.crossings.filter((each) => each.leg === index).length;
  };
  for (const key of chosen) {
    const bend = /^bend:(.+):(\d+)$/.exec(key);
    const cross = /^cross:(.+):(all|\d+)$/.exec(key);
    const there =
      key === 'ride:start' ||
      (cross !== null && crossings(cross[1]) > (cross[2] === 'all' ? 0 : Number(cross[2]))) ||
      survey.obstacles.some((each) => each.obstacle.id === key) ||
      survey.pieces.some((piece) => piece.key === key) ||
      (bend !== null && (legs.find((leg) => leg.id === bend[1])?.bends.length ?? 0) > Number(bend[2]));
    expect(there, `${key} is chosen and exists`).toBe(true);
  }
}
