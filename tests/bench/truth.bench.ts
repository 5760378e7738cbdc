/** Whether what the program says is kept is so on the ground, measured by other means than its own equations. */

import { seededRandom } from '../../src/core/change/seeded-random.ts';
import type { Layout } from '../../src/core/course/course.ts';
import { placedObstacle } from '../../src/core/course/placed.ts';
import { grippedPoses, placedPieces, resolvedConstraints } from '../../src/core/course/resolved-constraints.ts';
import { solveLayout } from '../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../src/core/course/solver-problem.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import type { Pose } from '../../src/core/plane/pose.ts';
import { type Row, row } from './row.ts';
import { canBeMet, smallestUnmet } from './truth/brute-force.ts';
import { laneRows } from './truth/lanes.ts';
import { FIELD, layoutOf, looseNet, tapedOnGround } from './truth/nets.ts';
import { tangle } from './truth/tangles.ts';

const NETS = 60;
const OBSTACLES = 200;
const TANGLES = 200;
const MICROMETRE = 1e-6;
const DRAG = 20 * FOOT;
const STEPS = Math.round(DRAG / INCH);

function posesOf(layout: Layout): ReadonlyMap<string, Pose> {
  return new Map(layout.obstacles.flatMap((each) => placedObstacle(each).pieces.map(({ key, pose }) => [key, pose])));
}

interface DragTruth {
  /** Steps that were called settled though a held measure was off by more than a micrometre. */
  untrue: number;
  settled: number;
  lost: number;
  /** The largest way of any piece from one inch of the pointer to the next, metres. */
  jump: number;
}

/** Drags a piece 20 ft one way in steps of an inch, each from the layout as it was before the drag. */
function dragged(layout: Layout, key: string, heading: number, off: (after: Layout) => number): DragTruth {
  const start = posesOf(layout).get(key);
  if (start === undefined) throw new Error(`no ${key}`);
  const truth: DragTruth = { untrue: 0, settled: 0, lost: 0, jump: 0 };
  let before = posesOf(layout);
  for (let i = 1; i <= STEPS; i += 1) {
    const to = { ...start, x: start.x + i * INCH * Math.cos(heading), y: start.y + i * INCH * Math.sin(heading) };
    const outcome = solveLayout(layout, FIELD, new Map([[key, to]]));
    if (outcome.kind !== 'settled') {
      truth.lost += 1;
      continue;
    }
    truth.settled += 1;
    if (off(outcome.layout) > MICROMETRE) truth.untrue += 1;
    const now = posesOf(outcome.layout);
    for (const [id, pose] of now) {
      const was = before.get(id) ?? pose;
      truth.jump = Math.max(truth.jump, Math.hypot(pose.x - was.x, pose.y - was.y));
    }
    before = now;
  }
  return truth;
}

function total(truths: readonly DragTruth[]): DragTruth {
  return truths.reduce(
    (sum, each) => ({
      untrue: sum.untrue + each.untrue,
      settled: sum.settled + each.settled,
      lost: sum.lost + each.lost,
      jump: Math.max(sum.jump, each.jump),
    }),
    { untrue: 0, settled: 0, lost: 0, jump: 0 },
  );
}

function netRows(): Row[] {
  const truths = Array.from({ length: NETS }, (_, seed) => {
    const net = looseNet(seed);
    const roll = seededRandom(1000 + seed);
    const key = `p${Math.floor(roll() * net.obstacles.length)}/only`;
    return dragged(net, key, roll() * 2 * Math.PI, (after) =>
      Math.max(...net.constraints.map((each) => Math.abs(tapedOnGround(after, each) - (each.hold ?? 0)))),
    );
  });
  const { untrue, lost, jump, settled } = total(truths);
  const nets = truths.filter((each) => each.untrue > 0).length;
  return [
    row('nets with a held gap off by more than 1 µm while settled', 'of 60', numbers(nets, 0)),
    row('their steps of an inch', 'steps', numbers(untrue, 0)),
    row('steps settled', 'steps', numbers(settled, NETS * STEPS)),
    row('steps without an answer', 'steps', numbers(lost, 0)),
    row('largest move of a piece for an inch of the pointer', 'm', numbers(jump, INCH)),
  ];
}

