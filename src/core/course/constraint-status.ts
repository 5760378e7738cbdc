import type { LengthUnit } from '../measure/quantity.ts';
import { freedomsOf, ranked } from '../solve/degrees-of-freedom.ts';
import type { Clash, Culprit, Offer } from './conflict.ts';
import type { Arena, Layout } from './course.ts';
import { placedObstacle } from './placed.ts';
import { holdingSentence } from './resolved-constraints.ts';
import { settled } from './solve-layout.ts';
import { tied } from './solver-problem.ts';

/** In how many ways an obstacle can still move. */
interface Freedom {
  readonly obstacle: string;
  /** Altogether, the others making way: 3 for a rigid one that nothing holds (along, across, turning). */
  readonly ways: number;
  /** Of its pieces among themselves, by its own measures alone: 0 for a rigid one. */
  readonly inside: number;
  readonly says: string;
}

/** A constraint that says nothing which those before it do not: it may be dropped and nothing changes. */
interface Spare extends Culprit {
  readonly offer: Offer;
}

/** How firmly a layout holds together. */
export interface Standing {
  readonly freedoms: readonly Freedom[];
  readonly spare: readonly Spare[];
  readonly clashes: readonly Clash[];
}

const counted = (count: number): string => (count === 1 ? '1 way' : `${count} ways`);

function freedomWords(name: string, ways: number, inside: number): string {
  const moves = ways === 0 ? 'cannot move' : `can move in ${counted(ways)}`;
  const shifts = inside === 0 ? 'keeps its shape' : `its pieces can shift among themselves in ${counted(inside)}`;
  return `${name.charAt(0).toUpperCase() + name.slice(1)} ${moves}; ${inside === 0 ? 'it ' : ''}${shifts}.`;
}

/**
 * How firmly a layout holds together where it lies: what each obstacle has left to move, which constraints are spare, and
 * which cannot hold together. While there is a clash, freedoms and spares are those of where the pieces lie now.
 */
export function standing(layout: Layout, arena: Arena, { unit = 'ft' }: { readonly unit?: LengthUnit } = {}): Standing {
  const { problem, holdings, pieces } = tied(layout, arena);
  const freedoms = layout.obstacles.map((obstacle): Freedom => {
    const keys = placedObstacle(obstacle).pieces.map(({ key }) => key);
    const ways = freedomsOf(problem, new Set(keys));
    const own = tied({ ...layout, obstacles: [obstacle], constraints: [] }, arena).problem;
    const loose = { ...own, bodies: own.bodies.map((body) => (pieces.has(body.id) ? { ...body, weight: 1 } : body)) };
    const inside = keys.length === 0 ? 0 : Math.max(0, ranked(loose).freedoms - 3);
    const name = obstacle.name ?? obstacle.id.replaceAll('-', ' ');
    return { obstacle: obstacle.id, ways, inside, says: freedomWords(name, ways, inside) };
  });
  const spare = ranked(problem).spare.flatMap((key): Spare[] => {
    const holding = holdings.get(key);
    if (holding === undefined) return [];
    const says = holdingSentence(holding, layout, unit);
    return [{ key, says, offer: { does: 'drop', key, says: `Drop: ${says}` } }];
  });
  const rest = settled(layout, arena, new Map(), { unit });
  return { freedoms, spare, clashes: rest.kind === 'clash' ? rest.clashes : [] };
}
