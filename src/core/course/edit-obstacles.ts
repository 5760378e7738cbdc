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
import { type Pose, toLocal } from '../plane/pose.ts';
import { type Course, currentLayout, type Layout } from './course.ts';
import { departuresOf, withDepartures } from './departures.ts';
import { withMovedLine } from './edit-crossings.ts';
import { freeId, obstacleOf, pieceOf } from './ids.ts';
import { editCurrentLayout, replaceLayout } from './layouts.ts';
import { adoptRebuilt, openLeg } from './legs.ts';
import { mirrorObstacles } from './mirror.ts';
import { countThere } from './piece-count.ts';
import { eraseFrom, tidy } from './prune.ts';
import { isConsistent, layoutOfOne } from './rigid.ts';
import { solveLayout } from './solve-layout.ts';
import { roundToNanometre, transformChosen } from './transform.ts';

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

/** The course with the obstacle, ridden last by its first passage, with its way open. Throws when its id is taken. */
export function addObstacle(course: Course, obstacle: Obstacle): Course {
  return editCurrentLayout(course, ({ obstacles, ride: { legs } }) => {
    if (obstacles.some(({ id }) => id === obstacle.id)) {
      throw new Error(`addObstacle: an obstacle ${obstacle.id} is in the layout already; take an id from freshId`);
    }
    obstacles.push(castDraft(obstacle));
    const [passage] = obstacle.passages;
    if (passage !== undefined) legs.push(castDraft(openLeg(legs, obstacle, passage)));
  });
}

/** As `tidy`; an obstacle that lost its last pole has one pole less by its values too. */
function tidyCounts(layout: Draft<Layout>): void {
  tidy(layout);
  for (const obstacle of layout.obstacles) {
    const there = countThere(obstacle);
    if (there !== undefined) obstacle.values = { ...obstacle.values, [there.param]: there.count };
  }
}

/** The course without what the keys name, and without the legs and constraints that hung on it. */
export function eraseByKeys(course: Course, keys: readonly string[]): Course {
  return replaceLayout(course, (layout) => {
    const left = produce(layout, (draft) => eraseFrom(draft, keys));
    return left === layout ? layout : produce(left, tidyCounts);
  });
}

export function shiftByKeys(course: Course, keys: readonly string[], dx: Metres, dy: Metres): Course {
  const transform = ({ x, y, angle }: Pose) => ({ x: x + dx, y: y + dy, angle });
  return dx === 0 && dy === 0
    ? course
    : editCurrentLayout(course, (layout) => transformChosen(layout, keys, transform));
}

/** Turned counter-clockwise by an angle about a point on the ground. */
export function rotateByKeys(course: Course, keys: readonly string[], by: Radians, about: Point): Course {
  const c = Math.cos(by);
  const s = Math.sin(by);
  const transform = ({ x, y, angle }: Pose) => {
    const dx = x - about.x;
    const dy = y - about.y;
    return { x: about.x + c * dx - s * dy, y: about.y + s * dx + c * dy, angle: angle + by };
  };
  return by === 0 ? course : editCurrentLayout(course, (layout) => transformChosen(layout, keys, transform));
}

/**
 * The mirror image of whole obstacles, a piece standing for its obstacle: one about its own x axis, several about the
 * line along the arena through the middle of their frames.
 */
export function flipObstacles(course: Course, keys: readonly string[]): Course {
  return editCurrentLayout(course, (layout) => mirrorObstacles(layout, new Set(keys.map(obstacleOf))));
}

/** Copies whole obstacles, a piece standing for its obstacle, with what holds them together; they are ridden last. */
export function duplicateObstacles(
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
    next = addObstacle(next, {
      ...original,
      id,
      pose: { x: roundToNanometre(x + dx), y: roundToNanometre(y + dy), angle },
    });
  }
  return { course: editCurrentLayout(next, (layout) => copyConstraints(layout, names)), keys: [...names.values()] };
}

