import type { Component } from './components.ts';
import { cuthillMcKee } from './ordering.ts';
import type { Targets } from './problem.ts';
import { type System, systemOf } from './system.ts';

/** A component with the arrays for solving it: made once for a problem and written over by every solution. */
export interface Workspace {
  readonly component: Component;
  readonly system: System;
  /** Coordinates where the bodies are, and where the solution has come to. */
  readonly start: Float64Array;
  readonly q: Float64Array;
  /** Weight of each coordinate, rotation brought to metres by the radius of gyration; targets not included. */
  readonly weight: Float64Array;
  /** By coordinate: inverse weight; desired step; the step; trial coordinates. */
  readonly inverseWeight: Float64Array;
  readonly desiredStep: Float64Array;
  readonly move: Float64Array;
  readonly trial: Float64Array;
  readonly bodyIndex: ReadonlyMap<string, number>;
}

export function workspace(given: Component): Workspace {
  const component = cuthillMcKee(given);
  const start = Float64Array.from(component.free.flatMap(({ pose }) => [pose.x, pose.y, pose.angle]));
  const blank = () => new Float64Array(start.length);
  return {
    component,
    system: systemOf(component),
    start,
    q: Float64Array.from(start),
    weight: Float64Array.from(
      component.free.flatMap(({ weight, radiusOfGyration }) => [weight, weight, weight * radiusOfGyration ** 2]),
    ),
    inverseWeight: blank(),
    desiredStep: blank(),
    move: blank(),
    trial: blank(),
    bodyIndex: new Map(component.free.map((body, b) => [body.id, b])),
  };
}

/** A target as the arrays need it. */
export interface DragTarget {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly radiusOfGyration: number;
  /** Index of its first coordinate. */
  readonly at: number;
}

export function dragTargets({ component, bodyIndex }: Workspace, targets: Targets): readonly DragTarget[] {
  const found: DragTarget[] = [];
  for (const [id, { x, y, angle }] of targets) {
    const b = bodyIndex.get(id);
    if (b !== undefined)
      found.push({ x, y, angle, radiusOfGyration: component.free[b]?.radiusOfGyration ?? 1, at: 3 * b });
  }
  return found;
}
