import { type Pose, wrapped } from '../plane/pose.ts';
import type { Group } from './groups.ts';
import { MET } from './problem.ts';
import { stiffness } from './stiffness.ts';
import { evaluate, prepare, type System, step, systemOf } from './system.ts';

/** How a group came out: coordinates, the largest residual, and whether no further step would make it smaller. */
export interface Meeting {
  readonly system: System;
  readonly q: Float64Array;
  readonly worst: number;
  readonly stuck: boolean;
}

/** A wished body outweighs the others by this while it is dragged. */
const FIRM = 1e4;
/** How far off the near goals are, metres (turning by the lever). */
const REACH = 0.4;
/** Rounds in which a wish is followed; 5 to 10 are usual where it can be reached. */
const MOST_ROUNDS = 64;
/** No body goes further in one step, metres, unless its way is long, nor turns by more, radians. */
const STRIDE = 0.5;
const TURN = 0.5;
/** A wish has been followed when a step moves nothing by more than this, metres. */
const FOLLOWED = 1e-6;
/** A force below this share of a weight, per metre, bends nothing that matters. */
const SLACK = 0.3;
/** At most so many rounds after that, in which the others no longer pull, until nothing moves by more than `SETTLED`. */
const POLISH = 8;
const SETTLED = 1e-9;
/** Steps that bring residuals to zero; 3 to 6 are usual. */
const MOST_STEPS = 60;
/** Residuals are pressed down to here where the numbers allow it. */
const FINE = 1e-13;
/** Damping of a step that did not help, relative to the size of each row. */
const LEAST_LIFT = 1e-8;
const MOST_LIFT = 1e4;

/** The group's coordinates where its bodies are now. */
export function coordinates(group: Group): Float64Array {
  return Float64Array.from(group.free.flatMap(({ pose }) => [pose.x, pose.y, pose.angle]));
}

function weights(group: Group): Float64Array {
  return Float64Array.from(
    group.free.flatMap((body) => {
      const weight = body.weight * (body.wish === undefined ? 1 : FIRM);
      return [weight, weight, weight * body.lever ** 2];
    }),
  );
}

/** The longest way any body goes in a step, metres (turning by the lever). */
function longest(group: Group, move: Float64Array): number {
  return group.free.reduce((most, body, b) => {
    const turn = body.lever * (move[3 * b + 2] as number);
    return Math.max(most, Math.hypot(move[3 * b] as number, move[3 * b + 1] as number, turn));
  }, 0);
}

/** The part of a step that is short enough: no body turns by more than `TURN` or goes further than `stride` metres. */
function share(move: Float64Array, stride: number): number {
  let most = 1;
  for (let i = 0; i < move.length; i++) {
    most = Math.max(most, Math.abs(move[i] as number) / (i % 3 === 2 ? TURN : stride));
  }
  return 1 / most;
}

function squares(values: Float64Array): number {
  return values.reduce((sum, each) => sum + each * each, 0);
}

/** A long step cut short: less of the way to the wishes, but all of what brings the ties back to zero. */
function shortened(system: System, mobility: Float64Array, move: Float64Array, stride: number): Float64Array {
  const part = share(move, stride);
  if (part === 1) return move;
  const back = new Float64Array(move.length);
  step(system, mobility, new Float64Array(move.length), back);
  const backPart = share(back, stride);
  return move.map((each, i) => part * each + (1 - part) * backPart * (back[i] as number));
}

/** What the ties bend when they are pulled hard, and how hard they were pulled when that was worked out. */
interface Strain {
  bend: Float64Array;
  force: Float64Array;
  /** Longest step of any body, metres. */
  readonly stride: number;
}

/**
 * The step from `q` that meets the ties to first order and lies nearest to `pull` by weight. Where ties hold hard against
 * the pull, what they bend is made heavier, and the step is taken again.
 */
function hindered(group: Group, system: System, pull: Float64Array, strain: Strain): Float64Array {
  const weight = weights(group);
  const least = weight.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY);
  const move = new Float64Array(pull.length);
  for (let again = 0; ; again++) {
    const mobility = weight.map((each, i) => 1 / (each + (strain.bend[i] as number)));
    const eased = pull.map((each, i) => each * (weight[i] as number) * (mobility[i] as number));
    prepare(system, mobility, 0);
    step(system, mobility, eased, move);
    const harder = system.force.some(
      (each, r) => Math.abs(each) > 2 * Math.abs(strain.force[r] as number) + SLACK * least,
    );
    // What was heavy for a pull that is over would only slow the rest.
    if (harder || 4 * squares(system.force) < squares(strain.force)) {
      strain.force = Float64Array.from(system.force);
      strain.bend = stiffness(
        system,
        group.free.map((body) => body.lever),
        system.force,
      );
    }
    if (!harder || again === 2) return shortened(system, mobility, move, strain.stride);
  }
}

