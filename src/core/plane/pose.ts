import type { Radians } from '../measure/quantity.ts';
import type { Point } from './point.ts';

/** A place and a heading: the frame of a rigid thing on the ground. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly angle: Radians;
}

export const ORIGIN: Pose = { x: 0, y: 0, angle: 0 };

export function pose(x: number, y: number, angle: Radians = 0): Pose {
  return { x, y, angle };
}

/** A point given in the frame, as a point on the ground. */
export function toWorld(frame: Pose, local: Point): Point {
  const c = Math.cos(frame.angle);
  const s = Math.sin(frame.angle);
  return { x: frame.x + c * local.x - s * local.y, y: frame.y + s * local.x + c * local.y };
}

/** A pose given in the frame, as a pose on the ground. */
export function compose(frame: Pose, local: Pose): Pose {
  return { ...toWorld(frame, local), angle: frame.angle + local.angle };
}

/** A ground pose, as seen from the frame: `composed(frame, within(frame, p)) = p`. */
export function toLocal(frame: Pose, ground: Pose): Pose {
  const c = Math.cos(frame.angle);
  const s = Math.sin(frame.angle);
  const dx = ground.x - frame.x;
  const dy = ground.y - frame.y;
  return { x: c * dx + s * dy, y: -s * dx + c * dy, angle: ground.angle - frame.angle };
}

/** The mirror image about the frame's x axis. */
export function mirrorImage(local: Pose): Pose {
  return { x: local.x, y: -local.y, angle: -local.angle };
}

/** The angle brought into (−π, π]. */
export function normalizeAngle(angle: Radians): Radians {
  const turn = 2 * Math.PI;
  const rest = angle - turn * Math.ceil((angle - Math.PI) / turn);
  return rest === -Math.PI ? Math.PI : rest;
}

/** Whether two poses are the same to the bit. */
export function isSamePose(a: Pose, b: Pose): boolean {
  return a.x === b.x && a.y === b.y && a.angle === b.angle;
}

/** The same place, facing the other way. */
export function oppositePose({ x, y, angle }: Pose): Pose {
  return { x, y, angle: angle + Math.PI };
}
