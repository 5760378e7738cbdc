import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { pathLength } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { type Pose, pose } from '../../../src/core/plane/pose.ts';
import { tightestRadius } from '../../../src/core/ride/connection.ts';
import { squarePose } from '../../../src/core/ride/ground-stations.ts';
import { type Waypoint, waypointLine } from '../../../src/core/ride/pole-headings.ts';
import { obstacle, pole } from './hand-laid.ts';

/** Knots over poles that lie across the given headings. */
function over(...at: readonly Pose[]): Waypoint[] {
  const pieces = at.map((each, i) => pole(`pole-${i}`, { ...each, angle: each.angle - Math.PI / 2 }));
  return placedObstacle(obstacle('poles', pose(0, 0, 0), pieces, [])).pieces.map((piece) => ({
    pose: squarePose(piece, 0.5, 1),
    over: { pole: piece, fraction: 0.5 },
  }));
}

describe('the ridden line over poles', () => {
  test('stays square while the gait can turn so', () => {
    const line = waypointLine(over(pose(0, 0, 0), pose(4, 0.4, 0.2), pose(8, 1.6, 0.4)), 1.5);
    expect(line.waypoints.map(({ skew }) => skew)).toEqual([0, 0, 0]);
  });

  test('gives up a little of square where square would be too tight, and no more than 20 degrees', () => {
    const knots = over(pose(0, 0, 0), pose(1, 0.3, 0), pose(2, 0, 0));
    const square = waypointLine(knots, 0.01);
    const line = waypointLine(knots, 2);
    expect(Math.max(...square.waypoints.map(({ skew }) => Math.abs(skew)))).toBe(0);
    const skews = line.waypoints.map(({ skew }) => Math.abs(skew));
    expect(Math.max(...skews)).toBeGreaterThan(0.01);
    expect(Math.max(...skews)).toBeLessThanOrEqual((20 * Math.PI) / 180 + 1e-9);
    expect(tightestRadius(line.path)).toBeGreaterThan(tightestRadius(square.path));
    expect(pathLength(line.path)).toBeLessThan(1.2 * pathLength(square.path));
  });

  test('over a fan out of true turns no tighter than the gait can, and gives up only where it must', () => {
    // A fan on a circle of 4 m whose middle pole is turned by 12 degrees and crossed 0.25 m further out.
    const at = (angle: number, out = 0, off = 0) =>
      pose((4 + out) * Math.cos(angle), (4 + out) * Math.sin(angle), angle + Math.PI / 2 + off);
    const knots = over(at(-0.9), at(-0.45), at(0, 0.25, 0.21), at(0.45), at(0.9));
    const square = waypointLine(knots, 0.01);
    const line = waypointLine(knots, 2);
    expect(tightestRadius(square.path)).toBeLessThan(1.9);
    expect(tightestRadius(line.path)).toBeGreaterThan(1.98);
    const skews = line.waypoints.map(({ skew }) => Math.abs(skew));
    // What is far from the fault stays square but for a few degrees.
    expect(Math.max(skews[0] ?? 9, skews[4] ?? 9)).toBeLessThan(0.1);
    expect(skews[2]).toBeGreaterThan(0.15);
    expect(Math.max(...skews)).toBeLessThan((20 * Math.PI) / 180);
  });

  test('goes nearly straight over one pole of a run that lies askew', () => {
    const line = waypointLine(over(pose(0, 0, 0), pose(1, 0, 0.3), pose(2, 0, 0), pose(3, 0, 0)), 1.5);
    expect(tightestRadius(line.path)).toBeGreaterThan(5);
    expect(line.waypoints[1]?.skew).toBeLessThan(-0.25);
    for (const i of [0, 2, 3]) expect(Math.abs(line.waypoints[i]?.skew ?? 9)).toBeLessThan(0.05);
  });

  test('goes through every crossing, whatever it gives up', () => {
    const knots = over(pose(0, 0, 0), pose(1, 0.3, 0.4), pose(2, 0, -0.4), pose(3.5, 0.5, 0));
    const line = waypointLine(knots, 2);
    expect(line.waypoints.map(({ pose: at }, i) => distance(at, knots[i]?.pose ?? at))).toEqual([0, 0, 0, 0]);
    expect(line.waypoints.at(-1)?.at).toBeCloseTo(pathLength(line.path), 9);
  });

  test('holds a pose that is not over a pole as it is', () => {
    const [first, last] = over(pose(0, 0, 0), pose(2, 0, 0));
    if (first === undefined || last === undefined) throw new Error('two poles were laid');
    const line = waypointLine([first, { pose: pose(1, 0.4, 0) }, last], 2);
    expect(line.waypoints[1]?.skew).toBe(0);
    expect(line.waypoints[1]?.pose).toEqual(pose(1, 0.4, 0));
  });
});