interface Wished {
  readonly wish: Pose;
  readonly lever: number;
  /** Where its coordinates begin. */
  readonly at: number;
}

/** Writes the way from `q` to the wish into `pull`, no further than `reach` metres; the answer is the whole way, metres. */
function aim({ wish, lever, at }: Wished, q: Float64Array, pull: Float64Array, reach: number): number {
  const dx = wish.x - (q[at] as number);
  const dy = wish.y - (q[at + 1] as number);
  const turn = wrapped(wish.angle - (q[at + 2] as number));
  const way = Math.hypot(dx, dy, lever * turn);
  const part = way > reach ? reach / way : 1;
  pull[at] = part * dx;
  pull[at + 1] = part * dy;
  pull[at + 2] = part * turn;
  return way;
}

/**
 * From `q` towards the wishes as far as the ties allow, the untouched bodies staying near where they were. A far wish is
 * followed from one near goal to the next, so that what hangs on it comes along; once the ties hold against that, the
 * wish itself pulls, and the bodies settle where they are nearest to it.
 */
function follow(group: Group, system: System, q: Float64Array): void {
  const home = Float64Array.from(q);
  const pull = new Float64Array(q.length);
  const wishes = group.free.flatMap(({ wish, lever }, b) => (wish === undefined ? [] : [{ wish, lever, at: 3 * b }]));
  const farthest = Math.max(...wishes.map((each) => aim(each, q, pull, Number.POSITIVE_INFINITY)));
  const strain = {
    bend: new Float64Array(q.length),
    force: new Float64Array(system.force.length),
    stride: Math.max(STRIDE, farthest / 8),
  };
  let reach = Math.max(REACH, farthest / 24);
  let left = Number.POSITIVE_INFINITY;
  let settling = 0;
  for (let round = 0; round < MOST_ROUNDS && settling <= POLISH; round++) {
    for (let i = 0; i < q.length; i++) pull[i] = (home[i] as number) - (q[i] as number);
    const way = Math.max(...wishes.map((each) => aim(each, q, pull, reach)));
    if (way > reach && left - way < reach / 2) reach = Number.POSITIVE_INFINITY;
    left = way;
    evaluate(system, q);
    const move = hindered(group, system, pull, strain);
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
    const far = longest(group, move);
    if (settling > 0 && far < SETTLED) break;
    // The others pull the dragged body back a little: once all is followed, let them stay where they have come to.
    if (settling > 0 || far < FOLLOWED) {
      settling += 1;
      home.set(q);
    }
  }
}

/** From `q` to residuals of zero, moving as little as possible on the way. */
function land(group: Group, system: System, q: Float64Array): { worst: number; stuck: boolean } {
  const mobility = weights(group).map((weight) => 1 / weight);
  const still = new Float64Array(q.length);
  const move = new Float64Array(q.length);
  const tried = new Float64Array(q.length);
  let worst = evaluate(system, q);
  let sum = squares(system.values);
  let lift = 0;
  for (let round = 0; round < MOST_STEPS; round++) {
    if (worst <= FINE) break;
    prepare(system, mobility, lift);
    step(system, mobility, still, move);
    const whole = share(move, STRIDE);
    let part = 1;
    let better = false;
    for (; part > 0.05 && !better; part /= 2) {
      for (let i = 0; i < q.length; i++) tried[i] = (q[i] as number) + part * whole * (move[i] as number);
      const reached = evaluate(system, tried);
      const left = squares(system.values);
      if (left < sum) {
        better = true;
        const gained = 1 - left / sum;
        q.set(tried);
        worst = reached;
        sum = left;
        if (gained < 1e-9 && worst > MET) return { worst, stuck: true };
      }
    }
    if (better) {
      lift = part >= 0.5 ? (lift > LEAST_LIFT ? lift / 10 : 0) : Math.max(lift * 10, LEAST_LIFT);
      continue;
    }
    // Values and slopes are those of the last trial: bring back those of the best.
    worst = evaluate(system, q);
    if (worst <= MET || lift >= MOST_LIFT) return { worst, stuck: worst > MET };
    lift = Math.max(lift * 10, LEAST_LIFT);
  }
  return { worst, stuck: false };
}

/** Brings the group to where its ties hold and its wishes are followed as far as they allow. */
export function meet(group: Group): Meeting {
  const system = systemOf(group);
  const q = coordinates(group);
  if (group.free.some((body) => body.wish !== undefined)) follow(group, system, q);
  const { worst, stuck } = land(group, system, q);
  return { system, q, worst, stuck };
}
