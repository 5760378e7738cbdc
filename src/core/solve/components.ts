import type { Body, Problem, Tie } from './problem.ts';

/** Bodies that move together because of the ties between them, and the unmoving ones that those ties hold on to. */
export interface Group {
  readonly free: readonly Body[];
  readonly still: readonly Body[];
  readonly ties: readonly Tie[];
}

function isStill(body: Body): boolean {
  return body.weight === Number.POSITIVE_INFINITY;
}

/**
 * The problem in independent parts, in the order in which their bodies and ties first appear. A body that never moves
 * does not join what hangs on it. Throws for a tie that names no body of the problem.
 */
export function groups(problem: Problem): readonly Group[] {
  const bodies = new Map(problem.bodies.map((body) => [body.id, body]));
  if (bodies.size !== problem.bodies.length) throw new Error('two bodies of a problem have the same id');
  const leader = new Map<string, string>();
  const leaderOf = (id: string): string => {
    const above = leader.get(id) ?? id;
    if (above === id) return id;
    const top = leaderOf(above);
    leader.set(id, top);
    return top;
  };
  const named = problem.ties.map((tie) =>
    tie.bodies.map((id) => {
      const body = bodies.get(id);
      if (body === undefined) throw new Error(`tie ${tie.id} names ${id}, which is no body of the problem`);
      return body;
    }),
  );
  for (const held of named) {
    const [first, ...rest] = held.filter((body) => !isStill(body));
    for (const body of rest) if (first !== undefined) leader.set(leaderOf(body.id), leaderOf(first.id));
  }
  const parts = new Map<string, { free: Body[]; still: Set<Body>; ties: Tie[] }>();
  const partOf = (key: string) => {
    const part = parts.get(key) ?? { free: [], still: new Set<Body>(), ties: [] };
    parts.set(key, part);
    return part;
  };
  for (const body of problem.bodies) if (!isStill(body)) partOf(`body ${leaderOf(body.id)}`).free.push(body);
  problem.ties.forEach((tie, i) => {
    const held = named[i] ?? [];
    const mover = held.find((body) => !isStill(body));
    const part = partOf(mover === undefined ? `tie ${i}` : `body ${leaderOf(mover.id)}`);
    part.ties.push(tie);
    for (const body of held) if (isStill(body)) part.still.add(body);
  });
  return [...parts.values()].map((part) => ({ ...part, still: [...part.still] }));
}
