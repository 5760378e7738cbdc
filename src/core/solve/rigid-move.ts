import { memoizeByIdentity } from '../memo/by-identity.ts';
import { normalizeAngle } from '../plane/pose.ts';
import { solveNewton } from './newton.ts';
import { RESIDUAL_TOLERANCE } from './problem.ts';
import { evaluate, prepare } from './system.ts';
import type { DragTarget, Workspace } from './workspace.ts';

/** Whether the ties leave the group just its three ways to move as one: nothing still holds it, and nothing in it is loose. */
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
 * Carries a group that nothing still holds as it is, so that the one wished body comes to its wish exactly: there is nothing
 * to solve, and no other way of putting it together to slip into. False when it is not such a group, or does not hold.
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
  // A turn of something long leaves rounding behind: one step takes it away.
  return solveNewton(work, { steps: 3 }).maxResidual <= RESIDUAL_TOLERANCE;
}
