import type { Metres, Radians } from '../measure/quantity.ts';
import { shortestLength, shortestPath } from './dubins.ts';
import type { Path } from './path.ts';
import type { Point } from './point.ts';
import { type Pose, wrapped } from './pose.ts';

/** A path through given points, and the heading it has at each. */
export interface ThroughPath {
  readonly length: Metres;
  readonly headings: readonly Radians[];
  readonly path: Path;
}

/** Headings tried at each point in the first round. */
const COARSE = 24;
/** Headings tried at each point in every later round, and how much narrower each round looks. */
const FINE = 7;
const SHRINK = 0.6;
/** Headings are sought to this, radians; the length is then right to a micrometre or so. */
const ENOUGH = 1e-7;

interface Choice {
  readonly pose: Pose;
  /** Shortest length from the start to this pose, and from which pose of the point before. */
  readonly length: number;
  readonly before: number;
}

/** The cheapest headings, one of each point's options, by walking forward through the points once. */
function cheapest(start: Pose, stages: readonly (readonly Pose[])[], radius: Metres): Pose[] {
  let last: readonly Choice[] = [{ pose: start, length: 0, before: -1 }];
  const history: (readonly Choice[])[] = [];
  for (const options of stages) {
    const order = last.map((choice, i) => ({ choice, i })).sort((a, b) => a.choice.length - b.choice.length);
    last = options.map((pose): Choice => {
      let best = Number.POSITIVE_INFINITY;
      let before = -1;
      for (const { choice, i } of order) {
        // No path is shorter than the straight: the rest of the sorted list cannot win.
        if (choice.length + Math.hypot(pose.x - choice.pose.x, pose.y - choice.pose.y) >= best) break;
        const length = choice.length + shortestLength(choice.pose, pose, radius);
        if (length < best) {
          best = length;
          before = i;
        }
      }
      return { pose, length: best, before };
    });
    history.push(last);
  }
  const poses: Pose[] = [];
  let at = 0;
  for (let stage = history.length - 1; stage >= 0; stage -= 1) {
    const choice = history[stage]?.[at];
    if (choice === undefined) throw new Error('shortestThrough: a stage had no options');
    poses.unshift(choice.pose);
    at = choice.before;
  }
  return poses;
}

function heading(from: Point, to: Point): Radians {
  return Math.atan2(to.y - from.y, to.x - from.x);
}

/**
 * The shortest forward path from `start` through the points in order to `end` that never turns tighter than
 * `radius` metres; the headings at the points are free. Deterministic: the best of a coarse grid of headings, refined
 * round by round until the headings stand to 1e-7 rad. The grid can miss the best of several near-equal ways round.
 */
export function shortestThrough(start: Pose, points: readonly Point[], end: Pose, radius: Metres): ThroughPath {
  let width = (2 * Math.PI) / COARSE;
  const places = [start, ...points, end];
  const stages = points.map(({ x, y }, i) => {
    const into = heading(places[i] ?? start, { x, y });
    const onwards = heading({ x, y }, places[i + 2] ?? end);
    const grid = Array.from({ length: COARSE }, (_, k) => k * width - Math.PI);
    // The chords' own directions: points in a row are passed exactly along them.
    return [...grid, into, onwards, into + wrapped(onwards - into) / 2].map((angle): Pose => ({ x, y, angle }));
  });
  let poses = cheapest(start, [...stages, [end]], radius);
  while (points.length > 0 && width > ENOUGH) {
    const reach = width;
    const around = poses.slice(0, -1).map((pose) =>
      Array.from({ length: FINE }, (_, i): Pose => {
        const offset = (reach * (i - (FINE - 1) / 2)) / ((FINE - 1) / 2);
        return { ...pose, angle: pose.angle + offset };
      }),
    );
    poses = cheapest(start, [...around, [end]], radius);
    width *= SHRINK;
  }
  const path: Path = poses.flatMap((pose, i) => shortestPath(poses[i - 1] ?? start, pose, radius).path);
  return {
    length: path.reduce((sum, stretch) => sum + stretch.length, 0),
    headings: poses.slice(0, -1).map(({ angle }) => angle),
    path: path.filter((stretch, i) => stretch.length > 0 || (i === 0 && path.length === 1)),
  };
}
