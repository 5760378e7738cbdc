import type { Group } from './components.ts';
import type { Tie } from './problem.ts';

/**
 * The group's ties so ordered that ties about the same bodies stand together: along a chain from one end to the other,
 * however its ties were written. From the body with the fewest neighbours outwards, nearest first.
 */
export function banded(group: Group): Group {
  const free = new Map(group.free.map((body, b) => [body.id, b]));
  const about: Tie[][] = group.free.map(() => []);
  const movers = new Map<Tie, readonly number[]>();
  for (const tie of group.ties) {
    const held = [...new Set(tie.bodies)].flatMap((id) => free.get(id) ?? []);
    movers.set(tie, held);
    for (const b of held) about[b]?.push(tie);
  }
  const neighbours = about.map((ties) => new Set(ties.flatMap((tie) => movers.get(tie) ?? [])).size);
  const rank = new Int32Array(group.free.length).fill(-1);
  const queue: number[] = [];
  const enter = (b: number) => {
    rank[b] = queue.length;
    queue.push(b);
  };
  for (let next = 0; queue.length < group.free.length; ) {
    if (next === queue.length) {
      let start = -1;
      group.free.forEach((_, b) => {
        if (rank[b] === -1 && (start < 0 || (neighbours[b] ?? 0) < (neighbours[start] ?? 0))) start = b;
      });
      enter(start);
    }
    const here = queue[next++] ?? 0;
    const near = new Set((about[here] ?? []).flatMap((tie) => movers.get(tie) ?? []));
    for (const b of [...near].sort((a, b) => (neighbours[a] ?? 0) - (neighbours[b] ?? 0) || a - b)) {
      if (rank[b] === -1) enter(b);
    }
  }
  // By the body that comes last, then by the one that comes first: a row reaches no further back than it must.
  const place = (tie: Tie) => {
    const ranks = (movers.get(tie) ?? []).map((b) => rank[b] ?? 0);
    return { tie, last: Math.max(-1, ...ranks), first: Math.min(group.free.length, ...ranks) };
  };
  const ties = group.ties.map(place).sort((a, b) => a.last - b.last || a.first - b.first);
  return { ...group, ties: ties.map(({ tie }) => tie) };
}
