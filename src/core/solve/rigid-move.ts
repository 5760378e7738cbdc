import { wrapped } from '../plane/pose.ts';
import { land } from './newton.ts';
import { MET } from './problem.ts';
import { evaluate, prepare } from './system.ts';
import type { Wished, Workbench } from './workspace.ts';

const known = new WeakMap<Workbench, boolean>();

/** Whether the ties leave the group just its three ways to move as one: nothing still holds it, and nothing in it is loose. */
export function isRigid(bench: Workbench): boolean {
  const before = known.get(bench);
  if (before !== undefined) return before;
  const { group, system, home, weight, mobility } = bench;
  let rigid = group.still.length === 0 && evaluate(system, home) <= MET;
  if (rigid) {
    for (let i = 0; i < weight.length; i++) mobility[i] = 1 / (weight[i] as number);
    prepare(system, mobility, 0);
    rigid = system.matrix.inverse.reduce((rank, each) => rank + (each === 0 ? 0 : 1), 0) === home.length - 3;
  }
  known.set(bench, rigid);
  return rigid;
}

/**
 * Carries a group that nothing still holds as it is, so that the one wished body comes to its wish exactly: there is nothing
 * to solve, and no other way of putting it together to slip into. False when it is not such a group, or does not hold.
 */
export function carriedWhole(bench: Workbench, wishes: readonly Wished[]): boolean {
  const [wish, ...more] = wishes;
  if (wish === undefined || more.length > 0 || bench.group.still.length > 0) return false;
  const { home, q, mobility, weight } = bench;
  const { x, y, angle, at } = wish;
  const turn = wrapped(angle - (home[at + 2] as number));
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (let b = 0; b < q.length; b += 3) {
    const dx = (home[b] as number) - (home[at] as number);
    const dy = (home[b + 1] as number) - (home[at + 1] as number);
    q[b] = x + c * dx - s * dy;
    q[b + 1] = y + s * dx + c * dy;
    q[b + 2] = (home[b + 2] as number) + turn;
    for (let k = 0; k < 3; k++) mobility[b + k] = b === at ? 0 : 1 / (weight[b + k] as number);
  }
  // A turn of something long leaves rounding behind: one step takes it away.
  return land(bench, { steps: 3 }).worst <= MET;
}
