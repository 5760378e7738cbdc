/** Random courses that are right, and single faults to plant in them. One number determines one course. */
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { addObstacle, rebuildObstacle, rotateByKeys, shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { retaped, scene, type Thing } from './scene.ts';

/** Numbers from 0 to 1 that are the same for the same seed. */
export function drawn(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) % 4294967296;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

type Kind =
  | 'run'
  | 'fan'
  | 'spoke'
  | 'back-lane'
  | 'bridge'
  | 'gate'
  | 'serpentine'
  | 'side-pass'
  | 'box'
  | 'water-box';

/** Sizes that the default rule book allows. */
const SIZES: Readonly<Record<Kind, (roll: () => number) => Values>> = {
  run: (roll) => ({ poles: 3 + Math.floor(roll() * 3), gap: (36 + Math.floor(roll() * 7)) * INCH }),
  fan: () => ({}),
  spoke: () => ({}),
  'back-lane': (roll) => ({ width: (32 + Math.floor(roll() * 8)) * INCH }),
  bridge: (roll) => ({ width: (36 + Math.floor(roll() * 12)) * INCH }),
  gate: () => ({}),
  serpentine: () => ({ markers: 3 }),
  'side-pass': () => ({}),
  box: () => ({}),
  'water-box': () => ({}),
};
const KINDS = Object.keys(SIZES) as readonly Kind[];

/** Places far enough from each other for any kind, in the order in which they are ridden: out along one side, back along the other. */
const PLACES = [
  [45, 25, 0],
  [100, 25, 0],
  [155, 25, 0],
  [155, 75, 180],
  [100, 75, 180],
  [45, 75, 180],
] as const;

/** Four to six obstacles; the kinds that are asked for come first. A spoke only then: as it usually is it rides at a lope. */
export function randomCourse(seed: number, wanted: readonly Kind[] = []): Course {
  const roll = drawn(seed);
  const count = Math.max(wanted.length, 4 + Math.floor(roll() * 3));
  const rest = [...KINDS].sort(() => roll() - 0.5).filter((kind) => !wanted.includes(kind) && kind !== 'spoke');
  const kinds = [...wanted, ...rest].slice(0, count).sort(() => roll() - 0.5);
  const things = kinds.map((kind, i): Thing => ({ kind, values: SIZES[kind](roll), at: PLACES[i] ?? [45, 25] }));
  return scene(things, blankCourse({ class: { entries: 12 } }));
}

export interface Plant {
  readonly check: string;
  readonly needs: readonly Kind[];
  plant(course: Course): Course;
}

function built(course: Course, id: string, values: Values): Course {
  const next = rebuildObstacle(course, id, values);
  if ('why' in next) throw new Error(next.why);
  return next;
}

function pieces(course: Course, id: string): readonly string[] {
  const obstacle = course.layouts[0].obstacles.find((each) => each.id === id);
  return (obstacle?.pieces ?? []).map((piece) => `${id}/${piece.id}`);
}

function withPlant(course: Course, x: number, y: number): Course {
  const obstacle = buildObstacle('scenery-1', 'scenery', {}, { x, y, angle: 0 });
  if ('why' in obstacle) throw new Error(obstacle.why);
  return addObstacle(course, obstacle);
}

const raise = (course: Course, key: string, inches: number): Course =>
  retaped(course, [key], { raisedStart: inches * INCH, raisedEnd: inches * INCH });
const named = (course: Course, id: string, name: string): Course =>
  replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each) => (each.id === id ? { ...each, name } : each)),
  }));
const poseOf = (course: Course, id: string) =>
  course.layouts[0].obstacles.find((each) => each.id === id)?.pose ?? { x: 0, y: 0, angle: 0 };

