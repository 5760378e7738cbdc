/** How much room a base has through a lane, by a search of its own: a flood over place and heading on one fine grid. */
import type { Point } from '../../../src/core/plane/point.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';

const CELL = 0.0125;
const TURN = Math.PI / 144;
const MARGIN = 0.28;
const OVERSHOOT = 0.3;
const PLENTY = 0.3;

type Ring = readonly Point[];

/** The largest distance by which a line parallel to a side of either outline parts them; negative where none does. */
function partedBy(base: { readonly length: number; readonly width: number }, at: Pose, ring: Ring): number {
  const [c, s] = [Math.cos(at.angle), Math.sin(at.angle)];
  const [l, w] = [base.length / 2, base.width / 2];
  let apart = Number.NEGATIVE_INFINITY;
  let [lowU, highU, lowV, highV] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of ring) {
    const u = c * (x - at.x) + s * (y - at.y);
    const v = -s * (x - at.x) + c * (y - at.y);
    lowU = Math.min(lowU, u);
    highU = Math.max(highU, u);
    lowV = Math.min(lowV, v);
    highV = Math.max(highV, v);
  }
  apart = Math.max(apart, lowU - l, -highU - l, lowV - w, -highV - w);
  for (let i = 0; i < ring.length; i += 1) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const [nx, ny] = [(b.y - a.y) / long, (a.x - b.x) / long];
    const far = nx * (at.x - a.x) + ny * (at.y - a.y);
    apart = Math.max(apart, far - l * Math.abs(c * nx + s * ny) - w * Math.abs(c * ny - s * nx));
  }
  return apart;
}

/** The clearance of the best motion from the first pose to the last, metres: widest path by buckets of a quarter millimetre. */
export function roomThrough(
  rings: readonly Ring[],
  base: { readonly length: number; readonly width: number },
  poses: readonly Pose[],
): number {
  const [from, to] = [poses[0], poses.at(-1)];
  if (from === undefined || to === undefined) return Number.NaN;
  const span = (read: (pose: Pose) => number, step: number, margin: number) => {
    const all = poses.map((pose) => (read(pose) - read(from)) / step);
    return [Math.floor(Math.min(...all) - margin / step), Math.ceil(Math.max(...all) + margin / step)] as const;
  };
  const [x0, x1] = span((pose) => pose.x, CELL, MARGIN);
  const [y0, y1] = span((pose) => pose.y, CELL, MARGIN);
  const [k0, k1] = span((pose) => pose.angle, TURN, OVERSHOOT);
  const [nx, ny, nk] = [x1 - x0 + 1, y1 - y0 + 1, k1 - k0 + 1];
  const indexOf = (i: number, j: number, k: number) => ((k - k0) * ny + (j - y0)) * nx + (i - x0);
  const clear = new Float32Array(nx * ny * nk).fill(Number.NaN);
  const clearance = (i: number, j: number, k: number) => {
    const index = indexOf(i, j, k);
    const known = clear[index] as number;
    if (!Number.isNaN(known)) return known;
    const at = { x: from.x + i * CELL, y: from.y + j * CELL, angle: from.angle + k * TURN };
    let low = PLENTY;
    for (const ring of rings) low = Math.min(low, partedBy(base, at, ring));
    clear[index] = low;
    return low;
  };
  const buckets: number[][] = [];
  const bucketOf = (value: number) => Math.max(0, Math.round((PLENTY - value) / 0.00025));
  const seen = new Uint8Array(nx * ny * nk);
  const goal = indexOf(
    Math.round((to.x - from.x) / CELL),
    Math.round((to.y - from.y) / CELL),
    Math.round((to.angle - from.angle) / TURN),
  );
  const push = (i: number, j: number, k: number, above: number) => {
    if (i < x0 || i > x1 || j < y0 || j > y1 || k < k0 || k > k1) return;
    const index = indexOf(i, j, k);
    if (seen[index] === 1) return;
    seen[index] = 1;
    const bucket = Math.max(above, bucketOf(clearance(i, j, k)));
    const list = buckets[bucket] ?? [];
    list.push(index);
    buckets[bucket] = list;
  };
  push(0, 0, 0, 0);
  for (let bucket = 0; bucket < buckets.length; bucket += 1) {
    const list = buckets[bucket];
    if (list === undefined) continue;
    for (let next = list.pop(); next !== undefined; next = list.pop()) {
      if (next === goal) return PLENTY - bucket * 0.00025;
      const i = (next % nx) + x0;
      const j = (Math.floor(next / nx) % ny) + y0;
      const k = Math.floor(next / (nx * ny)) + k0;
      push(i + 1, j, k, bucket);
      push(i - 1, j, k, bucket);
      push(i, j + 1, k, bucket);
      push(i, j - 1, k, bucket);
      push(i, j, k + 1, bucket);
      push(i, j, k - 1, bucket);
    }
  }
  return Number.NEGATIVE_INFINITY;
}
