/** How a rigid rectangle turns from one lane into the next, or on the spot: placements along a motion that is connected. */
import type { Metres, Radians } from '../../measure/quantity.ts';
import { distance } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import { connectedMotion } from './connected-motion.ts';
import { type BlockedRegion, clearanceAt, maxClearancePlacement, PLENTY, type Placement } from './max-clearance.ts';

/** The step of the headings that a climb follows, and of those around the narrowest one, radians. */
const STEP: Radians = Math.PI / 60;
const FINE: Radians = Math.PI / 720;
/** From one heading to the next the best place moves no further than this, metres; further is a leap to another one. */
const LEAP: Metres = 0.1;
/** A way between two placements is looked at this often, and may have so much less clearance between looks, metres. */
const LOOK: Metres = 0.04;
const LOSS: Metres = 0.004;
/** Two climbs that agree to this follow the same motion, metres. */
const SAME: Metres = 0.001;

/** The best places for one heading after the other, each climbed to from the last. */
function followed(blocks: readonly BlockedRegion[], start: Pose, headings: readonly Radians[]): readonly Placement[] {
  let pose = start;
  return headings.map((angle) => {
    const next = maxClearancePlacement(blocks, { ...pose, angle }, 'anywhere');
    pose = next.pose;
    return next;
  });
}

/** Whether the rectangle may go straight from one pose to another, turning evenly on the way, with so much clearance. */
function mayGo(blocks: readonly BlockedRegion[], from: Pose, to: Pose, clear: Metres): boolean {
  const count = Math.max(2, Math.ceil(distance(from, to) / LOOK));
  for (let i = 1; i < count; i += 1) {
    const part = i / count;
    const between = {
      x: from.x + part * (to.x - from.x),
      y: from.y + part * (to.y - from.y),
      angle: from.angle + part * (to.angle - from.angle),
    };
    if (clearanceAt(blocks, between) < clear - LOSS) return false;
  }
  return true;
}

function isContinuous(blocks: readonly BlockedRegion[], placements: readonly Placement[], clear: Metres): boolean {
  return placements.every(({ pose }, i) => {
    const before = placements[i - 1];
    return before === undefined || mayGo(blocks, before.pose, pose, clear);
  });
}

function narrowestOf(placements: readonly Placement[]): Placement | undefined {
  return placements.reduce<Placement | undefined>(
    (low, each) => (low === undefined || each.clear < low.clear ? each : low),
    undefined,
  );
}

/**
 * The motion that a climb finds, where both directions find one: the climb never leaps, it comes into the other lane, and
 * it is as narrow from the first pose as from the last. Undefined otherwise; then it proves nothing.
 */
function climbedMotion(blocks: readonly BlockedRegion[], from: Pose, to: Pose): readonly Placement[] | undefined {
  const by = to.angle - from.angle;
  const count = Math.max(1, Math.ceil(Math.abs(by) / STEP));
  const headings = Array.from({ length: count + 1 }, (_, i) => from.angle + (by * i) / count);
  const ahead = followed(blocks, from, headings);
  const back = followed(blocks, to, headings.toReversed());
  const [low, other] = [narrowestOf(ahead), narrowestOf(back)];
  const [arrived, left] = [ahead.at(-1), back.at(-1)];
  if (low === undefined || other === undefined || arrived === undefined || left === undefined) return undefined;
  // The lanes at both ends have placements of their own: what they leave is no fault of the turn.
  const ends = Math.min(clearanceAt(blocks, from), clearanceAt(blocks, to), PLENTY);
  const clear = Math.min(low.clear, ends);
  if (Math.abs(clear - Math.min(other.clear, ends)) > SAME) return undefined;
  if (!isContinuous(blocks, ahead, clear) || !isContinuous(blocks, back, clear)) return undefined;
  return mayGo(blocks, arrived.pose, to, clear) && mayGo(blocks, left.pose, from, clear) ? ahead : undefined;
}

/** Placements at finer headings around the narrowest one, followed from it to both sides. */
function around(blocks: readonly BlockedRegion[], { pose }: Placement, [low, high]: readonly [number, number]) {
  const steps = Array.from({ length: Math.round(STEP / FINE) }, (_, i) => FINE * (i + 1));
  return [1, -1].flatMap((way) =>
    followed(
      blocks,
      pose,
      steps.map((step) => pose.angle + way * step).filter((angle) => angle >= low && angle <= high),
    ),
  );
}

/**
 * Placements along a turn that passes the poses, the first in the lane before it, the last in the lane after it; angles
 * are unwrapped. Their least clearance is the most that a motion through the turn can have: where a climb from both ends
 * does not find one motion, a search over place and heading does.
 */
export function turnMotion(blocks: readonly BlockedRegion[], poses: readonly Pose[]): readonly Placement[] {
  const [from, to] = [poses[0], poses.at(-1)];
  if (from === undefined || to === undefined) return [];
  const found = climbedMotion(blocks, from, to) ?? connectedMotion(blocks, poses);
  const narrowest = narrowestOf(found);
  if (narrowest === undefined) return found;
  const angles = found.map(({ pose }) => pose.angle);
  const fine = around(blocks, narrowest, [Math.min(...angles), Math.max(...angles)]);
  const way = Math.sign(to.angle - from.angle || 1);
  // A leap while following proves nothing: those placements are left out.
  const near = fine.filter(
    ({ pose, clear }) => distance(pose, narrowest.pose) <= LEAP && clear < narrowest.clear + SAME,
  );
  return [...found, ...near].sort((a, b) => way * (a.pose.angle - b.pose.angle));
}
