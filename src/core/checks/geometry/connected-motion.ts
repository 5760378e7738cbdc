/** The motion of a rigid rectangle from one pose to another that keeps the most clearance all the way: a bottleneck path. */
import type { Metres, Radians } from '../../measure/quantity.ts';
import { distance } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import { priorityQueue } from '../../ride/priority-queue.ts';
import { type BlockedRegion, maxClearancePlacement, PLENTY, type Placement, separatingAxes } from './max-clearance.ts';

/**
 * The first grid over place and heading, its cell as a share of the rectangle's length, and how much finer the second is,
 * which follows the first one's path.
 */
const CELL = 0.04;
const TURN: Radians = Math.PI / 36;
const FINER = 4;
/** The middle goes no further than this outside the box of the poses that it has to pass: a share of the length, radians. */
const MARGIN = 0.2;
const OVERSHOOT: Radians = Math.PI / 9;
/** The best places of two headings that follow each other lie no further apart than this, metres; else it is a leap. */
const LEAP: Metres = 0.08;
/** By how much the second grid may miss what a motion between its nodes has, a share of the length. */
const GRID_ERROR = 0.006;

/** A grid over place and heading whose node (0, 0, 0) is at the start. */
interface Grid {
  readonly start: Pose;
  readonly cell: Metres;
  readonly turn: Radians;
  /** The first and the last node of each axis. */
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

type Node = readonly [number, number, number];

function poseAt({ start, cell, turn }: Grid, [i, j, k]: Node): Pose {
  return { x: start.x + i * cell, y: start.y + j * cell, angle: start.angle + k * turn };
}

function nodeNear({ start, cell, turn }: Grid, { x, y, angle }: Pose): Node {
  return [Math.round((x - start.x) / cell), Math.round((y - start.y) / cell), Math.round((angle - start.angle) / turn)];
}

function gridOver(poses: readonly Pose[], length: Metres): Grid {
  const cell = CELL * length;
  const turn = TURN;
  const [start] = poses;
  if (start === undefined) throw new Error('gridOver: got no poses');
  const of = (read: (pose: Pose) => number, step: number, margin: number) => {
    const all = poses.map((pose) => (read(pose) - read(start)) / step);
    return [Math.floor(Math.min(...all) - margin / step), Math.ceil(Math.max(...all) + margin / step)] as const;
  };
  const x = of((pose) => pose.x, cell, MARGIN * length);
  const y = of((pose) => pose.y, cell, MARGIN * length);
  const angle = of((pose) => pose.angle, turn, OVERSHOOT);
  return { start, cell, turn, low: [x[0], y[0], angle[0]], high: [x[1], y[1], angle[1]] };
}

/** Clearance at the nodes of a grid: each heading's separating axes are worked out once. */
function clearanceOn(grid: Grid, blocks: readonly BlockedRegion[]): (node: Node) => number {
  const slices = new Map<number, readonly Float64Array[]>();
  const sliceOf = (k: number): readonly Float64Array[] => {
    const known = slices.get(k);
    if (known !== undefined) return known;
    const made = blocks.map((block) =>
      Float64Array.from(
        separatingAxes(block, grid.start.angle + k * grid.turn).flatMap(({ ax, ay, b }) => [ax, ay, b]),
      ),
    );
    slices.set(k, made);
    return made;
  };
  return ([i, j, k]) => {
    const x = grid.start.x + i * grid.cell;
    const y = grid.start.y + j * grid.cell;
    let clear = PLENTY;
    for (const axes of sliceOf(k)) {
      let apart = Number.NEGATIVE_INFINITY;
      for (let a = 0; a < axes.length; a += 3) {
        const off = (axes[a] as number) * x + (axes[a + 1] as number) * y + (axes[a + 2] as number);
        if (off > apart) apart = off;
      }
      if (apart < clear) clear = apart;
    }
    return clear;
  };
}

const STEPS: readonly Node[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

interface GridPath {
  readonly nodes: readonly Node[];
  /** The least clearance on the way, metres. */
  readonly clear: number;
}

/** A grid's nodes as numbers from 0. */
function indexing({ low, high }: Grid) {
  const [nx, ny, nz] = [high[0] - low[0] + 1, high[1] - low[1] + 1, high[2] - low[2] + 1];
  return {
    count: nx * ny * nz,
    indexOf: ([i, j, k]: Node): number => ((k - low[2]) * ny + (j - low[1])) * nx + (i - low[0]),
    nodeOf: (index: number): Node => [
      (index % nx) + low[0],
      (Math.floor(index / nx) % ny) + low[1],
      Math.floor(index / (nx * ny)) + low[2],
    ],
  };
}

/**
 * The path of nodes whose least clearance is largest (Dijkstra's algorithm for the widest path); of equal ones the
 * shortest. `isInside` says which nodes of the grid may be used.
 */
function widestPath(
  grid: Grid,
  goal: Node,
  clearance: (node: Node) => number,
  isInside: (node: Node) => boolean,
): GridPath | undefined {
  const { low, high } = grid;
  const { count, indexOf, nodeOf } = indexing(grid);
  const widest = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const steps = new Int32Array(count);
  const parent = new Int32Array(count).fill(-1);
  const isDone = new Uint8Array(count);
  const open = priorityQueue<number>();
  const start = indexOf([0, 0, 0]);
  const end = indexOf(goal);
  widest[start] = PLENTY;
  open.add(0, start);
  for (let entry = open.next(); entry !== undefined; entry = open.next()) {
    const here = entry.item;
    if (isDone[here] === 1) continue;
    isDone[here] = 1;
    if (here === end) break;
    const [i, j, k] = nodeOf(here);
    for (const [di, dj, dk] of STEPS) {
      const node: Node = [i + di, j + dj, k + dk];
      if (node[0] < low[0] || node[0] > high[0] || node[1] < low[1] || node[1] > high[1]) continue;
      if (node[2] < low[2] || node[2] > high[2]) continue;
      const next = indexOf(node);
      if (isDone[next] === 1 || !isInside(node)) continue;
      const clear = Math.min(widest[here] as number, clearance(node));
      if (clear <= (widest[next] as number)) continue;
      widest[next] = clear;
      steps[next] = (steps[here] as number) + 1;
      parent[next] = here;
      // A step weighs less than any clearance that could be told apart.
      open.add(-clear + (steps[next] as number) * 1e-7, next);
    }
  }
  if (isDone[end] !== 1) return undefined;
  const nodes: Node[] = [];
  for (let at = end; at !== -1; at = parent[at] as number) nodes.push(nodeOf(at));
  return { nodes: nodes.reverse(), clear: widest[end] as number };
}

/** The nodes of a finer grid that lie in the cells of a path or beside them. */
function tubeOf(grid: Grid, path: GridPath): (node: Node) => boolean {
  const { count, indexOf } = indexing(grid);
  const cells = new Uint8Array(count);
  const inside = (node: Node) =>
    node.every((value, axis) => value >= (grid.low[axis] ?? 0) && value <= (grid.high[axis] ?? 0));
  for (const [i, j, k] of path.nodes) {
    for (const di of [-1, 0, 1]) {
      for (const dj of [-1, 0, 1]) {
        for (const dk of [-1, 0, 1]) {
          const node: Node = [i + di, j + dj, k + dk];
          if (inside(node)) cells[indexOf(node)] = 1;
        }
      }
    }
  }
  return ([i, j, k]) => {
    const node: Node = [Math.round(i / FINER), Math.round(j / FINER), Math.round(k / FINER)];
    return inside(node) && cells[indexOf(node)] === 1;
  };
}

/**
 * Placements of a rectangle along the motion from the first pose to the last that keeps the most clearance, the poses
 * between them being places that it passes by. Angles are unwrapped: their difference says how far and which way it
 * turns. A search over place and heading on a grid, then on a finer one along its path, then the best place at every
 * heading of that path, climbed to without leaving it. The least clearance of the placements is that of the motion, to
 * about a centimetre where it has to slide through a narrows, and exact where a heading is the narrows.
 */
export function connectedMotion(blocks: readonly BlockedRegion[], poses: readonly Pose[]): readonly Placement[] {
  const to = poses.at(-1);
  if (to === undefined) return [];
  const length = Math.min(...blocks.map(({ base }) => base.length));
  const coarse = gridOver(poses, length);
  const first = widestPath(coarse, nodeNear(coarse, to), clearanceOn(coarse, blocks), () => true);
  if (first === undefined) return [];
  const fine: Grid = {
    ...coarse,
    cell: coarse.cell / FINER,
    turn: TURN / FINER,
    low: [FINER * coarse.low[0] - FINER, FINER * coarse.low[1] - FINER, FINER * coarse.low[2] - FINER],
    high: [FINER * coarse.high[0] + FINER, FINER * coarse.high[1] + FINER, FINER * coarse.high[2] + FINER],
  };
  const second = widestPath(fine, nodeNear(fine, to), clearanceOn(fine, blocks), tubeOf(coarse, first)) ?? first;
  const grid = second === first ? coarse : fine;
  const clearance = clearanceOn(grid, blocks);
  const runs = runsByHeading(second);
  const climbed = runs.map((run) => {
    const best = run.reduce((high, node) => (clearance(node) > clearance(high) ? node : high));
    return maxClearancePlacement(blocks, poseAt(grid, best), 'anywhere');
  });
  return climbed.flatMap((each, i) => {
    const before = climbed[i - 1];
    if (before === undefined || distance(before.pose, each.pose) <= LEAP) return [each];
    // The best places of two headings that follow each other lie apart: the way between them is what the grid has there.
    const between = [...(runs[i - 1] ?? []), ...(runs[i] ?? [])];
    const low = between.reduce((least, node) => (clearance(node) < clearance(least) ? node : least));
    const most = Math.min(before.clear, each.clear, clearance(low) + GRID_ERROR * length);
    return [{ ...each, pose: poseAt(grid, low), clear: most }, each];
  });
}

/** The nodes of a path, in runs of one heading each. */
function runsByHeading({ nodes }: GridPath): readonly (readonly [Node, ...Node[]])[] {
  const runs: [Node, ...Node[]][] = [];
  for (const node of nodes) {
    const last = runs.at(-1);
    if (last !== undefined && last[0][2] === node[2]) last.push(node);
    else runs.push([node]);
  }
  return runs;
}
