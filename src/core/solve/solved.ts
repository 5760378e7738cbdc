import { type Pose, wrapped } from '../plane/pose.ts';
import { culprits } from './culprits.ts';
import { type Group, groups, isStill } from './groups.ts';
import { coordinates, type Meeting, meet } from './meet.ts';
import { type Body, MET, type Outcome, type Problem, type Some } from './problem.ts';
import { evaluate, prepare, type System, systemOf } from './system.ts';

/** A body that is this near to its wish, metres or radians, is there. */
const THERE = 1e-9;
/** Less than this, metres or radians, is rounding and not a move. */
const MOVED = 1e-12;

function isNear(a: Pose, b: Pose, tolerance: number): boolean {
  const far = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y), Math.abs(wrapped(a.angle - b.angle)));
  return far <= tolerance;
}

interface Settled {
  readonly poses: readonly Pose[];
  readonly freedoms: number;
  readonly spare: readonly string[];
}

/** Ways left to move, and the ties of which every row depends on rows before it. Weights have no say here. */
function surveyed(group: Group, system: System): Pick<Settled, 'freedoms' | 'spare'> {
  const plain = group.free.flatMap((body) => [1, 1, 1 / body.lever ** 2]);
  prepare(system, Float64Array.from(plain), 0);
  let rank = 0;
  const useful = new Set<number>();
  const tied = new Set<number>();
  system.tieOf.forEach((tie, row) => {
    tied.add(tie);
    if (system.matrix.inverse[row] === 0) return;
    rank += 1;
    useful.add(tie);
  });
  const spare = group.ties.filter((_, t) => tied.has(t) && !useful.has(t)).map((tie) => tie.id);
  return { freedoms: 3 * group.free.length - rank, spare };
}

function posed(body: Body, q: Float64Array, b: number): Pose {
  const pose = { x: q[3 * b] as number, y: q[3 * b + 1] as number, angle: q[3 * b + 2] as number };
  return isNear(pose, body.pose, MOVED) ? body.pose : pose;
}

type Part = { readonly settled: Settled } | { readonly worst: string; readonly left: number };

function part(group: Group): Part {
  const isWished = group.free.some(({ wish, pose }) => wish !== undefined && !isNear(wish, pose, THERE));
  if (group.ties.length === 0) {
    const poses = group.free.map(({ wish, pose }) => (isWished && wish !== undefined ? wish : pose));
    return { settled: { poses, freedoms: 3 * group.free.length, spare: [] } };
  }
  if (!isWished) {
    const system = systemOf(group);
    if (evaluate(system, coordinates(group)) <= MET) {
      return { settled: { poses: group.free.map((body) => body.pose), ...surveyed(group, system) } };
    }
  }
  const { system, q, worst } = reached(group);
  if (worst <= MET) {
    const poses = group.free.map((body, b) => posed(body, q, b));
    evaluate(system, q);
    return { settled: { poses, ...surveyed(group, system) } };
  }
  const row = system.values.reduce((most, value, r) => {
    return Math.abs(value) > Math.abs(system.values[most] as number) ? r : most;
  }, 0);
  return { worst: group.ties[system.tieOf[row] ?? 0]?.id ?? '', left: worst };
}

/** The group as its ties allow; a wish that leads nowhere is followed half the way, a quarter …, and at last not at all. */
function reached(group: Group): Meeting {
  let tried = meet(group);
  if (group.free.every(({ wish }) => wish === undefined)) return tried;
  for (let part = 0.5; tried.worst > MET && part > 0.1; part /= 2) {
    const free = group.free.map((body) => (body.wish === undefined ? body : { ...body, wish: towards(body, part) }));
    tried = meet({ ...group, free });
  }
  return tried.worst <= MET ? tried : meet({ ...group, free: group.free.map(({ wish: _, ...body }) => body) });
}

function towards({ pose, wish = pose }: Body, part: number): Pose {
  return {
    x: pose.x + part * (wish.x - pose.x),
    y: pose.y + part * (wish.y - pose.y),
    angle: pose.angle + part * wrapped(wish.angle - pose.angle),
  };
}

/**
 * Where the bodies come to when all ties hold: wishes are followed as far as the ties allow, everything else moves least,
 * still bodies and parts that are met already keep their very poses. The same problem gives the same bytes.
 * The answer depends on the poses given, not on the way there: during a drag, give those from its beginning.
 */
export function solved(problem: Problem): Outcome {
  const poses = new Map(problem.bodies.filter(isStill).map((body) => [body.id, body.pose]));
  const spare: string[] = [];
  const clashes: Some<string>[] = [];
  const lost: string[] = [];
  let freedoms = 0;
  let left = 0;
  for (const group of groups(problem)) {
    const answer = part(group);
    if ('settled' in answer) {
      group.free.forEach((body, b) => {
        poses.set(body.id, answer.settled.poses[b] ?? body.pose);
      });
      freedoms += answer.settled.freedoms;
      spare.push(...answer.settled.spare);
      continue;
    }
    const sets = culprits(group);
    clashes.push(...sets);
    if (sets.length === 0) lost.push(answer.worst);
    left = Math.max(left, answer.left);
  }
  const [clash, ...clashesToo] = clashes;
  if (clash !== undefined) return { outcome: 'clash', culprits: [clash, ...clashesToo] };
  const [worst, ...worstToo] = lost;
  if (worst !== undefined) return { outcome: 'lost', worst: [worst, ...worstToo], left };
  return { outcome: 'met', poses, freedoms, spare };
}
