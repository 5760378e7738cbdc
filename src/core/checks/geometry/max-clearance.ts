import type { Metres, Radians } from '../../measure/quantity.ts';
import type { Point } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import { edges, type Ring } from '../../plane/ring.ts';

/** A rigid rectangle about the middle of the horse, its length along where the horse faces. */
export interface Rectangle {
  readonly length: Metres;
  readonly width: Metres;
}

/** A convex outline that the rectangle must not overlap, counter-clockwise. */
export interface BlockedRegion {
  readonly ring: Ring;
  readonly base: Rectangle;
}

/** A placement of the rectangle: its clearance, negative where it overlaps, and the block that limits it. */
export interface Placement {
  readonly pose: Pose;
  readonly clear: Metres;
  readonly block: number;
}

/** A distance that is linear in where the middle of the rectangle is: `ax x + ay y + b`. */
export interface SeparatingAxis {
  readonly ax: number;
  readonly ay: number;
  readonly b: number;
}

/** How far the middle moves in one step of the hill climb: at first, and at last. */
const STEP: Metres = 0.12;
const LAST_STEP: Metres = 0.0005;
const MOST_STEPS = 60;
/** With this much clearance the search stops, metres. */
export const PLENTY: Metres = 0.3;
/** A gain below this counts as none, metres. */
const GAIN: Metres = 1e-7;

const axisDistance = ({ ax, ay, b }: SeparatingAxis, { x, y }: Point): number => ax * x + ay * y + b;

/**
 * The signed distances between a turned rectangle and a convex block along each candidate separating axis. Their
 * largest is the signed distance of the two outlines: exact where they touch or overlap, too small where a corner faces
 * a corner (separating axis theorem).
 */
export function separatingAxes({ ring, base }: BlockedRegion, angle: Radians): readonly SeparatingAxis[] {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const [l, w] = [base.length / 2, base.width / 2];
  const own = [
    [ux, uy, l],
    [-ux, -uy, l],
    [-uy, ux, w],
    [uy, -ux, w],
  ] as const;
  const planes = own.map(([nx, ny, half]): SeparatingAxis => {
    let near = Number.POSITIVE_INFINITY;
    for (const { x, y } of ring) near = Math.min(near, x * nx + y * ny);
    return { ax: -nx, ay: -ny, b: near - half };
  });
  for (const [from, to] of edges(ring)) {
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    if (long === 0) continue;
    const nx = (to.y - from.y) / long;
    const ny = (from.x - to.x) / long;
    const reach = l * Math.abs(ux * nx + uy * ny) + w * Math.abs(ux * ny - uy * nx);
    planes.push({ ax: nx, ay: ny, b: -(from.x * nx + from.y * ny) - reach });
  }
  return planes;
}

function bestAxis(planes: readonly SeparatingAxis[], point: Point): SeparatingAxis {
  let best = planes[0];
  for (const plane of planes)
    if (best === undefined || axisDistance(plane, point) > axisDistance(best, point)) best = plane;
  if (best === undefined) throw new Error('bestAxis: a block has at least one side, got none');
  return best;
}

function leastDistance(planes: readonly SeparatingAxis[], point: Point): number {
  let low = Number.POSITIVE_INFINITY;
  for (const plane of planes) low = Math.min(low, axisDistance(plane, point));
  return low;
}

/** Where two linear distances are equal, as a line `px x + py y + q = 0`. */
function bisector(a: SeparatingAxis, b: SeparatingAxis): SeparatingAxis {
  return { ax: a.ax - b.ax, ay: a.ay - b.ay, b: a.b - b.b };
}

function lineCrossing(a: SeparatingAxis, b: SeparatingAxis): Point | undefined {
  const across = a.ax * b.ay - a.ay * b.ax;
  if (Math.abs(across) < 1e-12) return undefined;
  return { x: (a.ay * b.b - b.ay * a.b) / across, y: (b.ax * a.b - a.ax * b.b) / across };
}

/**
 * The point of the square about `from` where the least of the linear distances is largest. The square's corners are
 * among the candidates.
 */
function hillClimbStep(
  planes: readonly SeparatingAxis[],
  from: Point,
  step: Metres,
  along: SeparatingAxis | undefined,
): Point {
  const sides: SeparatingAxis[] =
    along === undefined
      ? [1, -1].flatMap((way) => [
          { ax: 1, ay: 0, b: -(from.x + way * step) },
          { ax: 0, ay: 1, b: -(from.y + way * step) },
        ])
      : [
          along,
          ...[1, -1].map((way) => ({
            ax: -along.ay,
            ay: along.ax,
            b: along.ay * from.x - along.ax * from.y - way * step,
          })),
        ];
  const lines = [...sides];
  for (const [i, a] of planes.entries()) for (const b of planes.slice(i + 1)) lines.push(bisector(a, b));
  let best = from;
  let height = leastDistance(planes, from) + GAIN;
  const slack = step * (1 + 1e-9);
  for (const [i, a] of lines.entries()) {
    for (let k = i + 1; k < lines.length; k += 1) {
      const b = lines[k];
      const point = b === undefined ? undefined : lineCrossing(a, b);
      if (point === undefined || Math.abs(point.x - from.x) > slack || Math.abs(point.y - from.y) > slack) continue;
      if (along !== undefined && Math.abs(axisDistance(along, point)) > 1e-9) continue;
      const now = leastDistance(planes, point);
      if (now > height) {
        best = point;
        height = now;
      }
    }
  }
  return best;
}

/** The clearance of the rectangle at a pose: the least over the blocks, negative where it overlaps one. */
export function clearanceAt(blocks: readonly BlockedRegion[], pose: Pose): Metres {
  return blocks.reduce((low, block) => {
    const axes = separatingAxes(block, pose.angle);
    return Math.min(low, axisDistance(bestAxis(axes, pose), pose));
  }, Number.POSITIVE_INFINITY);
}

/**
 * The placement near `start`, at its heading, with the largest clearance; `slide` restricts the motion to across the
 * heading. Hill climbing: for each block take its best separating axis, move to the best point of a small square,
 * repeat; clearance never falls. The result is a local optimum, or the first placement with ample clearance.
 */
export function maxClearancePlacement(
  blocks: readonly BlockedRegion[],
  start: Pose,
  slide: 'across' | 'anywhere',
): Placement {
  const all = blocks.map((block) => separatingAxes(block, start.angle));
  const [c, s] = [Math.cos(start.angle), Math.sin(start.angle)];
  const along = slide === 'across' ? { ax: c, ay: s, b: -(c * start.x + s * start.y) } : undefined;
  let point: Point = { x: start.x, y: start.y };
  let step = STEP;
  for (let i = 0; i < MOST_STEPS && step >= LAST_STEP; i += 1) {
    const chosen = all.map((planes) => bestAxis(planes, point));
    const low = leastDistance(chosen, point);
    if (low >= PLENTY) break;
    const near = chosen.filter((plane) => axisDistance(plane, point) <= low + 4 * step);
    const next = hillClimbStep(near, point, step, along);
    const gain =
      leastDistance(
        all.map((planes) => bestAxis(planes, next)),
        next,
      ) - low;
    if (gain > GAIN) point = next;
    // The best point was inside the square: the optimum is near, so the square shrinks.
    if (gain < step / 4) step /= 3;
  }
  let clear = Number.POSITIVE_INFINITY;
  let block = -1;
  for (const [i, planes] of all.entries()) {
    const room = axisDistance(bestAxis(planes, point), point);
    if (room < clear) {
      clear = room;
      block = i;
    }
  }
  return { pose: { ...point, angle: start.angle }, clear, block };
}
