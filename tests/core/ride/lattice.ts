/**
 * The router's oracle: ways found by trying everything. Short arcs and straights from a lattice of places and headings,
 * best first, with every free path to the end tried from each. It knows nothing of corners.
 */
import type { PlacedPiece } from '../../../src/core/course/placed.ts';
import { candidatePath, dubinsCandidates, shortestDubinsLength } from '../../../src/core/plane/dubins.ts';
import { type Path, pathEnd, pathPoints, type Stretch } from '../../../src/core/plane/path.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';
import { ringBounds } from '../../../src/core/plane/ring.ts';
import { ringPointDistance } from '../../../src/core/plane/segment.ts';
import { priorityQueue } from '../../../src/core/ride/priority-queue.ts';

export interface Small {
  readonly length: number;
  readonly width: number;
  readonly pieces: readonly PlacedPiece[];
  /** Metres kept from a thing that lies, from a thing that stands, and from the walls. */
  readonly lying: number;
  readonly standing: number;
  readonly wall: number;
}

const STEP = 0.5;
/** The lattice: places this fine, and so many headings. Of all states in one cell the first is kept, which is the best. */
const CELL = 0.2;
const HEADINGS = 36;
const MOST = 4000;
const LOOKED = 0.08;

function boxes({ pieces }: Small) {
  return pieces.map((piece) => ({ piece, box: ringBounds(piece.footprint) }));
}

/** Whether every place on the path keeps its room from all pieces and the walls. */
export function isFree(path: Path, small: Small, step = LOOKED): boolean {
  const all = boxes(small);
  return pathPoints(path, step).every((at) => {
    const { x, y } = at;
    if (Math.min(x, y, small.length - x, small.width - y) < small.wall - 1e-9) return false;
    return all.every(({ piece, box }) => {
      const near = piece.figure.stands === 'standing' ? small.standing : small.lying;
      if (x < box.minX - near || x > box.maxX + near || y < box.minY - near || y > box.maxY + near) return true;
      return ringPointDistance(piece.footprint, at) >= near;
    });
  });
}

interface State {
  readonly pose: Pose;
  readonly gone: number;
}

/** The length of the best way found, or undefined when all that can be reached has been tried. */
export function latticeLength(begin: Pose, finish: Pose, { radius, small }: { radius: number; small: Small }) {
  const waiting = priorityQueue<State>();
  const seen = new Set<string>();
  let best = Number.POSITIVE_INFINITY;
  waiting.add(shortestDubinsLength(begin, finish, radius), { pose: begin, gone: 0 });
  for (let count = 0; count < MOST; count += 1) {
    const next = waiting.next();
    if (next === undefined || next.cost >= best) break;
    const { pose, gone } = next.item;
    const turn = Math.round((pose.angle / (2 * Math.PI)) * HEADINGS);
    const key = `${Math.round(pose.x / CELL)} ${Math.round(pose.y / CELL)} ${((turn % HEADINGS) + HEADINGS) % HEADINGS}`;
    if (seen.has(key)) continue;
    seen.add(key);
    for (const way of dubinsCandidates(pose, finish, radius).sort((a, b) => a.length - b.length)) {
      if (gone + way.length >= best) break;
      if (!isFree(candidatePath(pose, way, radius), small)) continue;
      best = gone + way.length;
      break;
    }
    for (const curvature of [0, 1 / radius, -1 / radius]) {
      const stretch: Stretch = { start: pose, length: STEP, curvature };
      if (!isFree([stretch], small)) continue;
      const to = pathEnd([stretch]);
      const left = shortestDubinsLength(to, finish, radius);
      if (gone + STEP + left < best) waiting.add(gone + STEP + left, { pose: to, gone: gone + STEP });
    }
  }
  return Number.isFinite(best) ? best : undefined;
}
