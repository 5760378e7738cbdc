import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { reaches, reachPath } from '../plane/bounded-curvature.ts';
import { laid, type Path, totalTurn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, joinedBounds } from '../plane/ring.ts';
import { shortestThrough } from '../plane/through.ts';
import { type Surroundings, trouble } from './corridor.ts';
import { merged } from './joint.ts';

/** What a way between two obstacles has to join. */
export interface Ask {
  readonly from: Pose;
  readonly to: Pose;
  readonly gait: Gait;
  readonly horse: Horse;
  readonly bends: readonly Point[];
  /** Whether the horse wants to be straight after the one obstacle and before the other. */
  readonly straightAfter: boolean;
  readonly straightBefore: boolean;
}

/** A way, and the box of all that was looked at to choose it: what changes outside cannot change the choice. */
export interface Approach {
  readonly path: Path;
  readonly looked: Bounds;
}

/** What a metre is worth: a metre of straight that is missing, of radius that is missing, a radian of circling. Estimates. */
const PRICE = { straight: 3, radius: 1.5, circling: 3 };
/** A way turns this much before it counts as circling. */
const PLAIN_TURN = 1.25 * Math.PI;
/** Shares of a horse's length that are kept straight at an end. */
const SHARES = [1, 0.5, 0];
/** No more ways than this are looked at closely. */
const MOST_TRIED = 40;

interface Candidate {
  readonly cost: Metres;
  readonly path: () => Path;
}

function ahead(pose: Pose, by: Metres): Pose {
  return { ...pose, x: pose.x + by * Math.cos(pose.angle), y: pose.y + by * Math.sin(pose.angle) };
}

function straights(wanted: boolean, horse: Horse): Metres[] {
  return wanted ? SHARES.map((share) => share * horse.bodyLength.value) : [0];
}

function radii({ gait, horse, bends }: Ask): Metres[] {
  const easy = horse.gaits[gait].easyTurn.value;
  const least = Math.min(easy, horse.gaits[gait].leastTurn.value);
  return bends.length > 0 ? [...new Set([easy, least])] : [...new Set([easy, (easy + least) / 2, least])];
}

/** Every choice of straights at the two ends; a way through bends is dear to work out and has only both or none. */
function frames({ straightAfter, straightBefore, horse, bends }: Ask): (readonly [Metres, Metres])[] {
  const all = straights(straightAfter, horse).flatMap((after) =>
    straights(straightBefore, horse).map((before) => [after, before] as const),
  );
  const [first, last] = [all[0], all.at(-1)];
  return bends.length === 0 || first === undefined || last === undefined ? all : [...new Set([first, last])];
}

function circling(turn: number): Metres {
  return PRICE.circling * Math.max(0, turn - PLAIN_TURN);
}

function candidates(ask: Ask): Candidate[] {
  const { from, to, horse, bends } = ask;
  const choices = radii(ask);
  const widest = choices[0] ?? 0;
  const whole = (ask.straightAfter ? 1 : 0) + (ask.straightBefore ? 1 : 0);
  const found: Candidate[] = [];
  for (const [after, before] of frames(ask)) {
    const begin = ahead(from, after);
    const finish = ahead(to, -before);
    const missing = whole * horse.bodyLength.value - after - before;
    const framed = (middle: Path): Path =>
      merged([
        ...laid(from, [{ length: after, curvature: 0 }]),
        ...middle,
        ...laid(finish, [{ length: before, curvature: 0 }]),
      ]);
    for (const radius of choices) {
      const fixed = after + before + PRICE.straight * missing + PRICE.radius * (widest - radius);
      if (bends.length > 0) {
        const { length, path } = shortestThrough(begin, bends, finish, radius);
        found.push({ cost: length + fixed + circling(totalTurn(path)), path: () => framed(path) });
        continue;
      }
      for (const reach of reaches(begin, finish, radius)) {
        const [first, middle, last] = reach.parts;
        const turn = first + last + (reach.word[1] === 'S' ? 0 : middle);
        found.push({
          cost: reach.length + fixed + circling(turn),
          path: () => framed(reachPath(begin, reach, radius)),
        });
      }
    }
  }
  return found.sort((a, b) => a.cost - b.cost);
}

/**
 * The way from one pose to another at a gait: the cheapest of all shortest-path words at the gait's easy turn, its
 * least turn and one between, with and without straights at the ends; clean ones first, then the least bad.
 */
export function approach(ask: Ask, surroundings: Surroundings): Approach {
  let best: { readonly cost: Metres; readonly path: Path } | undefined;
  let looked: Bounds | undefined;
  for (const candidate of candidates(ask).slice(0, MOST_TRIED)) {
    if (best !== undefined && candidate.cost >= best.cost) break;
    const path = candidate.path();
    const { cost, bounds } = trouble(path, surroundings);
    looked = looked === undefined ? bounds : joinedBounds(looked, bounds);
    if (best === undefined || candidate.cost + cost < best.cost) best = { cost: candidate.cost + cost, path };
  }
  if (best === undefined || looked === undefined) throw new Error('approach: no way was found, which geometry forbids');
  return { path: best.path, looked };
}