export const PLANTS: readonly Plant[] = [
  { check: 'gap-band', needs: ['run'], plant: (course) => built(course, 'run-1', { gap: 51 * INCH }) },
  {
    check: 'uneven-gap',
    needs: ['run'],
    plant: (course) => {
      const key = pieces(course, 'run-1').at(-1) ?? '';
      const { x, y, angle } = poseOf(course, 'run-1');
      const piece = course.layouts[0].obstacles.find(({ id }) => id === 'run-1')?.pieces.at(-1)?.pose;
      const off = piece?.x ?? 0;
      return rotateByKeys(course, [key], 0.02, { x: x + off * Math.cos(angle), y: y + off * Math.sin(angle) });
    },
  },
  { check: 'back-width', needs: ['back-lane'], plant: (course) => built(course, 'back-lane-1', { width: 28 * INCH }) },
  { check: 'bridge-width', needs: ['bridge'], plant: (course) => built(course, 'bridge-1', { width: 34 * INCH }) },
  { check: 'gate-opening', needs: ['gate'], plant: (course) => built(course, 'gate-1', { opening: 66 * INCH }) },
  { check: 'gate-height', needs: ['gate'], plant: (course) => built(course, 'gate-1', { height: 48 * INCH }) },
  {
    check: 'outside',
    needs: [],
    plant: (course) => withPlant(course, course.arena.length, course.arena.width / 2),
  },
  {
    check: 'entrance-clear',
    needs: [],
    plant: (course) => withPlant(course, 3 * FOOT, course.arena.entrance.at + 4 * FOOT),
  },
  {
    check: 'alignment',
    needs: ['bridge'],
    plant: (course) => rotateByKeys(course, ['bridge-1'], Math.PI / 90, poseOf(course, 'bridge-1')),
  },
  {
    check: 'serpentine-spacing',
    needs: ['serpentine'],
    plant: (course) =>
      shiftByKeys(course, ['serpentine-1/marker-2'], -FOOT * Math.cos(poseOf(course, 'serpentine-1').angle), 0),
  },
  { check: 'jump-height', needs: ['run'], plant: (course) => raise(course, 'run-1/pole-2', 16) },
  { check: 'side-pass-height', needs: ['side-pass'], plant: (course) => raise(course, 'side-pass-1/pole-1', 24) },
  { check: 'raised-jog', needs: ['run'], plant: (course) => raise(course, 'run-1/pole-2', 10) },
  { check: 'box-side', needs: ['box'], plant: (course) => built(course, 'box-1', { side: 5 * FOOT }) },
  { check: 'fan-inner-gap', needs: ['fan'], plant: (course) => built(course, 'fan-1', { innerGap: 10 * INCH }) },
  { check: 'marker-clear', needs: ['spoke'], plant: (course) => built(course, 'spoke-1', { clear: 18 * INCH }) },
  { check: 'crossing-end', needs: ['run'], plant: (course) => built(course, 'run-1', { line: 0.12 }) },
  {
    check: 'overlap',
    needs: ['run'],
    plant: (course) => {
      const { x, y } = poseOf(course, 'run-1');
      const { pose } = course.layouts[0].obstacles.find(({ id }) => id === 'run-1')?.pieces[0] ?? { pose: { x: 0 } };
      const way = Math.cos(poseOf(course, 'run-1').angle);
      return withPlant(course, x + way * pose.x, y + 5.5 * FOOT);
    },
  },
  {
    check: 'truck',
    needs: ['run'],
    plant: (course) => ({
      ...course,
      truck: course.truck.map((stock) => (stock.kind === 'pole' ? { ...stock, count: 2 } : stock)),
    }),
  },
  { check: 'forbidden', needs: ['bridge'], plant: (course) => named(course, 'bridge-1', 'the rolling drum') },
  { check: 'class-size', needs: [], plant: (course) => ({ ...course, class: { ...course.class, entries: 27 } }) },
  {
    check: 'level',
    needs: ['run'],
    plant: (course) => raise({ ...course, class: { ...course.class, level: 'novice' } }, 'run-1/pole-2', 3),
  },
];

/** The seed's plant, and the course with and without it. */
export function planted(seed: number): { readonly plant: Plant; readonly right: Course; readonly wrong: Course } {
  const plant = PLANTS[seed % PLANTS.length];
  if (plant === undefined) throw new Error('planted: there are no plants');
  const right = randomCourse(seed, plant.needs);
  return { plant, right, wrong: plant.plant(right) };
}
