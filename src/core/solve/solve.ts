import { memoizeByIdentity } from '../memo/by-identity.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { connectedComponents } from './components.ts';
import { diagnose, isKnownConflict } from './conflicts.ts';
import type { SolveResult } from './newton.ts';
import { type Body, type NonEmpty, type Outcome, type Problem, RESIDUAL_TOLERANCE, type Targets } from './problem.ts';
import { solveComponent, solveWithTargets } from './solve-component.ts';
import { nearestSolution } from './starts.ts';
import { evaluate } from './system.ts';
import { type DragTarget, dragTargets, type Workspace, workspace } from './workspace.ts';

/** A body this near to its target, metres or radians, has arrived. */
const THERE = 1e-9;
/** Less than this, metres or radians, is rounding error and not a move. */
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

/** The pose of a body after solving: its very object when it did not move, its very target when it arrived. */
function finalPose({ id, pose }: Body, q: Float64Array, { b, targets }: { b: number; targets: Targets }): Pose {
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

/** Writes where the bodies have come to into `poses`. */
function takeOver(work: Workspace, poses: Map<string, Pose>, targets: Targets): void {
  for (let b = 0; b < work.component.free.length; b++) {
    const body = work.component.free[b] as Body;
    const pose = finalPose(body, work.q, { b, targets });
    if (pose !== body.pose) poses.set(body.id, pose);
  }
}

/** The constraint with the largest residual, and that residual. */
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
 * Where the bodies are when all constraints hold: targets are approached as far as the constraints allow, everything
 * else moves least; grounded bodies, and components that are met already, keep their very poses. With targets only the
 * components of dragged bodies are solved; without any, everything. The same problem and targets give the same bytes.
 * The result depends on the poses given and not on the way there: during a drag, pass the problem from its beginning
 * (the same object, because what is worked out from it is cached).
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
    // While a conflict stands a drag moves nothing, and the search for it is not repeated.
    if (!isKnownConflict(work.component) && componentResult(work, dragged).maxResidual <= RESIDUAL_TOLERANCE) {
      takeOver(work, poses, targets);
      continue;
    }
    const worst = worstConstraint(work);
    const diagnosis = diagnose(work.component);
    if (!diagnosis.satisfiable) conflicts.push(...diagnosis.conflicts);
    else if (dragged.length === 0 && nearestSolution(work)) takeOver(work, poses, targets);
    else {
      maxResidual = Math.max(maxResidual, worst.left);
      lost.push(worst.id);
    }
  }
  const [conflict, ...moreConflicts] = conflicts;
  if (conflict !== undefined) return { outcome: 'conflict', conflicts: [conflict, ...moreConflicts] };
  const [worst, ...worstToo] = lost;
  if (worst !== undefined) return { outcome: 'lost', worst: [worst, ...worstToo], maxResidual };
  return { outcome: 'met', poses };
}
