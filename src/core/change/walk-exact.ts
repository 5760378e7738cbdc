import type { Seconds } from '../measure/quantity.ts';
import type { Routes, TeamSize, WalkProblem } from './walk.ts';

/** So many tasks are walked in the least time, by trying all orders that can still be the best. */
export const MOST_EXACT = 8;
/** Times nearer than this are the same, seconds. */
const SAME: Seconds = 1e-9;

/**
 * How one team does tasks of one pass, from one place: for each set of them (by bits) and each one that is laid last, the
 * least time. Dynamic programming over who lies, is held or is laid (three states a task) and what was done last.
 */
interface PassTable {
  readonly least: Float64Array;
  /** Events of the problem in order. */
  route(set: number, last: number): readonly number[];
}

/** The team that walks, and the event that it starts from. */
interface Walker {
  readonly people: TeamSize;
  readonly start: number;
}

function passTable(problem: WalkProblem, tasks: readonly number[], { people, start }: Walker): PassTable {
  const { count, empty, loaded, work, bulk, hands } = problem;
  const size = 2 * count + 1;
  const [many, events] = [tasks.length, 2 * tasks.length];
  const power = Array.from({ length: many + 1 }, (_, i) => 3 ** i);
  const states = power[many] as number;
  const time = new Float64Array(states * events).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array(states * events).fill(-1);
  const eventOf = (local: number) => 2 * (tasks[local >> 1] as number) + (local % 2);
  const most = people * hands;
  /** Does one more event from a state; `last` −1 is the start. */
  const step = (code: number, last: number, held: number, at: Seconds) => {
    for (let task = 0; task < many; task += 1) {
      const digit = Math.floor(code / (power[task] as number)) % 3;
      if (digit === 2 || (digit === 0 && held + (bulk[tasks[task] as number] as number) > most)) continue;
      const local = 2 * task + digit;
      const leg = (last < 0 ? start : eventOf(last)) * size + eventOf(local);
      const then = at + ((held > 0 ? loaded : empty)[leg] as number) + (work[people][eventOf(local)] as number);
      const next = (code + (power[task] as number)) * events + local;
      if (then >= (time[next] as number)) continue;
      time[next] = then;
      before[next] = last;
    }
  };
  step(0, -1, 0, 0);
  for (let code = 1; code < states; code += 1) {
    let held = 0;
    for (let task = 0; task < many; task += 1) {
      if (Math.floor(code / (power[task] as number)) % 3 === 1) held += bulk[tasks[task] as number] as number;
    }
    for (let last = 0; last < events; last += 1) {
      const at = time[code * events + last] as number;
      if (at < Number.POSITIVE_INFINITY) step(code, last, held, at);
    }
  }
  const codeOf = (set: number) => power.slice(0, many).reduce((sum, each, i) => sum + ((set >> i) & 1) * 2 * each, 0);
  const least = new Float64Array(2 ** many * many);
  for (let set = 0; set < 2 ** many; set += 1) {
    for (let last = 0; last < many; last += 1)
      least[set * many + last] = time[codeOf(set) * events + 2 * last + 1] as number;
  }
  return {
    least,
    route(set, last) {
      const found: number[] = [];
      let code = codeOf(set);
      for (let local = 2 * last + 1; local >= 0; ) {
        found.push(eventOf(local));
        const previous = before[code * events + local] as number;
        code -= power[local >> 1] as number;
        local = previous;
      }
      return found.reverse();
    },
  };
}

/** Where all teams are after a pass, and how they came there. */
interface Node {
  /** The event that each team did last. */
  readonly at: readonly number[];
  readonly time: Seconds;
  /** Of all teams together: of equal times the one with the least work is taken. */
  readonly sum: Seconds;
  readonly from?: Node;
  readonly routes: readonly (() => readonly number[])[];
}

function isBetter(a: { time: Seconds; sum: Seconds }, b: { time: Seconds; sum: Seconds } | undefined): boolean {
  if (b === undefined || a.time < b.time - SAME) return true;
  return a.time <= b.time + SAME && a.sum < b.sum - SAME;
}

const stand = () => [];

/** All ways to share the tasks of a pass among the teams, from one node: the best for each set of places they end at. */
function shared(
  node: Node,
  tables: readonly PassTable[],
  { tasks, isLast, offer }: { tasks: readonly number[]; isLast: boolean; offer: (node: Node) => void },
): void {
  const many = tasks.length;
  const all = 2 ** many - 1;
  interface Part {
    readonly left: number;
    readonly most: Seconds;
    readonly sum: Seconds;
    readonly at: readonly number[];
    readonly routes: Node['routes'];
  }
  const go = (team: number, part: Part) => {
    const table = tables[team];
    if (table === undefined) {
      const { at, most, sum, routes } = part;
      if (part.left === 0) offer({ at, time: node.time + most, sum: node.sum + sum, from: node, routes });
      return;
    }
    // Sets of what is left, the whole of it first; the last team takes all.
    for (let set = part.left; set >= 0; set = set === 0 ? -1 : (set - 1) & part.left) {
      if (team === tables.length - 1 && set !== part.left) break;
      if (set === 0) {
        go(team + 1, { ...part, at: [...part.at, node.at[team] as number], routes: [...part.routes, stand] });
        continue;
      }
      const ends = Array.from({ length: many }, (_, last) => last).filter((last) => {
        return (table.least[set * many + last] as number) < Number.POSITIVE_INFINITY;
      });
      // Nobody goes on from the last pass: there only the quickest order counts.
      const kept = isLast ? ends.sort((a, b) => least(a) - least(b)).slice(0, 1) : ends;
      function least(last: number): Seconds {
        return table?.least[set * many + last] as number;
      }
      for (const last of kept) {
        go(team + 1, {
          left: part.left & ~set,
          most: Math.max(part.most, least(last)),
          sum: part.sum + least(last),
          at: [...part.at, 2 * (tasks[last] as number) + 1],
          routes: [...part.routes, () => table.route(set, last)],
        });
      }
    }
  };
  go(0, { left: all, most: 0, sum: 0, at: [], routes: [] });
}

/** The routes that take the least time in all, proven by dynamic programming over passes; for few tasks. */
export function exactWalk(problem: WalkProblem, teams: readonly TeamSize[]): Routes {
  let nodes: readonly Node[] = [{ at: teams.map(() => 2 * problem.count), time: 0, sum: 0, routes: [] }];
  for (let now = 0; now < problem.passes; now += 1) {
    const tasks = [...problem.pass.entries()].flatMap(([task, pass]) => (pass === now ? [task] : []));
    const isLast = now === problem.passes - 1;
    const known = new Map<string, PassTable>();
    const tableOf = (people: TeamSize, start: number): PassTable => {
      const key = `${people} ${start}`;
      const table = known.get(key) ?? passTable(problem, tasks, { people, start });
      known.set(key, table);
      return table;
    };
    const best = new Map<string, Node>();
    const offer = (node: Node) => {
      const key = isLast ? '' : node.at.join(' ');
      if (isBetter(node, best.get(key))) best.set(key, node);
    };
    for (const node of nodes) {
      const tables = teams.map((people, team) => tableOf(people, node.at[team] as number));
      shared(node, tables, { tasks, isLast, offer });
    }
    nodes = [...best.values()];
  }
  const chain: Node[] = [];
  for (let node = nodes[0]; node !== undefined; node = node.from) chain.unshift(node);
  return teams.map((_, team) => chain.flatMap(({ routes }) => routes[team]?.() ?? []));
}
