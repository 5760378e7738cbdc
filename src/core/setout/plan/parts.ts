import { obstacleOf } from '../../course/ids.ts';
import type { ResolvedConstraint } from '../../course/resolved-constraints.ts';
import type { MeasuredGap } from './measured-gaps.ts';

/**
 * Obstacles that are laid one from another: those whose pieces a constraint or a gap on the line ties together. Obstacles
 * that are not tied are each laid from the walls, so that no error goes from one into the next. In the order of `obstacles`.
 */
export function tiedObstacles(
  obstacles: readonly string[],
  { constraints, gaps }: { readonly constraints: readonly ResolvedConstraint[]; readonly gaps: readonly MeasuredGap[] },
): readonly (readonly string[])[] {
  const parent = new Map(obstacles.map((id) => [id, id]));
  const root = (id: string): string => {
    const up = parent.get(id) ?? id;
    return up === id ? id : root(up);
  };
  const join = (keys: readonly string[]): void => {
    const [first, ...others] = keys.map(obstacleOf).filter((id) => parent.has(id));
    if (first === undefined) return;
    for (const other of others) parent.set(root(other), root(first));
  };
  for (const { grips } of constraints) join(grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])));
  for (const { keys } of gaps) join(keys);
  const parts = new Map<string, string[]>();
  for (const id of obstacles) {
    const key = root(id);
    const part = parts.get(key);
    if (part === undefined) parts.set(key, [id]);
    else part.push(id);
  }
  return [...parts.values()];
}
