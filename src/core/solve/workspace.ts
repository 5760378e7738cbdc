import type { Group } from './components.ts';
import { banded } from './ordering.ts';
import type { Wishes } from './problem.ts';
import { type System, systemOf } from './system.ts';

/** A group with the arrays that solving it takes: made once for a problem and written over by every solution. */
export interface Workbench {
  readonly group: Group;
  readonly system: System;
  /** Coordinates where the bodies are, and where the solution has come to. */
  readonly home: Float64Array;
  readonly q: Float64Array;
  /** Weight of each coordinate, turning brought to metres by the lever; wishes aside. */
  readonly weight: Float64Array;
  /** By coordinate: how freely it moves; where it is pulled; the step; a place that is tried. */
  readonly mobility: Float64Array;
  readonly pull: Float64Array;
  readonly move: Float64Array;
  readonly tried: Float64Array;
  readonly placeOf: ReadonlyMap<string, number>;
}

export function workbench(given: Group): Workbench {
  const group = banded(given);
  const home = Float64Array.from(group.free.flatMap(({ pose }) => [pose.x, pose.y, pose.angle]));
  const blank = () => new Float64Array(home.length);
  return {
    group,
    system: systemOf(group),
    home,
    q: Float64Array.from(home),
    weight: Float64Array.from(group.free.flatMap(({ weight, lever }) => [weight, weight, weight * lever ** 2])),
    mobility: blank(),
    pull: blank(),
    move: blank(),
    tried: blank(),
    placeOf: new Map(group.free.map((body, b) => [body.id, b])),
  };
}

/** A wish as the arrays know it. */
export interface Wished {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly lever: number;
  /** Where its coordinates begin. */
  readonly at: number;
}

export function wishedOf({ group, placeOf }: Workbench, wishes: Wishes): readonly Wished[] {
  const found: Wished[] = [];
  for (const [id, { x, y, angle }] of wishes) {
    const b = placeOf.get(id);
    if (b !== undefined) found.push({ x, y, angle, lever: group.free[b]?.lever ?? 1, at: 3 * b });
  }
  return found;
}
