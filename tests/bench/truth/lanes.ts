/** Lanes of every shape and width for every horse: the sweep against a search of its own. */
import { type SweptTurn, sweptTurns } from '../../../src/core/checks/geometry/sweep.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { currentLayout } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { HORSES } from '../../../src/core/horses/horses.ts';
import { INCH } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { survey } from '../../../src/core/survey.ts';
import { type Row, row } from '../row.ts';
import { roomThrough } from './lane-search.ts';

export interface LaneShape {
  readonly kind: string;
  readonly values: Values;
}

const LANES: readonly LaneShape[] = [
  { kind: 'back-l', values: {} },
  { kind: 'back-u', values: {} },
  { kind: 'back-t', values: {} },
  ...[45, 55, 65, 80, 95, 110, 125, 140].map((angle) => ({
    kind: 'back-v',
    values: { angle: (angle * Math.PI) / 180 },
  })),
  ...[100, 120, 140].map((angle) => ({ kind: 'back-zigzag', values: { angle: (angle * Math.PI) / 180 } })),
];

/** The turns of a lane of a width for a horse, as the sweep takes them; empty where the lane does not build. */
export function turnsOf({ kind, values }: LaneShape, width: number, horse: string): readonly SweptTurn[] {
  const built = buildObstacle(`${kind}-1`, kind, { ...values, width }, { x: 30, y: 15, angle: 0 });
  if ('why' in built) return [];
  const course = addObstacle({ ...blankCourse(), horse }, built);
  const way = built.passages.find(({ id }) => id === 'in-and-out' || id === 'turn-and-back') ?? built.passages[0];
  const [leg] = currentLayout(course).ride.legs;
  const ridden = way === undefined || leg === undefined ? course : changeLeg(course, leg.id, { passage: way.id });
  return sweptTurns(survey(ridden), 0);
}

export const roomOf = ({ placements }: SweptTurn) => Math.min(...placements.map(({ clear }) => clear));

/** Lanes against a search of its own, and the same lanes wider: a wider one must not have less room. */
export function laneRows(): Row[] {
  const off: number[] = [];
  let lanes = 0;
  for (const shape of LANES) {
    for (const horse of HORSES) {
      for (let inches = 22; inches <= 36; inches += 2) {
        const turns = turnsOf(shape, inches * INCH, horse.id);
        if (turns.length === 0) continue;
        lanes += 1;
        for (const turn of turns) {
          const [first] = turn.blocks;
          if (first === undefined) continue;
          const other = roomThrough(
            turn.blocks.map(({ ring }) => ring),
            first.base,
            turn.poses,
          );
          off.push(Math.abs(Math.min(roomOf(turn), 0.3) - other) / INCH);
        }
      }
    }
  }
  let cases = 0;
  let narrower = 0;
  for (const shape of LANES) {
    for (const horse of HORSES) {
      let before: readonly number[] = [];
      for (let half = 44; half <= 72; half += 0.3) {
        const rooms = turnsOf(shape, (half / 2) * INCH, horse.id).map((turn) => Math.min(roomOf(turn), 0.3));
        cases += 1;
        if (rooms.some((room, i) => room < (before[i] ?? room) - 0.001)) narrower += 1;
        before = rooms;
      }
    }
  }
  return [
    row('lanes compared with a search over place and heading', 'lanes', numbers(lanes, 300)),
    row('largest difference of a turn', 'in', numbers(Math.max(...off), 0.5)),
    row(
      'turns that differ by more than half an inch',
      `of ${off.length}`,
      numbers(off.filter((each) => each > 0.5).length, 0),
    ),
    row('widths compared with the next narrower', 'cases', numbers(cases, 3864)),
    row('cases with more room in the narrower lane', 'cases', numbers(narrower, 0)),
  ];
}

function numbers(ours: number, anchor: number) {
  return { ours, anchor, anchorName: 'wanted' };
}
