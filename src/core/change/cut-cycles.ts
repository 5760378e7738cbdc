/** For each vertex, those that must come before it. */
type Waits = readonly (readonly number[])[];

/** So many choices are tried in one knot before the next best is taken: some milliseconds. */
const MOST_TRIED = 20_000;

/** All vertices on the ways that lead from one. */
function reached(waits: Waits, from: number): ReadonlySet<number> {
  const seen = new Set<number>();
  const open = [...(waits[from] ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...(waits[next] ?? []));
  }
  return seen;
}

/** Sets of vertices each of which waits for all others of its set, by way of others (strongly connected components). */
function knots(waits: Waits): readonly (readonly number[])[] {
  const reach = waits.map((_, vertex) => reached(waits, vertex));
  const grouped = new Set<number>();
  return waits.flatMap((_, vertex) => {
    if (grouped.has(vertex) || reach[vertex]?.has(vertex) !== true) return [];
    const knot = [...(reach[vertex] ?? [])].filter((other) => reach[other]?.has(vertex));
    for (const each of knot) grouped.add(each);
    return [knot];
  });
}

/** The shortest way from a vertex back to it among those that are left; undefined where there is none. */
function cycleThrough(waits: Waits, start: number, left: ReadonlySet<number>): readonly number[] | undefined {
  const cameFrom = new Map<number, number>();
  let ring: readonly number[] = [start];
  while (ring.length > 0) {
    const further: number[] = [];
    for (const vertex of ring) {
      for (const next of waits[vertex] ?? []) {
        if (!left.has(next) || (cameFrom.has(next) && next !== start)) continue;
        if (next !== start) {
          cameFrom.set(next, vertex);
          further.push(next);
          continue;
        }
        const cycle = [vertex];
        for (let at = vertex; at !== start; ) {
          at = cameFrom.get(at) ?? start;
          cycle.push(at);
        }
        return cycle;
      }
    }
    ring = further;
  }
  return undefined;
}

function shortestCycle(waits: Waits, left: ReadonlySet<number>): readonly number[] | undefined {
  let best: readonly number[] | undefined;
  for (const start of left) {
    const cycle = cycleThrough(waits, start, left);
    if (cycle !== undefined && (best === undefined || cycle.length < best.length)) best = cycle;
    if (best !== undefined && best.length <= 2) return best;
  }
  return best;
}

/** One knot with a budget of tries. Every cycle loses one of its own: a shortest one leaves the fewest choices. */
function cutOf(waits: Waits, knot: readonly number[]): readonly number[] {
  let tried = 0;
  const within = (left: ReadonlySet<number>, most: number): readonly number[] | undefined => {
    tried += 1;
    const cycle = shortestCycle(waits, left);
    if (cycle === undefined) return [];
    if (most === 0) return undefined;
    for (const vertex of cycle) {
      if (tried > MOST_TRIED) return undefined;
      const rest = within(new Set([...left].filter((each) => each !== vertex)), most - 1);
      if (rest !== undefined) return [vertex, ...rest];
    }
    return undefined;
  };
  for (let most = 1; most < knot.length && tried <= MOST_TRIED; most += 1) {
    const cut = within(new Set(knot), most);
    if (cut !== undefined) return cut;
  }
  return greedyCut(waits, knot);
}

/** Takes the vertex for which most others wait out of each cycle that is left. */
function greedyCut(waits: Waits, knot: readonly number[]): readonly number[] {
  const left = new Set(knot);
  const waited = (vertex: number) => knot.filter((each) => left.has(each) && waits[each]?.includes(vertex)).length;
  const cut: number[] = [];
  for (let cycle = shortestCycle(waits, left); cycle !== undefined; cycle = shortestCycle(waits, left)) {
    const worst = cycle.reduce((a, b) => (waited(b) > waited(a) ? b : a));
    left.delete(worst);
    cut.push(worst);
  }
  return cut;
}

/**
 * The fewest vertices without which nothing waits for itself, in the order of their numbers: a smallest feedback vertex
 * set, found by trying one vertex more each time. A knot that takes too long is cut greedily.
 */
export function cutCycles(waits: Waits): readonly number[] {
  return knots(waits)
    .flatMap((knot) => cutOf(waits, knot))
    .sort((a, b) => a - b);
}
