/**
 * Pure edits: a course in, a course out. What an edit does not touch stays the same object, so that what is worked out
 * about it is remembered; an edit that changes nothing returns the course itself. Keys name obstacles (`fan-1`) and
 * pieces (`fan-1/pole-2`); a key that names nothing is passed over. Edits work on the current layout.
 */
import type { Constraint, Grip } from '../constraints/constraint.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { made } from '../obstacles/made.ts';
import type { Infeasible, Obstacle } from '../obstacles/obstacle.ts';
import type { Passage } from '../obstacles/passage.ts';
import type { Values } from '../pieces/params.ts';
import type { Point } from '../plane/point.ts';
import { type Pose, within } from '../plane/pose.ts';
import { carried, grained } from './carry.ts';
import { type Course, currentLayout, type Layout, type Leg } from './course.ts';
import { freeId, obstacleOf, pieceOf } from './keys.ts';
import { mirroredLayout } from './mirror.ts';
import { onPassage, tidied, withoutKeys } from './prune.ts';
import { mapped } from './sharing.ts';

export function changedLayout(course: Course, change: (layout: Layout) => Layout): Course {
  const current = currentLayout(course);
  const next = change(current);
  if (next === current) return course;
  const [first, ...rest] = course.layouts;
  const swap = (layout: Layout) => (layout === current ? next : layout);
  return { ...course, layouts: [swap(first), ...rest.map(swap)] };
}

/** An id that no obstacle of the current layout has: `fan-1`, `fan-2` … */
export function freshId(course: Course, kind: string): string {
  return freeId(
    kind,
    currentLayout(course).obstacles.map((obstacle) => obstacle.id),
  );
}

/** The leg that rides a passage as it is usually ridden. What is not ridden forward is come to at a walk. */
function usualLeg(layout: Layout, obstacle: Obstacle, passage: Passage): Leg {
  const gait = passage.gaits[0] ?? 'walk';
  const ridden = passage.stations.every((station) => station.kind === 'cross' || moveOf(station) === 'ride');
  return {
    id: freeId(
      'leg',
      layout.ride.legs.map((leg) => leg.id),
    ),
    obstacle: obstacle.id,
    passage: passage.id,
    gait,
    approach: ridden ? gait : 'walk',
    bends: [],
  };
}

function moveOf(station: Passage['stations'][number]): string {
  return station.kind === 'reach' ? station.move : station.kind;
}

function withObstacle(layout: Layout, obstacle: Obstacle): Layout {
  if (layout.obstacles.some((other) => other.id === obstacle.id)) {
    throw new Error(`added: an obstacle ${obstacle.id} is in the layout already; take an id from freshId`);
  }
  const obstacles = [...layout.obstacles, obstacle];
  const passage = obstacle.passages[0];
  if (passage === undefined) return { ...layout, obstacles };
  const legs = [...layout.ride.legs, usualLeg(layout, obstacle, passage)];
  return { ...layout, obstacles, ride: { ...layout.ride, legs } };
}

/** The course with the obstacle, ridden last by its first passage. Throws when its id is taken. */
export function added(course: Course, obstacle: Obstacle): Course {
  return changedLayout(course, (layout) => withObstacle(layout, obstacle));
}

/** The course without what the keys name, and without the legs and constraints that hung on it. */
export function erased(course: Course, keys: readonly string[]): Course {
  return changedLayout(course, (layout) => withoutKeys(layout, keys));
}

export function shifted(course: Course, keys: readonly string[], dx: Metres, dy: Metres): Course {
  if (dx === 0 && dy === 0) return course;
  return changedLayout(course, (layout) =>
    carried(layout, keys, (pose) => ({ x: pose.x + dx, y: pose.y + dy, angle: pose.angle })),
  );
}

/** Turned counter-clockwise by an angle about a point on the ground. */
export function turned(course: Course, keys: readonly string[], by: Radians, about: Point): Course {
  if (by === 0) return course;
  const c = Math.cos(by);
  const s = Math.sin(by);
  return changedLayout(course, (layout) =>
    carried(layout, keys, (pose) => {
      const dx = pose.x - about.x;
      const dy = pose.y - about.y;
      return { x: about.x + c * dx - s * dy, y: about.y + s * dx + c * dy, angle: pose.angle + by };
    }),
  );
}

/**
 * The mirror image of whole obstacles, a piece standing for its obstacle: one about its own x axis, several about the
 * line along the arena through the middle of their frames.
 */
export function flipped(course: Course, keys: readonly string[]): Course {
  const whole = new Set(keys.map(obstacleOf));
  return changedLayout(course, (layout) => mirroredLayout(layout, whole));
}

/** Copies whole obstacles, a piece standing for its obstacle, with what holds them together; they are ridden last. */
export function duplicated(
  course: Course,
  keys: readonly string[],
  dx: Metres,
  dy: Metres,
): { readonly course: Course; readonly keys: readonly string[] } {
  const wanted = new Set(keys.map(obstacleOf));
  const originals = currentLayout(course).obstacles.filter((obstacle) => wanted.has(obstacle.id));
  const names = new Map<string, string>();
  let next = course;
  for (const original of originals) {
    const id = freshId(next, original.kind);
    names.set(original.id, id);
    const { x, y, angle } = original.pose;
    next = added(next, { ...original, id, pose: { x: grained(x + dx), y: grained(y + dy), angle } });
  }
  return { course: changedLayout(next, (layout) => withCopies(layout, names)), keys: [...names.values()] };
}

