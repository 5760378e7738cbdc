/** Obstacles laid by hand for the tests of the line: poles where arithmetic says, and courses made of them. */
import type { Arena, Course, Layout, Leg, Ride } from '../../../src/core/course/course.ts';
import { FORMAT, VERSION } from '../../../src/core/course/course.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import type { Passage, Station } from '../../../src/core/obstacles/passage.ts';
import type { Piece } from '../../../src/core/pieces/piece.ts';
import { compose, ORIGIN, type Pose, pose } from '../../../src/core/plane/pose.ts';

export const ARENA: Arena = {
  title: 'Ring',
  length: 60,
  width: 30,
  entrance: { wall: 'west', at: 15, width: 4 },
};

export function pole(id: string, at: Pose, length = 12 * FOOT, thickness = 4 * INCH): Piece {
  const values = { length, thickness, shape: 'round', bands: 'plain', raisedStart: 0, raisedEnd: 0 };
  return { id, kind: 'pole', values, pose: at };
}

export function obstacle(id: string, at: Pose, pieces: readonly Piece[], stations: readonly Station[]): Obstacle {
  const passage: Passage = { id: 'on', title: `over the ${id}`, gaits: ['jog', 'walk', 'lope'], stations };
  return { id, kind: 'run', values: {}, pose: at, side: 1, pieces, constraints: [], passages: [passage] };
}

function over(pieces: readonly Piece[], fraction: number, way: 1 | -1): Station[] {
  return pieces.map((piece) => ({ kind: 'cross', piece: piece.id, fraction, way }));
}

/** Poles square to the frame's x axis, `gap` metres from face to face, ridden along +x. */
export function run(id: string, at: Pose, { poles = 4, gap = 3 * FOOT, thickness = 4 * INCH } = {}): Obstacle {
  const step = gap + thickness;
  const pieces = Array.from({ length: poles }, (_, i) =>
    pole(`pole-${i + 1}`, pose((i - (poles - 1) / 2) * step, 0, Math.PI / 2), 12 * FOOT, thickness),
  );
  // A pole along +y has its +y side towards −x: it is ridden towards the other.
  return obstacle(id, at, pieces, over(pieces, 0.5, -1));
}

/** Poles that all point at the frame's origin, ridden counter-clockwise on the circle of `radius` metres. */
export function fan(
  id: string,
  at: Pose,
  { poles = 3, angle = 0.6, radius = 3, fraction = 2 / 3, length = 12 * FOOT, thickness = 4 * INCH } = {},
): Obstacle {
  const middle = radius + (0.5 - fraction) * length;
  const pieces = Array.from({ length: poles }, (_, i) => {
    const turn = (i - (poles - 1) / 2) * angle;
    return pole(`pole-${i + 1}`, compose(pose(0, 0, turn), pose(middle, 0, 0)), length, thickness);
  });
  return obstacle(id, at, pieces, over(pieces, fraction, 1));
}

export function leg(of: string, more: Partial<Leg> = {}): Leg {
  return { id: `leg-${of}`, obstacle: of, passage: 'on', gait: 'jog', approach: 'jog', bends: [], ...more };
}

export function course(obstacles: readonly Obstacle[], ride: Ride, arena: Arena = ARENA): Course {
  const layout: Layout = { id: 'first', title: 'First', obstacles, constraints: [], ride };
  return {
    format: FORMAT,
    version: VERSION,
    title: 'By hand',
    unit: 'ft',
    arena,
    truck: [],
    horse: 'stock-horse',
    rulebook: { id: 'mule-association', house: {} },
    class: { show: '', title: '', level: 'open', date: '', entries: 1 },
    layouts: [layout],
    current: 'first',
    notes: '',
  };
}

/** Six obstacles round the ring, each ridden once. */
export function roundCourse(): Course {
  const obstacles = [
    run('run-1', pose(15, 5, 0)),
    fan('fan-1', pose(40, 8, 0)),
    run('run-2', pose(45, 24, Math.PI), { gap: 6 * FOOT, poles: 3 }),
    fan('fan-2', pose(20, 18, Math.PI), { radius: 3.4 }),
    run('run-3', pose(30, 15, 0.4), { gap: 22 * INCH, poles: 5 }),
  ];
  const legs = obstacles.map(({ id }) => leg(id));
  return course(obstacles, { start: pose(3, 5, 0), legs });
}

export { ORIGIN };
