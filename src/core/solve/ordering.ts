import type { Component } from './components.ts';
import type { ConstraintEquations } from './problem.ts';

/**
 * The component's constraints in Cuthill–McKee order: breadth first from the body with the fewest neighbours, so that
 * constraints about the same bodies stand together, however they were written. It keeps the envelope small.
 */
export function cuthillMcKee(component: Component): Component {
  const free = new Map(component.free.map((body, b) => [body.id, b]));
  const about: ConstraintEquations[][] = component.free.map(() => []);
  const movers = new Map<ConstraintEquations, readonly number[]>();
  for (const constraint of component.constraints) {
    const ends = [...new Set(constraint.bodies)].flatMap((id) => free.get(id) ?? []);
    movers.set(constraint, ends);
    for (const b of ends) about[b]?.push(constraint);
  }
  const neighbours = about.map(
    (constraints) => new Set(constraints.flatMap((constraint) => movers.get(constraint) ?? [])).size,
  );
  const rank = new Int32Array(component.free.length).fill(-1);
  const queue: number[] = [];
  const enter = (b: number) => {
    rank[b] = queue.length;
    queue.push(b);
  };
  for (let next = 0; queue.length < component.free.length; ) {
    if (next === queue.length) {
      let start = -1;
      component.free.forEach((_, b) => {
        if (rank[b] === -1 && (start < 0 || (neighbours[b] ?? 0) < (neighbours[start] ?? 0))) start = b;
      });
      enter(start);
    }
    const here = queue[next++] ?? 0;
    const near = new Set((about[here] ?? []).flatMap((constraint) => movers.get(constraint) ?? []));
    for (const b of [...near].sort((a, b) => (neighbours[a] ?? 0) - (neighbours[b] ?? 0) || a - b)) {
      if (rank[b] === -1) enter(b);
    }
  }
  // By the last body, then by the first: the row then reaches back as little as possible.
  const span = (constraint: ConstraintEquations) => {
    const ranks = (movers.get(constraint) ?? []).map((b) => rank[b] ?? 0);
    return { constraint, last: Math.max(-1, ...ranks), first: Math.min(component.free.length, ...ranks) };
  };
  const spans = component.constraints.map(span).sort((a, b) => a.last - b.last || a.first - b.first);
  return { ...component, constraints: spans.map(({ constraint }) => constraint) };
}
