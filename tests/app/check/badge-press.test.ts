import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { screenOf } from '../../../src/app/arena/camera.ts';
import type { PointerController, PointerSample } from '../../../src/app/arena/input/pointer-controller.ts';
import { badgeAt } from '../../../src/app/arena/painters/badges.ts';
import { createBadgePress } from '../../../src/app/check/badge-press.ts';
import { CHECKS_PART } from '../../../src/app/check/later-checks.ts';
import { visibleFindings } from '../../../src/app/check/visible-findings.ts';
import { createView } from '../../../src/app/view.ts';
import * as checks from '../../../src/core/checks/checks.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { createDesk } from '../../../src/desk/editor.ts';

/** A course with faults, the place of one of its badges, and what the arena behind the badges is sent. */
function atBadge() {
  const file = new URL('../../../seeds/starters/practice-with-faults.course.json', import.meta.url);
  const reading = readCourse(readFileSync(file, 'utf8'));
  if (reading.kind !== 'read') throw new Error('the course was not read');
  const desk = createDesk(reading.course, checks);
  const view = createView(reading.course.arena);
  view.measure({ width: 1200, height: 700 }, reading.course.arena);
  const findings = visibleFindings(desk.state());
  const { camera } = view.state();
  const at = findings
    .map((finding) => screenOf(camera, finding.at))
    .map(({ x, y }) => ({ x, y: y - 24 }) as PointerSample['at'])
    .find((place) => badgeAt(findings, camera, place).length > 0);
  if (at === undefined) throw new Error('there is no badge');
  const sent: string[] = [];
  const write =
    (phase: string) =>
    ({ id, at: { x, y } }: PointerSample) =>
      void sent.push(`${phase} ${id} ${Math.round(x - at.x)} ${Math.round(y - at.y)}`);
  const arena: PointerController = {
    setPanMode: () => undefined,
    down: write('down'),
    move: write('move'),
    up: write('up'),
    cancel: write('cancel'),
  };
  const hand = createBadgePress({ desk, view }, arena);
  const sample = (dx: number, dy: number, id = 1): PointerSample => ({
    id,
    kind: 'mouse',
    at: { x: at.x + dx, y: at.y + dy } as PointerSample['at'],
    button: 0,
    shift: false,
    alt: false,
  });
  return { hand, sample, sent, desk };
}

// The doors to findings come with the checks.
beforeAll(() => CHECKS_PART.load());

test('a badge that is pressed opens its finding, and the arena hears nothing', () => {
  const { hand, sample, sent, desk } = atBadge();
  hand.down(sample(0, 0));
  hand.move(sample(5, 5));
  hand.up(sample(5, 5));
  expect(desk.state().stage).toBe('check');
  expect(sent).toEqual([]);
});

test('a drag that begins on a badge is the arena’s from where it began, and opens nothing', () => {
  const { hand, sample, sent, desk } = atBadge();
  hand.down(sample(0, 0));
  hand.move(sample(8, 0));
  hand.move(sample(20, 0));
  hand.up(sample(30, 0));
  expect(sent).toEqual(['down 1 0 0', 'move 1 20 0', 'up 1 30 0']);
  expect(desk.state().stage).toBe('set');
});

test('a quick drag from a badge, without a move between, is the arena’s too', () => {
  const { hand, sample, sent, desk } = atBadge();
  hand.down(sample(0, 0));
  hand.up(sample(60, 0));
  expect(sent).toEqual(['down 1 0 0', 'up 1 60 0']);
  expect(desk.state().stage).toBe('set');
});

test('two fingers pinch, whichever of them is on a badge', () => {
  for (const [first, second] of [
    [0, 200],
    [200, 0],
  ] as const) {
    const { hand, sample, sent, desk } = atBadge();
    hand.down(sample(first, 0, 1));
    hand.down(sample(second, 0, 2));
    expect(sent).toEqual([`down 1 ${first} 0`, `down 2 ${second} 0`]);
    hand.up(sample(second, 0, 2));
    hand.up(sample(first, 0, 1));
    expect(desk.state().stage).toBe('set');
  }
});
