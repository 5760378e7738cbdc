import type { LengthUnit } from '../measure/quantity.ts';
import { degreesOfFreedom, rankReport } from '../solve/degrees-of-freedom.ts';
import { capitalized } from '../text/sentence.ts';
import type { Conflict, Resolution, StatedConstraint } from './conflict.ts';
import type { Arena, Layout } from './course.ts';
import { placedObstacle } from './placed.ts';
import { constraintSentence } from './resolved-constraints.ts';
import { solveLayout } from './solve-layout.ts';
import { layoutProblem } from './solver-problem.ts';

/** Degrees of freedom of an obstacle. */
interface Freedom {
  readonly obstacle: string;
  /**
   * In the layout, when the others may move as well: 3 for a rigid obstacle that nothing holds (two shifts and a turn).
   */
  readonly ways: number;
  /** Of its pieces among themselves, under its own constraints alone: 0 for a rigid obstacle. */
  readonly inside: number;
  readonly says: string;
}

/** A redundant constraint: those before it imply it, so dropping it changes nothing. */
interface RedundantConstraint extends StatedConstraint {
  readonly resolution: Resolution;
}

/** What the constraints of a layout leave open. */
export interface ConstraintStatus {
  readonly freedoms: readonly Freedom[];
  readonly redundant: readonly RedundantConstraint[];
  readonly conflicts: readonly Conflict[];
}

const waysWords = (count: number): string => (count === 1 ? '1 way' : `${count} ways`);

function freedomSentence(name: string, ways: number, inside: number): string {
  const moves = ways === 0 ? 'cannot move' : `can move in ${waysWords(ways)}`;
  const shifts = inside === 0 ? 'keeps its shape' : `its pieces can shift among themselves in ${waysWords(inside)}`;
  return `${capitalized(name)} ${moves}; ${inside === 0 ? 'it ' : ''}${shifts}.`;
}

/**
 * The constraint status of a layout where it lies now: the degrees of freedom of each obstacle, redundant constraints,
 * and conflicts. While there is a conflict, the rest is worked out at the present poses.
 */
export function constraintStatus(
  layout: Layout,
  arena: Arena,
  { unit = 'ft' }: { readonly unit?: LengthUnit } = {},
): ConstraintStatus {
  const { problem, constraints, pieces } = layoutProblem(layout, arena);
  const freedoms = layout.obstacles.map((obstacle): Freedom => {
    const keys = placedObstacle(obstacle).pieces.map(({ key }) => key);
    const ways = degreesOfFreedom(problem, new Set(keys));
    const own = layoutProblem({ ...layout, obstacles: [obstacle], constraints: [] }, arena).problem;
    const loose = { ...own, bodies: own.bodies.map((body) => (pieces.has(body.id) ? { ...body, weight: 1 } : body)) };
    const inside = keys.length === 0 ? 0 : Math.max(0, rankReport(loose).degreesOfFreedom - 3);
    const name = obstacle.name ?? obstacle.id.replaceAll('-', ' ');
    return { obstacle: obstacle.id, ways, inside, says: freedomSentence(name, ways, inside) };
  });
  const redundant = rankReport(problem).redundant.flatMap((key): RedundantConstraint[] => {
    const resolved = constraints.get(key);
    if (resolved === undefined) return [];
    const says = constraintSentence(resolved, layout, unit);
    return [{ key, says, resolution: { does: 'drop', key, says: `Drop: ${says}` } }];
  });
  const rest = solveLayout(layout, arena, new Map(), { unit });
  return { freedoms, redundant, conflicts: rest.kind === 'conflict' ? rest.conflicts : [] };
}
