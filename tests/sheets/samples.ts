/** Courses of an invented fairground for the tests of the sheets: three arenas, every kind of obstacle that is ridden. */
import { readdirSync, readFileSync } from 'node:fs';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Arena, Course, Leg } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { obstacleKind } from '../../src/core/obstacles/obstacles.ts';
import type { Values } from '../../src/core/pieces/params.ts';

/** Where an obstacle lies, in fractions of the arena, degrees. */
interface Stand {
  readonly kind: string;
  readonly values?: Values;
  readonly at: readonly [number, number, number];
  readonly side?: 1 | -1;
  readonly leg?: Partial<Pick<Leg, 'gait' | 'approach' | 'lead' | 'words' | 'passage'>>;
}

const STANDS: readonly Stand[] = [
  { kind: 'gate', at: [0.16, 0.3, 0], leg: { approach: 'walk' } },
  {
    kind: 'run',
    values: { poles: 4, gap: 3 * FOOT, gait: 'jog' },
    at: [0.36, 0.22, 0],
    leg: { approach: 'jog', gait: 'jog' },
  },
  { kind: 'serpentine', at: [0.66, 0.2, 0], leg: { approach: 'jog', gait: 'jog' } },
  {
    kind: 'fan',
    values: { innerGap: 3 * FOOT, gait: 'lope' },
    at: [0.87, 0.52, -90],
    leg: { approach: 'lope', gait: 'lope', lead: 'left' },
  },
  { kind: 'bridge', at: [0.62, 0.82, 180], leg: { approach: 'walk', gait: 'walk' } },
  { kind: 'box', at: [0.44, 0.62, 180], leg: { approach: 'walk', gait: 'walk' } },
  { kind: 'back-l', at: [0.2, 0.76, 180], leg: { approach: 'jog' } },
  { kind: 'side-pass', at: [0.62, 0.5, 0], leg: { approach: 'walk' } },
];

export const ARENAS: Readonly<Record<string, Arena>> = {
  '100 x 200 ft': {
    title: 'Home arena',
    length: 200 * FOOT,
    width: 100 * FOOT,
    entrance: { wall: 'west', at: 20 * FOOT, width: 12 * FOOT },
  },
  '150 x 300 ft': {
    title: 'Larkhollow main ring',
    length: 300 * FOOT,
    width: 150 * FOOT,
    entrance: { wall: 'south', at: 40 * FOOT, width: 16 * FOOT },
  },
  '20 x 60 m': { title: 'Indoor hall', length: 60, width: 20, entrance: { wall: 'east', at: 10, width: 4 } },
};

/** A full course of every kind that is known, in an arena. */
export function sample(arena: Arena, unit: 'ft' | 'm' = 'ft'): Course {
  let course = blankCourse({
    title: 'Saturday, course A',
    unit,
    arena,
    class: {
      show: 'Larkhollow Fairground Summer Show',
      title: 'Open Trail',
      level: 'open',
      date: '2026-06-13',
      entries: 24,
    },
  });
  for (const { kind, values = {}, at, side = 1, leg } of STANDS) {
    if (obstacleKind(kind) === undefined) continue;
    const [x, y, degrees] = at;
    const pose = { x: x * arena.length, y: y * arena.width, angle: (degrees * Math.PI) / 180 };
    const obstacle = buildObstacle(`${kind}-1`, kind, values, pose, side);
    if (!('pieces' in obstacle)) throw new Error(`${kind}: ${obstacle.why}`);
    course = addObstacle(course, obstacle);
    const last = course.layouts[0].ride.legs.at(-1);
    if (leg !== undefined && last !== undefined) course = changeLeg(course, last.id, leg);
  }
  return course;
}

export const SAMPLES: Readonly<Record<string, Course>> = {
  ...Object.fromEntries(
    Object.entries(ARENAS).map(([name, arena]) => [name, sample(arena, name.endsWith(' m') ? 'm' : 'ft')]),
  ),
  empty: blankCourse({ title: 'Nothing yet' }),
};

/** The same course with an END mark near the entrance. */
export function ended(course: Course): Course {
  return replaceLayout(course, (layout) => ({
    ...layout,
    ride: { ...layout.ride, end: { x: 4, y: course.arena.width * 0.5, angle: Math.PI } },
  }));
}

/** The starter courses that can be read, by file name. */
export const SEEDS: Readonly<Record<string, Course>> = Object.fromEntries(
  readdirSync('seeds/starters')
    .filter((name) => name.endsWith('.course.json'))
    .flatMap((name) => {
      const reading = readCourse(readFileSync(`seeds/starters/${name}`, 'utf8'));
      return reading.kind === 'read' ? [[name.replace('.course.json', ''), reading.course]] : [];
    }),
);
