import { memoizeByIdentity } from '../memo/by-identity.ts';
import { normalizeAngle } from '../plane/pose.ts';
import { solveNewton } from './newton.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { evaluate, prepare } from './system.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/**
 * Whether the constraints leave the component exactly its three rigid motions: nothing grounds it, and no part of it is
 * free.
 */
export const isRigid = memoizeByIdentity((work: Workspace): boolean => {
  const { component, system, start, weight, inverseWeight } = work;
  let rigid = component.grounded.length === 0 && evaluate(system, start) <= RESIDUAL_TOLERANCE;
  if (rigid) {
    for (let i = 0; i < weight.length; i++) inverseWeight[i] = 1 / (weight[i] as number);
    prepare(system, inverseWeight, 0);
    rigid = system.matrix.inverse.reduce((rank, each) => rank + (each === 0 ? 0 : 1), 0) === start.length - 3;
  }
  return rigid;
});

/**
 * Moves a component that nothing grounds as one rigid body, so that the dragged body comes exactly to its target:
 * nothing has to be solved, and it cannot jump to another solution. False when it is not such a component, or its
 * constraints are not met.
 */
export function moveRigid(work: Workspace, targets: readonly DragTarget[]): boolean {
  const [target, ...more] = targets;
  if (target === undefined || more.length > 0 || work.component.grounded.length > 0) return false;
  const { start, q, inverseWeight, weight } = work;
  const { x, y, angle, at } = target;
  const turn = normalizeAngle(angle - (start[at + 2] as number));
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (let b = 0; b < q.length; b += 3) {
    const dx = (start[b] as number) - (start[at] as number);
    const dy = (start[b + 1] as number) - (start[at + 1] as number);
    q[b] = x + c * dx - s * dy;
    q[b + 1] = y + s * dx + c * dy;
    q[b + 2] = (start[b + 2] as number) + turn;
    for (let k = 0; k < 3; k++) inverseWeight[b + k] = b === at ? 0 : 1 / (weight[b + k] as number);
  }
  // Rotating something long leaves a rounding error; one Newton step removes it.
  return solveNewton(work, { steps: 3 }).maxResidual <= RESIDUAL_TOLERANCE;
}
