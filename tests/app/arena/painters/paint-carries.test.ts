import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Camera } from '../../../../src/app/arena/camera.ts';
import { fitCamera } from '../../../../src/app/arena/camera.ts';
import { carryLabels, DISC, truckBox } from '../../../../src/app/arena/painters/carry-marks.ts';
import { DARK, LIGHT } from '../../../../src/app/arena/painters/inks.ts';
import { paintCarries } from '../../../../src/app/arena/painters/paint-carries.ts';
import { carryArrows } from '../../../../src/core/change/carry-arrow.ts';
import type { Carry, ChangeOver, Load, Stop } from '../../../../src/core/change/change-over.ts';
import { layoutChangeOver } from '../../../../src/core/change/layout-change-over.ts';
import { currentLayout } from '../../../../src/core/course/course.ts';
import { shiftByKeys } from '../../../../src/core/course/edit-obstacles.ts';
import { branchLayout } from '../../../../src/core/course/layouts.ts';
import { readCourse } from '../../../../src/core/files/read.ts';
import { distance, type Point } from '../../../../src/core/plane/point.ts';
import { boundsIntersect } from '../../../../src/core/plane/ring.ts';

const CAMERA: Camera = { scale: 12, x: 40, y: 560, turned: false };
const SIZE = { width: 860, height: 620 };

function load(key: string, { x, y }: Point): Load {
  const piece = { id: 'pole-1', kind: 'pole', values: {}, pose: { x: 0, y: 0, angle: 0 } };
  return { key, obstacle: key, type: 'pole', thing: 'piece', piece, pose: { x, y, angle: 0 }, held: [{ x, y }] };
}

function carry(number: number, { from, to, pass = 1 }: { from?: Point; to?: Point; pass?: number }): Carry {
  const truck: Stop = { kind: 'truck', at: { x: 0, y: 0 } };
  const stop = (at: Point | undefined): Stop =>
    at === undefined ? truck : { kind: 'ground', load: load(`thing-${number}`, at) };
  const end = to ?? from ?? { x: 0, y: 0 };
  const times = { begins: 0, ends: 0, team: 0, metres: 0 };
  return { number, load: load(`thing-${number}`, end), from: stop(from), to: stop(to), pass, ...times };
}

function planOf(carries: readonly Carry[]): ChangeOver {
  const crew = { people: 2, truckAt: { x: 0, y: 20 } };
  const sums = { metres: 0, leastCost: 0, cost: 0, seconds: 0 };
  return { crew, stays: [], carries, teams: [], passes: 2, ...sums };
}

const PLAN = planOf([
  carry(1, { from: { x: 5, y: 5 }, to: { x: 30, y: 5 } }),
  carry(2, { from: { x: 30, y: 6 }, to: { x: 5, y: 6 }, pass: 2 }),
  carry(3, { to: { x: 40, y: 20 } }),
  carry(4, { from: { x: 40.5, y: 20 } }),
]);

test('the sign of a number says whether a thing comes from the truck or goes to it', () => {
  expect(carryArrows(PLAN).map(({ text, isLater }) => [text, isLater])).toEqual([
    ['1', false],
    ['2', true],
    ['+3', false],
    ['−4', false],
  ]);
});

test('each number stands by its own carry, clear of the others and of the truck', () => {
  const labels = carryLabels(PLAN, CAMERA, SIZE, null);
  expect(labels.map(({ mark }) => mark.number)).toEqual([1, 2, 3, 4]);
  const boxes = [truckBox(PLAN, CAMERA), ...labels.map(({ box }) => box)];
  boxes.forEach((box, i) => {
    for (const other of boxes.slice(i + 1)) expect(boundsIntersect(box, other, 0)).toBe(false);
  });
});

function novice() {
  const reading = readCourse(readFileSync('seeds/starters/larkhollow-open.course.json', 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

test('on a small picture a number that finds no room is left out, but for that of the carry pointed at', () => {
  const course = novice();
  const plan = layoutChangeOver(course, { from: null, to: course.current });
  const size = { width: 280, height: 220 };
  const camera = fitCamera(course.arena, size);
  const labels = carryLabels(plan, camera, size, null);
  expect(labels.length).toBeLessThan(plan.carries.length);
  labels.forEach(({ box }, i) => {
    for (const other of labels.slice(i + 1)) expect(boundsIntersect(box, other.box, -DISC)).toBe(false);
  });
  const shown = labels.map(({ mark }) => mark.number);
  const hidden = plan.carries.find(({ number }) => !shown.includes(number))?.number ?? 0;
  expect(carryLabels(plan, camera, size, hidden)[0]?.mark.number).toBe(hidden);
});

test('of a whole layout that is moved no number covers another, in the fitted arena', () => {
  const course = branchLayout(novice());
  const keys = currentLayout(course).obstacles.map(({ id }) => id);
  const moved = keys.reduce((now, key, i) => shiftByKeys(now, [key], i % 2 ? 4 : -4, i % 3 ? 3 : -3), course);
  const plan = layoutChangeOver(moved, { from: course.layouts[0].id, to: moved.current });
  expect(plan.carries.length).toBeGreaterThan(20);
  const size = { width: 840, height: 680 };
  const labels = carryLabels(plan, fitCamera(course.arena, size), size, null);
  expect(labels).toHaveLength(plan.carries.length);
  labels.forEach(({ box }, i) => {
    for (const other of labels.slice(i + 1)) expect(boundsIntersect(box, other.box, 0)).toBe(false);
  });
});

/** What is stroked and written on a canvas: the dashes of each stroke that has an arrow's width, and the words. */
function recorded(theme: typeof LIGHT, focused: number | null) {
  const strokes: { readonly dash: string; readonly ink: string; readonly alpha: number; readonly long: number }[] = [];
  const words: string[] = [];
  let dash: readonly number[] = [];
  let path: Point<'screen'>[] = [];
  const context = {
    lineWidth: 0,
    strokeStyle: '',
    globalAlpha: 1,
    setLineDash: (pattern: readonly number[]) => {
      dash = pattern;
    },
    beginPath: () => {
      path = [];
    },
    moveTo: (x: number, y: number) => path.push({ x, y }),
    lineTo: (x: number, y: number) => path.push({ x, y }),
    stroke() {
      const [a, b] = path;
      if (this.lineWidth !== 1.8 || a === undefined || b === undefined) return;
      strokes.push({ dash: dash.join(), ink: this.strokeStyle, alpha: this.globalAlpha, long: distance(a, b) });
    },
    fill: () => undefined,
    closePath: () => undefined,
    roundRect: () => undefined,
    fillText: (text: string) => words.push(text),
  };
  // A painter uses only these of a canvas.
  paintCarries(context as unknown as CanvasRenderingContext2D, PLAN, { camera: CAMERA, theme, size: SIZE, focused });
  return { strokes, words };
}

test('a later pass is dashed, and every carry has its number', () => {
  const { strokes, words } = recorded(LIGHT, null);
  expect(strokes.map(({ dash }) => dash)).toEqual(['', '9,5']);
  expect(strokes.every(({ long }) => Math.abs(long - (25 * 12 - 7)) < 1e-6)).toBe(true);
  expect(words).toEqual(['1', '2', '+3', '−4']);
});

test('the carry that is pointed at is painted last, in its own ink, and the others faint', () => {
  const { strokes } = recorded(DARK, 1);
  expect(strokes.map(({ ink, alpha }) => [ink, alpha])).toEqual([
    [DARK.inks.words, 0.3],
    [DARK.guide, 1],
  ]);
});
