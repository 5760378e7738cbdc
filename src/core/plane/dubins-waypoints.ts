import type { Metres, Radians } from '../measure/quantity.ts';
import { shortestDubinsLength, shortestDubinsPath } from './dubins.ts';
import type { Path } from './path.ts';
import type { Point } from './point.ts';
import { normalizeAngle, type Pose } from './pose.ts';

/** A path through given points, and the heading it has at each. */
export interface WaypointPath {
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

interface HeadingChoice {
  readonly pose: Pose;
  /** Shortest length from the start to this pose, and from which pose of the point before. */
  readonly length: number;
  readonly parent: number;
}

/** The cheapest headings, one of each point's options, by walking forward through the points once. */
function bestHeadings(start: Pose, columns: readonly (readonly Pose[])[], radius: Metres): Pose[] {
  let last: readonly HeadingChoice[] = [{ pose: start, length: 0, parent: -1 }];
  const history: (readonly HeadingChoice[])[] = [];
  for (const options of columns) {
    const order = last.map((choice, i) => ({ choice, i })).sort((a, b) => a.choice.length - b.choice.length);
    last = options.map((pose): HeadingChoice => {
      let best = Number.POSITIVE_INFINITY;
      let before = -1;
      for (const { choice, i } of order) {
        // No path is shorter than the straight: the rest of the sorted list cannot win.
        if (choice.length + Math.hypot(pose.x - choice.pose.x, pose.y - choice.pose.y) >= best) break;
        const length = choice.length + shortestDubinsLength(choice.pose, pose, radius);
        if (length < best) {
          best = length;
          before = i;
        }
      }
      return { pose, length: best, parent: before };
    });
    history.push(last);
  }
  const poses: Pose[] = [];
  let at = 0;
  for (let column = history.length - 1; column >= 0; column -= 1) {
    const choice = history[column]?.[at];
    if (choice === undefined) throw new Error('dubinsThroughWaypoints: a column had no options');
    poses.unshift(choice.pose);
    at = choice.parent;
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
export function dubinsThroughWaypoints(start: Pose, points: readonly Point[], end: Pose, radius: Metres): WaypointPath {
  let width = (2 * Math.PI) / COARSE;
  const places = [start, ...points, end];
  const columns = points.map(({ x, y }, i) => {
    const into = heading(places[i] ?? start, { x, y });
    const onwards = heading({ x, y }, places[i + 2] ?? end);
    const grid = Array.from({ length: COARSE }, (_, k) => k * width - Math.PI);
    // The chords' own directions: points in a row are passed exactly along them.
    return [...grid, into, onwards, into + normalizeAngle(onwards - into) / 2].map((angle): Pose => ({ x, y, angle }));
  });
  let poses = bestHeadings(start, [...columns, [end]], radius);
  while (points.length > 0 && width > ENOUGH) {
    const halfWidth = width;
    const around = poses.slice(0, -1).map((pose) =>
      Array.from({ length: FINE }, (_, i): Pose => {
        const offset = (halfWidth * (i - (FINE - 1) / 2)) / ((FINE - 1) / 2);
        return { ...pose, angle: pose.angle + offset };
      }),
    );
    poses = bestHeadings(start, [...around, [end]], radius);
    width *= SHRINK;
  }
  const path: Path = poses.flatMap((pose, i) => shortestDubinsPath(poses[i - 1] ?? start, pose, radius).path);
  return {
    length: path.reduce((sum, stretch) => sum + stretch.length, 0),
    headings: poses.slice(0, -1).map(({ angle }) => angle),
    path: path.filter((stretch, i) => stretch.length > 0 || (i === 0 && path.length === 1)),
  };
}
