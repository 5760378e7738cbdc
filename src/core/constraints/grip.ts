import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import type { Residual } from '../solve/problem.ts';
import type { Grip, GrippedPose, ObservationKind, ObservedRelation, Wall } from './constraint.ts';

/** What the equations need to know of a held piece: where its gripped point is and which way it lies. */
export interface AxisPoint {
  /** The gripped point on the axis. */
  readonly x: number;
  readonly y: number;
  /** Unit vector along the piece, from its −x end to its +x end; (−uy, ux) points to its +y side. */
  readonly ux: number;
  readonly uy: number;
  /** Signed distance along the axis from the middle to the gripped point. */
  readonly axialOffset: number;
}

/** A derivative by x, y and angle of one held pose. */
export type Gradient = readonly [number, number, number];
export const ZERO_GRADIENT: Gradient = [0, 0, 0];

export function axisPoint(gripped: GrippedPose): AxisPoint {
  const ux = Math.cos(gripped.pose.angle);
  const uy = Math.sin(gripped.pose.angle);
  const reach = (gripped.at - 0.5) * gripped.length;
  return { x: gripped.pose.x + reach * ux, y: gripped.pose.y + reach * uy, ux, uy, axialOffset: reach };
}

/** The middle of a held piece, or of a wall, with its direction. */
export function axisMiddle(gripped: GrippedPose): AxisPoint {
  return axisPoint({ ...gripped, at: 0.5 });
}

/** How a value that changes by (gx, gy) with the gripped point changes with the pose; `spin` is what turning adds. */
export function pointGradient(point: AxisPoint, gx: number, gy: number, spin = 0): Gradient {
  return [gx, gy, point.axialOffset * (gy * point.ux - gx * point.uy) + spin];
}

export function residual(value: number, ...gradient: readonly Gradient[]): Residual {
  return { value, gradient };
}

/** The grips of a constraint that takes two; anything else is a programmer's mistake. */
export function pairOf(gripped: readonly GrippedPose[], kind: string): readonly [GrippedPose, GrippedPose] {
  const [first, second] = gripped;
  if (first === undefined || second === undefined || gripped.length !== 2) {
    throw new Error(`${kind} takes 2 grips, got ${gripped.length}`);
  }
  return [first, second];
}

/** An observation of two grips as they are stored; a grip that is missing is a programmer's mistake. */
export function observedPair(kind: ObservationKind, first?: Partial<Grip>, second?: Partial<Grip>): ObservedRelation {
  if (first === undefined || second === undefined) throw new Error(`${kind} is observed at 2 grips`);
  return { kind, grips: [first as Grip, second as Grip] };
}

/** The grips of a constraint that takes three. */
export function threeOf(
  gripped: readonly GrippedPose[],
  kind: string,
): readonly [GrippedPose, GrippedPose, GrippedPose] {
  const [first, second, third] = gripped;
  if (first === undefined || second === undefined || third === undefined || gripped.length !== 3) {
    throw new Error(`${kind} takes 3 grips, got ${gripped.length}`);
  }
  return [first, second, third];
}

/**
 * How far a gripped thing stands off the middle line of a long piece, square to it: towards its +y side for side 1, its
 * −y side for −1. Half the long piece and `half` of the thing are taken off. Metres.
 */
export function standoff([thing, long]: readonly [GrippedPose, GrippedPose], side: 1 | -1, half = 0): Residual {
  const at = axisPoint(thing);
  const line = axisMiddle(long);
  const nx = -line.uy * side;
  const ny = line.ux * side;
  const dx = at.x - line.x;
  const dy = at.y - line.y;
  return residual(
    nx * dx + ny * dy - half - long.width / 2,
    pointGradient(at, nx, ny),
    pointGradient(line, -nx, -ny, -side * (line.ux * dx + line.uy * dy)),
  );
}

/** The point so far from a point along a direction. */
export function pointAlong(
  from: { readonly x: number; readonly y: number },
  direction: { ux: number; uy: number },
  far: number,
): Point {
  return { x: from.x + far * direction.ux, y: from.y + far * direction.uy };
}

/** The angle between undirected lines, brought into (−π/2, π/2]: a pole has no front. */
export function lineAngle(angle: number): number {
  const rest = angle - Math.PI * Math.ceil(angle / Math.PI - 0.5);
  return rest === -Math.PI / 2 ? Math.PI / 2 : rest;
}

/** Poles that differ by no more than this are laid to be parallel, radians. Estimate. */
const NEARLY_PARALLEL = 0.1;

/** Whether the first two gripped pieces lie nearly parallel. */
export function isNearlyParallel([first, second]: readonly GrippedPose[]): boolean {
  return Math.abs(lineAngle((second?.pose.angle ?? 0) - (first?.pose.angle ?? 0))) <= NEARLY_PARALLEL;
}

/** The angle of an undirected line, brought into [0, π). */
export function lineTurn(angle: number): number {
  const rest = angle - Math.PI * Math.floor(angle / Math.PI);
  return rest >= Math.PI ? 0 : rest;
}

/** A wall as the equations hold it: at its middle, +x along it with the arena on its left, +y into the arena. Metres. */
export function grippedWall(arena: { readonly length: number; readonly width: number }, wall: Wall): GrippedPose {
  const corners: Readonly<Record<Wall, Pose>> = {
    south: { x: arena.length / 2, y: 0, angle: 0 },
    east: { x: arena.length, y: arena.width / 2, angle: Math.PI / 2 },
    north: { x: arena.length / 2, y: arena.width, angle: Math.PI },
    west: { x: 0, y: arena.width / 2, angle: -Math.PI / 2 },
  };
  return { pose: corners[wall], length: 0, width: 0, at: 0.5 };
}
