import { wrapped } from '../plane/pose.ts';
import { longest } from './continuation.ts';
import { STRIDE, share, squares } from './newton.ts';
import { stiffness } from './stiffness.ts';
import { evaluate, prepare, step } from './system.ts';
import type { Wished, Workbench } from './workspace.ts';

/** A wished body outweighs the others by this while it is dragged. */
const FIRM = 1e4;
/** How far off the near goals are, metres (turning by the lever). */
const REACH = 0.4;
/** Rounds in which a wish is followed; 5 to 10 are usual where it can be reached. */
const MOST_ROUNDS = 64;
/** A wish has been followed when a step moves nothing by more than this, metres. */
const FOLLOWED = 1e-6;
/** A force below this share of a weight, per metre, bends nothing that matters. */
const SLACK = 0.3;
/** At most so many rounds after that, in which the others no longer pull, until nothing moves by more than `SETTLED`. */
const POLISH = 8;
const SETTLED = 1e-9;

/** What the ties bend when they are pulled hard, and how hard they were pulled when that was worked out. */
interface Strain {
  bend: Float64Array;
  force: Float64Array;
  /** Longest step of any body, metres. */
  readonly stride: number;
  /** Weights while wished, and the smallest of them. */
  readonly weight: Float64Array;
  readonly least: number;
  /** Room for what brings the ties back. */
  readonly back: Float64Array;
}

/** A long step cut short: less of the way to the wishes, but all of what brings the ties back to zero. */
function shorten(bench: Workbench, { stride, back }: Strain): void {
  const { system, mobility, move, tried } = bench;
  const part = share(move, stride);
  if (part === 1) return;
  tried.fill(0);
  step(system, mobility, tried, back);
  const backPart = share(back, stride);
  for (let i = 0; i < move.length; i++) {
    move[i] = part * (move[i] as number) + (1 - part) * backPart * (back[i] as number);
  }
}

/**
 * Into `move`: the step from `q` that meets the ties to first order and lies nearest to `pull` by weight. Where ties hold
 * hard against the pull, what they bend is made heavier, and the step is taken again.
 */
function hindered(bench: Workbench, strain: Strain): void {
  const { group, system, mobility, pull, move, tried } = bench;
  for (let again = 0; ; again++) {
    for (let i = 0; i < pull.length; i++) {
      const weight = strain.weight[i] as number;
      mobility[i] = 1 / (weight + (strain.bend[i] as number));
      // What is infinitely heavy goes just as it is pulled.
      const eased = weight === Number.POSITIVE_INFINITY ? 1 : weight * (mobility[i] as number);
      tried[i] = (pull[i] as number) * eased;
    }
    prepare(system, mobility, 0);
    step(system, mobility, tried, move);
    let harder = false;
    for (let r = 0; r < system.force.length && !harder; r++) {
      const force = Math.abs(system.force[r] as number);
      harder = force > 2 * Math.abs(strain.force[r] as number) + SLACK * strain.least;
    }
    // What was heavy for a pull that is over would only slow the rest.
    if (harder || 4 * squares(system.force) < squares(strain.force)) {
      strain.force.set(system.force);
      strain.bend = stiffness(
        system,
        group.free.map((body) => body.lever),
        strain.force,
      );
    }
    if (!harder || again === 2) break;
  }
  shorten(bench, strain);
}

/** Writes the way from `q` to the wish into `pull`, no further than `reach` metres; the answer is the whole way, metres. */
function aim({ x, y, angle, lever, at }: Wished, { q, pull }: Workbench, reach: number): number {
  const dx = x - (q[at] as number);
  const dy = y - (q[at + 1] as number);
  const turn = wrapped(angle - (q[at + 2] as number));
  const way = Math.hypot(dx, dy, lever * turn);
  const part = way > reach ? reach / way : 1;
  pull[at] = part * dx;
  pull[at + 1] = part * dy;
  pull[at + 2] = part * turn;
  return way;
}

function farthest(wishes: readonly Wished[], bench: Workbench, reach: number): number {
  let most = 0;
  for (const wish of wishes) most = Math.max(most, aim(wish, bench, reach));
  return most;
}

/** Weights with the wished bodies made firm, and firmer by `turning` against being turned. */
export function firm({ weight }: Workbench, wishes: readonly Wished[], turning: number): Float64Array {
  const made = Float64Array.from(weight);
  for (const { at } of wishes) {
    for (let k = 0; k < 3; k++) made[at + k] = FIRM * (k === 2 ? turning : 1) * (made[at + k] as number);
  }
  return made;
}

/**
 * From home towards the wishes as far as the ties allow, the untouched bodies staying near where they were. A far wish is
 * followed from one near goal to the next, so that what hangs on it comes along; once the ties hold against that, the
 * wish itself pulls, and the bodies settle where they are nearest to it. `weight`: by coordinate, the wished ones firm.
 */
export function follow(bench: Workbench, wishes: readonly Wished[], weight: Float64Array): void {
  const { system, q, pull, move } = bench;
  q.set(bench.home);
  const home = Float64Array.from(q);
  const all = farthest(wishes, bench, Number.POSITIVE_INFINITY);
  const strain: Strain = {
    bend: new Float64Array(q.length),
    force: new Float64Array(system.force.length),
    stride: Math.max(STRIDE, all / 8),
    weight,
    least: weight.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY),
    back: new Float64Array(q.length),
  };
  let reach = Math.max(REACH, all / 24);
  let left = Number.POSITIVE_INFINITY;
  let settling = 0;
  for (let round = 0; round < MOST_ROUNDS && settling <= POLISH; round++) {
    for (let i = 0; i < q.length; i++) pull[i] = (home[i] as number) - (q[i] as number);
    const way = farthest(wishes, bench, reach);
    if (way > reach && left - way < reach / 2) reach = Number.POSITIVE_INFINITY;
    left = way;
    evaluate(system, q);
    hindered(bench, strain);
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + (move[i] as number);
    const far = longest(bench);
    if (settling > 0 && far < SETTLED) break;
    // The others pull the dragged body back a little: once all is followed, let them stay where they have come to.
    if (settling > 0 || far < FOLLOWED) {
      settling += 1;
      home.set(q);
    }
  }
}
