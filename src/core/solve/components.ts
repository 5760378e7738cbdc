import type { Body, ConstraintEquations, Problem } from './problem.ts';

/**
 * A component: bodies that move together because of their constraints, and the grounded bodies that those constraints
 * refer to.
 */
export interface Component {
  readonly free: readonly Body[];
  readonly grounded: readonly Body[];
  readonly constraints: readonly ConstraintEquations[];
}

function isGrounded(body: Body): boolean {
  return body.weight === Number.POSITIVE_INFINITY;
}

/**
 * The problem in independent connected components, in the order in which their bodies and constraints first appear. A
 * body that never moves does not connect others. Throws for a constraint that names no body of the problem.
 */
export function connectedComponents(problem: Problem): readonly Component[] {
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
  const named = problem.constraints.map((constraint) =>
    constraint.bodies.map((id) => {
      const body = bodies.get(id);
      if (body === undefined)
        throw new Error(`constraint ${constraint.id} names ${id}, which is no body of the problem`);
      return body;
    }),
  );
  for (const members of named) {
    const [first, ...rest] = members.filter((body) => !isGrounded(body));
    for (const body of rest) if (first !== undefined) leader.set(leaderOf(body.id), leaderOf(first.id));
  }
  const parts = new Map<string, { free: Body[]; grounded: Set<Body>; constraints: ConstraintEquations[] }>();
  const partOf = (key: string) => {
    const part = parts.get(key) ?? { free: [], grounded: new Set<Body>(), constraints: [] };
    parts.set(key, part);
    return part;
  };
  for (const body of problem.bodies) if (!isGrounded(body)) partOf(`body ${leaderOf(body.id)}`).free.push(body);
  problem.constraints.forEach((constraint, i) => {
    const members = named[i] ?? [];
    const mover = members.find((body) => !isGrounded(body));
    const part = partOf(mover === undefined ? `constraint ${i}` : `body ${leaderOf(mover.id)}`);
    part.constraints.push(constraint);
    for (const body of members) if (isGrounded(body)) part.grounded.add(body);
  });
  return [...parts.values()].map((part) => ({ ...part, grounded: [...part.grounded] }));
}