/** Gives copies (by the ids of their originals) the legs' gaits and the constraints among the originals. */
function copyConstraints({ constraints, ride: { legs } }: Draft<Layout>, names: ReadonlyMap<string, string>): void {
  for (const [original, copy] of names) {
    const like = legs.find((leg) => leg.obstacle === original);
    const leg = legs.find((each) => each.obstacle === copy);
    if (like === undefined || leg === undefined) continue;
    leg.passage = like.passage;
    if (like.openWay === undefined) delete leg.openWay;
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

/** What a rebuild does with what departs from the obstacle's values. */
export interface RebuildOptions {
  /** Parameters whose own exceptions go, or `all`: nothing that was changed by hand is kept. Absent: all is kept. */
  readonly reset?: readonly string[] | 'all';
}

/** The obstacle built from changed values, with what departs from them; its constraints are met where that is possible. */
export function rebuilt(
  course: Course,
  id: string,
  values: Values,
  options: RebuildOptions = {},
): Obstacle | Infeasible {
  const { reset = [] } = options;
  const old = obstacleById(currentLayout(course).obstacles, id);
  const built = buildObstacle(id, old.kind, { ...old.values, ...values }, old.pose, old.side);
  if ('why' in built) return built;
  const pinned = new Set(old.pieces.filter((piece) => piece.fixed).map((piece) => piece.id));
  // A line that was moved by hand stays where it was put, unless it is the line that is typed.
  const usual = 'line' in values ? built : buildObstacle(id, old.kind, old.values, old.pose, old.side);
  const withLine = 'why' in usual || usual === built ? built : withMovedLine(built, old, usual);
  const departed = reset === 'all' ? withLine : withDepartures(withLine, departuresOf(old), reset);
  const named = produce(departed, (draft) => {
    if (old.name !== undefined) draft.name = old.name;
    for (const piece of draft.pieces) if (pinned.has(piece.id)) piece.fixed = true;
  });
  return isConsistent(named) ? named : consistent(named, course);
}

/** The obstacle with its own constraints met, its pieces free to move; infeasible with the reason where they cannot be. */
function consistent(obstacle: Obstacle, { arena, unit }: Course): Obstacle | Infeasible {
  const loose = produce(obstacle, (draft) => {
    for (const piece of draft.pieces) delete piece.fixed;
  });
  const outcome = solveLayout(layoutOfOne(loose), arena, new Map(), { unit });
  if (outcome.kind !== 'settled') return { kind: 'infeasible', why: outcome.says, facts: {} };
  const [solved] = outcome.layout.obstacles;
  if (solved === undefined) return obstacle;
  return produce(obstacle, (draft) => {
    draft.pose = castDraft(solved.pose);
    draft.pieces.forEach((piece, i) => {
      const there = solved.pieces[i];
      if (there !== undefined) piece.pose = castDraft(there.pose);
    });
  });
}

/**
 * Builds an obstacle anew with changed values. Its place, side, name, fixed pieces, its legs and what departs from its
 * values stay; a leg in the usual gait follows the usual gait. Infeasible as the kind says, or when what departs cannot
 * be met with the new values. Throws when there is no such obstacle.
 */
export function rebuildObstacle(
  course: Course,
  id: string,
  values: Values,
  options: RebuildOptions = {},
): Course | Infeasible {
  const old = obstacleById(currentLayout(course).obstacles, id);
  const next = rebuilt(course, id, values, options);
  if ('why' in next) return next;
  return editCurrentLayout(course, (layout) => {
    layout.obstacles = layout.obstacles.map((obstacle) => (obstacle.id === id ? castDraft(next) : obstacle));
    for (const leg of layout.ride.legs) if (leg.obstacle === id) adoptRebuilt(leg, old, next);
    tidy(layout);
  });
}

/** Puts an obstacle's frame, or one piece, at a pose on the ground. Throws when the key names nothing. */
export function placeAt(course: Course, key: string, pose: Pose): Course {
  return editCurrentLayout(course, ({ obstacles }) => {
    const obstacle = obstacleById(obstacles, obstacleOf(key));
    const name = pieceOf(key);
    const piece = obstacle.pieces.find((each) => each.id === name);
    if (name === undefined) Object.assign(obstacle.pose, pose);
    else if (piece !== undefined) Object.assign(piece.pose, toLocal(obstacle.pose, pose));
    else throw new Error(`placeAt: ${obstacle.id} has no piece ${name}`);
  });
}
