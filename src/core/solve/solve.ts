import { type Pose, wrapped } from '../plane/pose.ts';
import { groups } from './components.ts';
import { culprits, isKnownToClash } from './conflicts.ts';
import type { Landing } from './newton.ts';
import { type Body, MET, type Outcome, type Problem, type Some, type Wishes } from './problem.ts';
import { meet, meetWishes } from './solve-component.ts';
import { evaluate } from './system.ts';
import { type Wished, type Workbench, wishedOf, workbench } from './workspace.ts';

/** A body that is this near to its wish, metres or radians, is there. */
const THERE = 1e-9;
/** Less than this, metres or radians, is rounding and not a move. */
const MOVED = 1e-12;

const NONE: Wishes = new Map();

interface Prepared {
  readonly benches: readonly Workbench[];
  /** Where everything is. */
  readonly poses: ReadonlyMap<string, Pose>;
}

const known = new WeakMap<Problem, Prepared>();

function prepared(problem: Problem): Prepared {
  const before = known.get(problem);
  if (before !== undefined) return before;
  const made = {
    benches: groups(problem).map(workbench),
    poses: new Map(problem.bodies.map((body) => [body.id, body.pose])),
  };
  known.set(problem, made);
  return made;
}

function isAt({ x, y, angle, at }: Wished, home: Float64Array): boolean {
  return (
    Math.abs(x - (home[at] as number)) <= THERE &&
    Math.abs(y - (home[at + 1] as number)) <= THERE &&
    Math.abs(wrapped(angle - (home[at + 2] as number))) <= THERE
  );
}

/** Where a body has come to: its very pose when it did not move, its very wish when it got there. */
function posed({ id, pose }: Body, q: Float64Array, { b, wishes }: { b: number; wishes: Wishes }): Pose {
  const x = q[3 * b] as number;
  const y = q[3 * b + 1] as number;
  const angle = q[3 * b + 2] as number;
  if (Math.abs(x - pose.x) <= MOVED && Math.abs(y - pose.y) <= MOVED && Math.abs(angle - pose.angle) <= MOVED) {
    return pose;
  }
  const wish = wishes.get(id);
  if (wish !== undefined && wish.x === x && wish.y === y && Math.abs(wrapped(wish.angle - angle)) <= MOVED) return wish;
  return { x, y, angle };
}

/** The tie that is farthest from being met, and by how much. */
function worstOf({ system, q }: Workbench): { readonly id: string; readonly left: number } {
  const left = evaluate(system, q);
  const row = system.values.findIndex((value) => Math.abs(value) === left);
  return { id: system.ties[system.tieOf[row] ?? 0]?.id ?? '', left };
}

function landing(bench: Workbench, wished: readonly Wished[]): Landing {
  if (wished.some((wish) => !isAt(wish, bench.home))) return meetWishes(bench, wished);
  bench.q.set(bench.home);
  const worst = evaluate(bench.system, bench.q);
  return worst <= MET ? { worst, stuck: false } : meet(bench);
}

/**
 * Where the bodies come to when all ties hold: wishes are followed as far as the ties allow, everything else moves least;
 * still bodies, and parts that are met already, keep their very poses. With wishes only what hangs on them is solved,
 * without any everything. The same problem and wishes give the same bytes. The answer depends on the poses given, not on
 * the way there: during a drag, give the problem from its beginning (the same object: what is worked out from it is kept).
 */
export function solved(problem: Problem, wishes: Wishes = NONE): Outcome {
  const { benches, poses: before } = prepared(problem);
  const poses = new Map(before);
  const clashes: Some<string>[] = [];
  const lost: string[] = [];
  let left = 0;
  for (const bench of benches) {
    const wished = wishedOf(bench, wishes);
    if (wishes.size > 0 && wished.length === 0) continue;
    // While a conflict stands, a hand moves nothing and nobody waits for the search again.
    if (!isKnownToClash(bench.group) && landing(bench, wished).worst <= MET) {
      for (let b = 0; b < bench.group.free.length; b++) {
        const body = bench.group.free[b] as Body;
        const pose = posed(body, bench.q, { b, wishes });
        if (pose !== body.pose) poses.set(body.id, pose);
      }
      continue;
    }
    const worst = worstOf(bench);
    left = Math.max(left, worst.left);
    const sets = culprits(bench.group);
    clashes.push(...sets);
    if (sets.length === 0) lost.push(worst.id);
  }
  const [clash, ...clashesToo] = clashes;
  if (clash !== undefined) return { outcome: 'clash', culprits: [clash, ...clashesToo] };
  const [worst, ...worstToo] = lost;
  if (worst !== undefined) return { outcome: 'lost', worst: [worst, ...worstToo], left };
  return { outcome: 'met', poses };
}
