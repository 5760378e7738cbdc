import { memoizeByIdentity } from '../memo/by-identity.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { connectedComponents } from './components.ts';
import { isKnownConflict, minimalConflicts } from './conflicts.ts';
import type { SolveResult } from './newton.ts';
import { type Body, type NonEmpty, type Outcome, type Problem, RESIDUAL_TOLERANCE, type Targets } from './problem.ts';
import { solveComponent, solveWithTargets } from './solve-component.ts';
import { evaluate } from './system.ts';
import { type DragTarget, dragTargets, type Workspace, workspace } from './workspace.ts';

/** A body that is this near to its wish, metres or radians, is there. */
const THERE = 1e-9;
/** Less than this, metres or radians, is rounding and not a move. */
const MOVED = 1e-12;

const NONE: Targets = new Map();

interface PreparedProblem {
  readonly workspaces: readonly Workspace[];
  /** Where everything is. */
  readonly poses: ReadonlyMap<string, Pose>;
}

const preparedProblem = memoizeByIdentity((problem: Problem): PreparedProblem => {
  const made = {
    workspaces: connectedComponents(problem).map(workspace),
    poses: new Map(problem.bodies.map((body) => [body.id, body.pose])),
  };
  return made;
});

function isAtTarget({ x, y, angle, at }: DragTarget, start: Float64Array): boolean {
  return (
    Math.abs(x - (start[at] as number)) <= THERE &&
    Math.abs(y - (start[at + 1] as number)) <= THERE &&
    Math.abs(normalizeAngle(angle - (start[at + 2] as number))) <= THERE
  );
}

/** Where a body has come to: its very pose when it did not move, its very wish when it got there. */
function finalPose({ id, pose }: Body, q: Float64Array, { b, wishes: targets }: { b: number; wishes: Targets }): Pose {
  const x = q[3 * b] as number;
  const y = q[3 * b + 1] as number;
  const angle = q[3 * b + 2] as number;
  if (Math.abs(x - pose.x) <= MOVED && Math.abs(y - pose.y) <= MOVED && Math.abs(angle - pose.angle) <= MOVED) {
    return pose;
  }
  const target = targets.get(id);
  if (
    target !== undefined &&
    target.x === x &&
    target.y === y &&
    Math.abs(normalizeAngle(target.angle - angle)) <= MOVED
  )
    return target;
  return { x, y, angle };
}

/** The tie that is farthest from being met, and by how much. */
function worstConstraint({ system, q }: Workspace): { readonly id: string; readonly left: number } {
  const left = evaluate(system, q);
  const row = system.residuals.findIndex((value) => Math.abs(value) === left);
  return { id: system.constraints[system.constraintOf[row] ?? 0]?.id ?? '', left };
}

function componentResult(work: Workspace, dragged: readonly DragTarget[]): SolveResult {
  if (dragged.some((target) => !isAtTarget(target, work.start))) return solveWithTargets(work, dragged);
  work.q.set(work.start);
  const maxResidual = evaluate(work.system, work.q);
  return maxResidual <= RESIDUAL_TOLERANCE ? { maxResidual, stalled: false } : solveComponent(work);
}

/**
 * Where the bodies come to when all ties hold: wishes are followed as far as the ties allow, everything else moves least;
 * still bodies, and parts that are met already, keep their very poses. With wishes only what hangs on them is solved,
 * without any everything. The same problem and wishes give the same bytes. The answer depends on the poses given, not on
 * the way there: during a drag, give the problem from its beginning (the same object: what is worked out from it is kept).
 */
export function solve(problem: Problem, targets: Targets = NONE): Outcome {
  const { workspaces, poses: before } = preparedProblem(problem);
  const poses = new Map(before);
  const conflicts: NonEmpty<string>[] = [];
  const lost: string[] = [];
  let maxResidual = 0;
  for (const work of workspaces) {
    const dragged = dragTargets(work, targets);
    if (targets.size > 0 && dragged.length === 0) continue;
    // While a conflict stands, a hand moves nothing and nobody waits for the search again.
    if (!isKnownConflict(work.component) && componentResult(work, dragged).maxResidual <= RESIDUAL_TOLERANCE) {
      for (let b = 0; b < work.component.free.length; b++) {
        const body = work.component.free[b] as Body;
        const pose = finalPose(body, work.q, { b, wishes: targets });
        if (pose !== body.pose) poses.set(body.id, pose);
      }
      continue;
    }
    const worst = worstConstraint(work);
    maxResidual = Math.max(maxResidual, worst.left);
    const sets = minimalConflicts(work.component);
    conflicts.push(...sets);
    if (sets.length === 0) lost.push(worst.id);
  }
  const [conflict, ...moreConflicts] = conflicts;
  if (conflict !== undefined) return { outcome: 'clash', conflicts: [conflict, ...moreConflicts] };
  const [worst, ...worstToo] = lost;
  if (worst !== undefined) return { outcome: 'lost', worst: [worst, ...worstToo], maxResidual };
  return { outcome: 'met', poses };
}