/** Gives copies (by the ids of their originals) the legs' gaits and the constraints among the originals. */
function withCopies(layout: Layout, names: ReadonlyMap<string, string>): Layout {
  if (names.size === 0) return layout;
  const originals = new Map([...names].map(([original, copy]) => [copy, original]));
  const legs = mapped(layout.ride.legs, (leg) => {
    const like = layout.ride.legs.find((other) => other.obstacle === originals.get(leg.obstacle));
    return like ? { ...leg, passage: like.passage, gait: like.gait, approach: like.approach } : leg;
  });
  const constraints: Constraint[] = [...layout.constraints];
  for (const constraint of layout.constraints) {
    const grips = constraint.grips.flatMap((grip): Grip[] => {
      const copy = 'piece' in grip ? names.get(obstacleOf(grip.piece)) : undefined;
      return 'piece' in grip && copy !== undefined ? [{ ...grip, piece: `${copy}/${pieceOf(grip.piece)}` }] : [];
    });
    if (grips.length < constraint.grips.length) continue;
    const id = freeId(
      constraint.kind,
      constraints.map((each) => each.id),
    );
    constraints.push({ ...constraint, id, grips });
  }
  return { ...layout, constraints, ride: { ...layout.ride, legs } };
}

function obstacleById(course: Course, id: string): Obstacle {
  const found = currentLayout(course).obstacles.find((obstacle) => obstacle.id === id);
  if (found === undefined) throw new Error(`the current layout has no obstacle ${id}`);
  return found;
}

/**
 * Builds an obstacle anew with changed values. Its place, side, name, fixed pieces and its legs stay; a leg in the
 * usual gait follows the usual gait. Infeasible as the kind says. Throws when there is no such obstacle.
 */
export function rebuilt(course: Course, id: string, values: Values): Course | Infeasible {
  const old = obstacleById(course, id);
  const built = made(id, old.kind, { ...old.values, ...values }, old.pose, old.side);
  if ('why' in built) return built;
  const fixed = new Set(old.pieces.filter((piece) => piece.fixed).map((piece) => piece.id));
  const pieces = mapped(built.pieces, (piece) => (fixed.has(piece.id) ? { ...piece, fixed: true as const } : piece));
  const next: Obstacle = { ...built, pieces, ...(old.name === undefined ? {} : { name: old.name }) };
  return changedLayout(course, (layout) => {
    const obstacles = mapped(layout.obstacles, (obstacle) => (obstacle === old ? next : obstacle));
    const legs = mapped(layout.ride.legs, (leg) => (leg.obstacle === id ? followed(leg, old, next) : leg));
    return tidied({ ...layout, obstacles, ride: { ...layout.ride, legs } });
  });
}

/** The leg on the obstacle as rebuilt: where it rode the usual gait, it rides the new usual gait. */
function followed(leg: Leg, old: Obstacle, next: Obstacle): Leg {
  const passage = (obstacle: Obstacle) => obstacle.passages.find((each) => each.id === leg.passage);
  const before = passage(old)?.gaits[0];
  const after = passage(next)?.gaits[0];
  if (after === undefined || leg.gait !== before || after === before) return leg;
  return { ...leg, gait: after, approach: leg.approach === before ? after : leg.approach };
}

/** Puts an obstacle's frame, or one piece, at a pose on the ground. Throws when the key names nothing. */
export function posed(course: Course, key: string, pose: Pose): Course {
  const obstacle = obstacleById(course, obstacleOf(key));
  const piece = pieceOf(key);
  if (piece !== undefined && !obstacle.pieces.some((each) => each.id === piece)) {
    throw new Error(`posed: ${obstacle.id} has no piece ${piece}`);
  }
  const next: Obstacle =
    piece === undefined
      ? { ...obstacle, pose }
      : {
          ...obstacle,
          pieces: mapped(obstacle.pieces, (each) =>
            each.id === piece ? { ...each, pose: within(obstacle.pose, pose) } : each,
          ),
        };
  return changedLayout(course, (layout) => ({
    ...layout,
    obstacles: mapped(layout.obstacles, (each) => (each === obstacle ? next : each)),
  }));
}

function changedLegs(course: Course, change: (legs: readonly Leg[]) => readonly Leg[]): Course {
  return changedLayout(course, (layout) => {
    const legs = change(layout.ride.legs);
    return legs === layout.ride.legs ? layout : { ...layout, ride: { ...layout.ride, legs } };
  });
}

/** Rides a leg as the `to`-th of the go, 0 first; beyond the end is last. */
export function reordered(course: Course, legId: string, to: number): Course {
  return changedLegs(course, (legs) => {
    const leg = legs.find((each) => each.id === legId);
    if (leg === undefined) throw new Error(`reordered: the ride has no leg ${legId}`);
    const place = Math.max(0, Math.min(legs.length - 1, Math.round(to)));
    if (legs[place] === leg) return legs;
    const others = legs.filter((each) => each !== leg);
    return [...others.slice(0, place), leg, ...others.slice(place)];
  });
}

/** What of a leg is to change; `undefined` takes a lead or words away. */
export type LegChange = { readonly [Key in Exclude<keyof Leg, 'id'>]?: Leg[Key] | undefined };

/** Changes a leg. A gait that its passage does not allow becomes the usual one. Throws when there is no such leg. */
export function changedLeg(course: Course, legId: string, change: LegChange): Course {
  const { obstacles, ride } = currentLayout(course);
  if (!ride.legs.some((leg) => leg.id === legId)) throw new Error(`changedLeg: the ride has no leg ${legId}`);
  return changedLegs(course, (legs) =>
    mapped(legs, (leg) => {
      if (leg.id !== legId) return leg;
      const entries = Object.entries({ ...leg, ...change }).filter(([, value]) => value !== undefined);
      // Required fields are never undefined here: only `lead` and `words` may be taken away.
      const next = Object.fromEntries(entries) as unknown as Leg;
      return onPassage(next, obstacles.find((each) => each.id === next.obstacle)?.passages ?? []);
    }),
  );
}
