/** The poses that a turn of a way through an obstacle has to pass, from the lane before it into the lane after it. */
import type { Metres } from '../../measure/quantity.ts';
import { poseOn } from '../../plane/path.ts';
import { normalizeAngle, type Pose, toLocal } from '../../plane/pose.ts';
import { boundsIntersect, ringBounds } from '../../plane/ring.ts';
import type { LineElement } from '../../ride/line.ts';
import { type BlockedRegion, maxClearancePlacement } from './max-clearance.ts';

/** Where the horse faces at the start of an element, in the obstacle's frame. */
export function facingPose(frame: Pose, { path, facing: by }: LineElement, along: 'start' | 'end'): Pose | undefined {
  const stretch = along === 'start' ? path[0] : path.at(-1);
  if (stretch === undefined) return undefined;
  const pose = along === 'start' ? stretch.start : poseOn(stretch, stretch.length);
  return toLocal(frame, { ...pose, angle: pose.angle + by });
}

/** Only blocks within reach can limit it; leaving out the others saves time. */
export function nearbyRegions(blocks: readonly BlockedRegion[], poses: readonly Pose[]): readonly number[] {
  const box = ringBounds(poses);
  return blocks.flatMap(({ ring, base }, i) => (boundsIntersect(box, ringBounds(ring), base.length) ? [i] : []));
}

/** A larger turn goes about on the spot and not from one lane into the next, radians. */
const ABOUT_TURN = (5 * Math.PI) / 6;
/** Deeper than this on a piece a horse is over it, as it steps into a box, and not in a lane that is too narrow. */
const OVER: Metres = 0.2;

export function isInLane(blocks: readonly BlockedRegion[], pose: Pose): boolean {
  const near = nearbyRegions(blocks, [pose]).flatMap((i) => blocks[i] ?? []);
  return near.length === 0 || maxClearancePlacement(near, pose, 'across').clear > -OVER;
}

/**
 * The poses that a turn has to pass: half a base before it in the lane that leads to it, in its middle before and after
 * turning, and half a base after it. Their angles are unwrapped.
 */
export function posesOfTurn(
  frame: Pose,
  elements: readonly LineElement[],
  index: number,
  { blocks, from, half }: { readonly blocks: readonly BlockedRegion[]; readonly from: Pose; readonly half: Metres },
): readonly Pose[] {
  const turned = { ...from, angle: from.angle + (elements[index]?.turn ?? 0) };
  const beside = (element: LineElement | undefined, near: Pose, end: 'start' | 'end'): readonly Pose[] => {
    const length = element?.length ?? 0;
    if (element === undefined || length === 0 || (element.move !== 'ride' && element.move !== 'back')) return [];
    // Between two turns the horse has to be somewhere in the middle.
    const beyond = elements[end === 'end' ? index - 2 : index + 2];
    const far = Math.min(half, beyond !== undefined && beyond.turn !== 0 ? length / 2 : length);
    const along = end === 'end' ? length - far : far;
    const pose = poseOnPath(element, along);
    if (pose === undefined) return [];
    const local = toLocal(frame, { ...pose, angle: pose.angle + element.facing });
    const there = { ...local, angle: near.angle + normalizeAngle(local.angle - near.angle) };
    return isInLane(blocks, there) ? [there] : [];
  };
  // A horse turns about where it stands; working a gate it goes round its end, which no lane leads it to.
  const isAboutTurn = Math.abs(turned.angle - from.angle) > ABOUT_TURN;
  if (isAboutTurn || elements.some(({ move }) => move === 'work')) return [from, turned];
  return [...beside(elements[index - 1], from, 'end'), from, turned, ...beside(elements[index + 1], turned, 'start')];
}

function poseOnPath({ path }: LineElement, along: Metres): Pose | undefined {
  let left = along;
  for (const stretch of path) {
    if (left <= stretch.length) return poseOn(stretch, left);
    left -= stretch.length;
  }
  const last = path.at(-1);
  return last === undefined ? undefined : poseOn(last, last.length);
}