/** By how much what the obstacle holds is off on the ground: gaps by the tape, the rest from where the pieces lie. */
function offOf(layout: Layout): number {
  const pieces = placedPieces(layout);
  return Math.max(
    0,
    ...resolvedConstraints(layout).map(({ kind, grips, constraint }) => {
      const hold = constraint.hold ?? 0;
      if (kind.id === 'gap') return Math.abs(tapedOnGround(layout, { ...constraint, grips }) - hold);
      const held = grippedPoses({ grips }, FIELD, pieces);
      return held === undefined ? 0 : Math.abs(kind.measure(held, constraint.side ?? 1) - hold);
    }),
  );
}

function obstacleRows(): Row[] {
  const made = Array.from({ length: 4000 }, (_, seed) => randomObstacle(seed)).filter((each) => each !== undefined);
  const truths = made.slice(0, OBSTACLES).map((obstacle, seed) => {
    const roll = seededRandom(5000 + seed);
    const piece = obstacle.pieces[Math.floor(roll() * obstacle.pieces.length)];
    const heading = roll() * 2 * Math.PI;
    return dragged(layoutOf([obstacle], []), `${obstacle.id}/${piece?.id}`, heading, offOf);
  });
  const { untrue, lost, jump } = total(truths);
  return [
    row(
      'obstacles with a held measure off by more than 1 µm while settled',
      'of 200',
      numbers(truths.filter((each) => each.untrue > 0).length, 0),
    ),
    row('their steps of an inch', 'steps', numbers(untrue, 0)),
    row('steps of obstacles without an answer', 'steps', numbers(lost, 0)),
    row('largest move of an obstacle’s piece for an inch of the pointer', 'm', numbers(jump, INCH)),
  ];
}

/** A random obstacle of any kind; undefined where its values do not build. */
function randomObstacle(seed: number): Obstacle | undefined {
  const roll = seededRandom(9000 + seed);
  const kind = OBSTACLE_KINDS[Math.floor(roll() * OBSTACLE_KINDS.length)];
  if (kind === undefined) return undefined;
  const values = Object.fromEntries(
    Object.entries(kind.params).map(([key, param]) => {
      if (param.kind === 'choice') {
        const options = Object.keys(param.options);
        return [key, options[Math.floor(roll() * options.length)] ?? param.usual];
      }
      const most = param.kind === 'count' ? Math.min(param.most, 6) : param.most;
      const value = roll() < 0.5 ? param.usual : param.least + roll() * (most - param.least);
      return [key, param.kind === 'count' ? Math.round(value) : value];
    }),
  );
  const built = buildObstacle(
    `${kind.id}-1`,
    kind.id,
    values,
    { x: 60, y: 60, angle: roll() * 6 },
    roll() < 0.5 ? 1 : -1,
  );
  return 'why' in built || built.pieces.length < 2 ? undefined : built;
}

function conflictRows(): Row[] {
  const count = { conflicts: 0, settled: 0, lost: 0, untrue: 0, larger: 0 };
  for (let seed = 0; seed < TANGLES; seed += 1) {
    const layout = tangle(seed);
    const outcome = solveLayout(layout, FIELD, new Map());
    if (outcome.kind !== 'conflict') {
      count[outcome.kind] += 1;
      continue;
    }
    count.conflicts += 1;
    const { problem } = layoutProblem(layout, FIELD);
    const sets = outcome.conflicts.map(({ members }) => new Set(members.map(({ key }) => key)));
    for (const set of sets) {
      const named = problem.constraints.filter(({ id }) => set.has(id));
      if (canBeMet(problem, named, seed)) count.untrue += 1;
    }
    const size = Math.min(...sets.map((set) => set.size));
    if (smallestUnmet(problem, size, seed) < size) count.larger += 1;
  }
  return [
    row('layouts whose constraints are said to be in conflict', 'of 200', numbers(count.conflicts, TANGLES)),
    row('named sets that brute force can meet', 'sets', numbers(count.untrue, 0)),
    row('conflicts that do not name a smallest set', 'of them', numbers(count.larger, 0)),
    row('layouts without an answer', 'of 200', numbers(count.lost, 0)),
  ];
}

function numbers(ours: number, anchor: number) {
  return { ours, anchor, anchorName: 'wanted' };
}

export async function rows(): Promise<Row[]> {
  return [...netRows(), ...obstacleRows(), ...conflictRows(), ...laneRows()];
}
