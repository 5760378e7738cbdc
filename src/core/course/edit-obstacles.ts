/**
 * Edits of the obstacles in the current layout. Keys name obstacles (`fan-1`) and pieces (`fan-1/pole-2`); a key that
 * names nothing is passed over.
 */
import { castDraft, type Draft, produce } from 'immer';
import type { Grip } from '../constraints/constraint.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { buildObstacle } from '../obstacles/build.ts';
import type { Infeasible, Obstacle } from '../obstacles/obstacle.ts';
import type { Values } from '../pieces/params.ts';
import type { Point } from '../plane/point.ts';
import { type Pose, within } from '../plane/pose.ts';
import { type Course, currentLayout, type Layout } from './course.ts';
import { linesKept } from './edit-crossings.ts';
import { freeId, obstacleOf, pieceOf } from './ids.ts';
import { changedLayout, editedLayout } from './layouts.ts';
import { follow, usualLeg } from './legs.ts';
import { mirror } from './mirror.ts';
import { erase, tidy } from './prune.ts';
import { carry, grained } from './transform.ts';

/** An id that no obstacle of the current layout has: `fan-1`, `fan-2` … */
export function freshId(course: Course, kind: string): string {
  return freeId(
    kind,
    currentLayout(course).obstacles.map((obstacle) => obstacle.id),
  );
}

function obstacleById<Found extends Obstacle>(obstacles: readonly Found[], id: string): Found {
  const found = obstacles.find((obstacle) => obstacle.id === id);
  if (found === undefined) throw new Error(`the current layout has no obstacle ${id}`);
  return found;
}

/** The course with the obstacle, ridden last by its first passage. Throws when its id is taken. */
export function added(course: Course, obstacle: Obstacle): Course {
  return editedLayout(course, ({ obstacles, ride: { legs } }) => {
    if (obstacles.some(({ id }) => id === obstacle.id)) {
      throw new Error(`added: an obstacle ${obstacle.id} is in the layout already; take an id from freshId`);
    }
    obstacles.push(castDraft(obstacle));
    const [passage] = obstacle.passages;
    if (passage !== undefined) legs.push(castDraft(usualLeg(legs, obstacle, passage)));
  });
}

/** The course without what the keys name, and without the legs and constraints that hung on it. */
export function erased(course: Course, keys: readonly string[]): Course {
  return changedLayout(course, (layout) => {
    const left = produce(layout, (draft) => erase(draft, keys));
    return left === layout ? layout : produce(left, tidy);
  });
}

export function shifted(course: Course, keys: readonly string[], dx: Metres, dy: Metres): Course {
  const motion = ({ x, y, angle }: Pose) => ({ x: x + dx, y: y + dy, angle });
  return dx === 0 && dy === 0 ? course : editedLayout(course, (layout) => carry(layout, keys, motion));
}

/** Turned counter-clockwise by an angle about a point on the ground. */
export function turned(course: Course, keys: readonly string[], by: Radians, about: Point): Course {
  const c = Math.cos(by);
  const s = Math.sin(by);
  const motion = ({ x, y, angle }: Pose) => {
    const dx = x - about.x;
    const dy = y - about.y;
    return { x: about.x + c * dx - s * dy, y: about.y + s * dx + c * dy, angle: angle + by };
  };
  return by === 0 ? course : editedLayout(course, (layout) => carry(layout, keys, motion));
}

/**
 * The mirror image of whole obstacles, a piece standing for its obstacle: one about its own x axis, several about the
 * line along the arena through the middle of their frames.
 */
export function flipped(course: Course, keys: readonly string[]): Course {
  return editedLayout(course, (layout) => mirror(layout, new Set(keys.map(obstacleOf))));
}

/** Copies whole obstacles, a piece standing for its obstacle, with what holds them together; they are ridden last. */
export function duplicated(
  course: Course,
  keys: readonly string[],
  dx: Metres,
  dy: Metres,
): { readonly course: Course; readonly keys: readonly string[] } {
  const wanted = new Set(keys.map(obstacleOf));
  const names = new Map<string, string>();
  let next = course;
  for (const original of currentLayout(course).obstacles) {
    if (!wanted.has(original.id)) continue;
    const id = freshId(next, original.kind);
    names.set(original.id, id);
    const { x, y, angle } = original.pose;
    next = added(next, { ...original, id, pose: { x: grained(x + dx), y: grained(y + dy), angle } });
  }
  return { course: editedLayout(next, (layout) => copyTies(layout, names)), keys: [...names.values()] };
}

/** Gives copies (by the ids of their originals) the legs' gaits and the constraints among the originals. */
function copyTies({ constraints, ride: { legs } }: Draft<Layout>, names: ReadonlyMap<string, string>): void {
  for (const [original, copy] of names) {
    const like = legs.find((leg) => leg.obstacle === original);
    const leg = legs.find((each) => each.obstacle === copy);
    if (like === undefined || leg === undefined) continue;
    leg.passage = like.passage;
    leg.gait = like.gait;
    leg.approach = like.approach;
  }
  for (const constraint of [...constraints]) {
    const grips = constraint.grips.flatMap((grip): Grip[] => {
      const copy = 'piece' in grip ? names.get(obstacleOf(grip.piece)) : undefined;
      return 'piece' in grip && copy !== undefined ? [{ ...grip, piece: `${copy}/${pieceOf(grip.piece)}` }] : [];
    });
    if (grips.length < constraint.grips.length) continue;
    const id = freeId(
      constraint.kind,
      constraints.map((each) => each.id),
    );
    constraints.push({ ...constraint, id, grips: castDraft(grips) });
  }
}

/**
 * Builds an obstacle anew with changed values. Its place, side, name, fixed pieces and its legs stay; a leg in the
 * usual gait follows the usual gait. Infeasible as the kind says. Throws when there is no such obstacle.
 */
export function rebuilt(course: Course, id: string, values: Values): Course | Infeasible {
  const old = obstacleById(currentLayout(course).obstacles, id);
  const built = buildObstacle(id, old.kind, { ...old.values, ...values }, old.pose, old.side);
  if ('why' in built) return built;
  const fixed = new Set(old.pieces.filter((piece) => piece.fixed).map((piece) => piece.id));
  // A line that was moved by hand stays where it was put, unless it is the line that is typed.
  const usual = 'line' in values ? built : buildObstacle(id, old.kind, old.values, old.pose, old.side);
  const kept = 'why' in usual || usual === built ? built : linesKept(built, old, usual);
  const next = produce(kept, (draft) => {
    if (old.name !== undefined) draft.name = old.name;
    for (const piece of draft.pieces) if (fixed.has(piece.id)) piece.fixed = true;
  });
  return editedLayout(course, (layout) => {
    layout.obstacles = layout.obstacles.map((obstacle) => (obstacle.id === id ? castDraft(next) : obstacle));
    for (const leg of layout.ride.legs) if (leg.obstacle === id) follow(leg, old, next);
    tidy(layout);
  });
}

/** Puts an obstacle's frame, or one piece, at a pose on the ground. Throws when the key names nothing. */
export function posed(course: Course, key: string, pose: Pose): Course {
  return editedLayout(course, ({ obstacles }) => {
    const obstacle = obstacleById(obstacles, obstacleOf(key));
    const name = pieceOf(key);
    const piece = obstacle.pieces.find((each) => each.id === name);
    if (name === undefined) Object.assign(obstacle.pose, pose);
    else if (piece !== undefined) Object.assign(piece.pose, within(obstacle.pose, pose));
    else throw new Error(`posed: ${obstacle.id} has no piece ${name}`);
  });
}
