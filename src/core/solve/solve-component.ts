import { trackToTarget } from './continuation.ts';
import { dragTowards, dragWeights } from './drag.ts';
import { type SolveResult, solveNewton } from './newton.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { isRigid, moveRigid } from './rigid-move.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/** How much more a dragged body resists turning than moving, while it is to keep its angle. */
const UNTURNED = Number.POSITIVE_INFINITY;
/** It turns when that brings it nearer by more than this factor. */
const WORTH = 10;
/** A gain below this, metres, is none. */
const THERE = 1e-6;

function solveWeighted(work: Workspace, weight: Float64Array): SolveResult {
  for (let i = 0; i < weight.length; i++) work.inverseWeight[i] = 1 / (weight[i] as number);
  return solveNewton(work);
}

/**
 * Brings the component from its start, or from other coordinates, to where its constraints hold, with the least motion;
 * the coordinates are left in `q`.
 */
export function solveComponent(work: Workspace, from: Float64Array = work.start): SolveResult {
  work.q.set(from);
  return solveWeighted(work, work.weight);
}

/** How much nearer to their targets the bodies are than at the start, metres; rotation does not count. */
function distanceGained({ start, q }: Workspace, targets: readonly DragTarget[]): number {
  let gain = 0;
  for (const { x, y, at } of targets) {
    gain += Math.hypot(x - (start[at] as number), y - (start[at + 1] as number));
    gain -= Math.hypot(x - (q[at] as number), y - (q[at + 1] as number));
  }
  return gain;
}

/**
 * As near to the targets as the constraints allow. A dragged body keeps the angle of its target: along a wall it does
 * not turn to get nearer to the pointer. It turns only where it could hardly move otherwise, such as an arm around its
 * marker.
 */
function nearestToTargets(work: Workspace, targets: readonly DragTarget[]): SolveResult {
  dragTowards(work, targets, dragWeights(work, targets, UNTURNED));
  const unturned = solveWeighted(work, dragWeights(work, targets, UNTURNED));
  const gain = distanceGained(work, targets);
  const q = Float64Array.from(work.q);
  dragTowards(work, targets, dragWeights(work, targets, 1));
  const turned = solveWeighted(work, dragWeights(work, targets, 1));
  if (unturned.maxResidual > RESIDUAL_TOLERANCE) return turned;
  if (turned.maxResidual <= RESIDUAL_TOLERANCE && distanceGained(work, targets) > WORTH * gain + THERE) return turned;
  work.q.set(q);
  return unturned;
}

/**
 * Brings the component to where its constraints hold and its targets are approached as far as they allow: exactly there
 * if the rest can follow. When a target gives no solution, half the way is tried, a quarter …, and at last none of it.
 */
export function solveWithTargets(work: Workspace, targets: readonly DragTarget[]): SolveResult {
  // A rigid component is moved as a whole; a loose one by continuation, and as a whole only when the target is too far
  // for that.
  const tracked = isRigid(work) ? moveRigid(work, targets) : trackToTarget(work, targets);
  if (tracked || moveRigid(work, targets)) return { maxResidual: 0, stalled: false };
  for (let part = 1; part > 0.1; part /= 2) {
    const result = nearestToTargets(
      work,
      targets.map((target) => interpolateTarget(target, work.start, part)),
    );
    if (result.maxResidual <= RESIDUAL_TOLERANCE) return result;
  }
  return solveComponent(work);
}

function interpolateTarget(target: DragTarget, start: Float64Array, part: number): DragTarget {
  if (part === 1) return target;
  const from = (k: number) => start[target.at + k] as number;
  return {
    ...target,
    x: from(0) + part * (target.x - from(0)),
    y: from(1) + part * (target.y - from(1)),
    angle: from(2) + part * Math.atan2(Math.sin(target.angle - from(2)), Math.cos(target.angle - from(2))),
  };
}
