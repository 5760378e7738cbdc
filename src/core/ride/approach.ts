import type { Gait, Horse } from '../horses/horse.ts';
import { easyTurn, leastTurn } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Reach, reaches, reachPath } from '../plane/bounded-curvature.ts';
import { laid, type Path, totalTurn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, joinedBounds } from '../plane/ring.ts';
import { shortestThrough } from '../plane/through.ts';
import { type Surroundings, type Trouble, trouble } from './corridor.ts';
import { detours } from './detour.ts';
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
/** How many horse's lengths are kept straight at an end: one is wanted. */
const SHARES = [1, 0.5, 0];
/** Longer ones, which may lead round something that is in the way. */
const LONG_SHARES = [1, 2, 3.5];
/** No more ways than this are looked at closely. */
const MOST_TRIED = 60;

/** A way that may be taken; most are never laid out, so it only says how. */
interface Candidate {
  readonly cost: Metres;
  readonly frame: Frame;
  readonly middle: Path | { readonly reach: Reach; readonly radius: Metres };
}

/** A way between the inner ends of the straights that are kept at either end. */
interface Frame {
  readonly begin: Pose;
  readonly finish: Pose;
  /** What the straights cost: their length, and what is missing of them. */
  readonly cost: Metres;
  framed(middle: Path): Path;
}

function ahead(pose: Pose, by: Metres): Pose {
  return { ...pose, x: pose.x + by * Math.cos(pose.angle), y: pose.y + by * Math.sin(pose.angle) };
}

function frame(
  { from, to, horse, straightAfter, straightBefore }: Ask,
  [after, before]: readonly [number, number],
): Frame {
  const unit = horse.bodyLength.value;
  const missing = (straightAfter ? Math.max(0, 1 - after) : 0) + (straightBefore ? Math.max(0, 1 - before) : 0);
  const finish = ahead(to, -before * unit);
  return {
    begin: ahead(from, after * unit),
    finish,
    cost: (after + before + PRICE.straight * missing) * unit,
    framed: (middle) =>
      merged([
        ...laid(from, [{ length: after * unit, curvature: 0 }]),
        ...middle,
        ...laid(finish, [{ length: before * unit, curvature: 0 }]),
      ]),
  };
}

/** Every choice of straights, the wanted ones first. */
function frames(ask: Ask, shares: readonly number[]): Frame[] {
  const first = ask.straightAfter ? shares : [0];
  const last = ask.straightBefore ? shares : [0];
  return first.flatMap((after) => last.map((before) => frame(ask, [after, before])));
}

/** The radii a way may turn on, easy first. */
function radii({ gait, horse }: Ask): Metres[] {
  const easy = easyTurn(horse, gait);
  const least = Math.min(easy, leastTurn(horse, gait));
  return [...new Set([easy, (easy + least) / 2, least])];
}

function circling(turn: number): Metres {
  return PRICE.circling * Math.max(0, turn - PLAIN_TURN);
}

function candidates(ask: Ask, shares: readonly number[]): Candidate[] {
  const choices = radii(ask);
  const widest = choices[0] ?? 0;
  const found: Candidate[] = [];
  for (const each of frames(ask, shares)) {
    const { begin, finish } = each;
    for (const radius of choices) {
      const fixed = each.cost + PRICE.radius * (widest - radius);
      for (const reach of reaches(begin, finish, radius)) {
        const [first, middle, last] = reach.parts;
        const turn = first + last + (reach.word[1] === 'S' ? 0 : middle);
        found.push({ cost: reach.length + fixed + circling(turn), frame: each, middle: { reach, radius } });
      }
    }
  }
  return found;
}

/** Ways round the obstacles that the best plain way meets: longer straights, and their corners. */
function roundabout(ask: Ask, { meets }: Trouble): Candidate[] {
  const [wanted] = frames(ask, SHARES);
  if (wanted === undefined) return [];
  const choices = radii(ask);
  const widest = choices[0] ?? 0;
  const corners = choices.flatMap((radius) =>
    detours(wanted, meets, radius).map(({ length, path }) => ({
      cost: length + wanted.cost + PRICE.radius * (widest - radius) + circling(totalTurn(path)),
      frame: wanted,
      middle: path,
    })),
  );
  return [...candidates(ask, LONG_SHARES), ...corners];
}

function laidOut({ frame: { begin, framed }, middle }: Candidate): Path {
  return framed('reach' in middle ? reachPath(begin, middle.reach, middle.radius) : middle);
}

interface Chosen {
  readonly cost: Metres;
  readonly path: Path;
  readonly trouble: Trouble;
}

/** The best of the candidates and of one already chosen, looking closely only while a better one can come. */
function chosen(options: Candidate[], surroundings: Surroundings, already?: Chosen): { best: Chosen; looked: Bounds } {
  let best = already;
  let looked = already?.trouble.bounds;
  const sorted = options.sort((a, b) => a.cost - b.cost).slice(0, MOST_TRIED);
  for (const candidate of sorted) {
    if (best !== undefined && candidate.cost >= best.cost) break;
    const path = laidOut(candidate);
    const found = trouble(path, surroundings);
    looked = looked === undefined ? found.bounds : joinedBounds(looked, found.bounds);
    const cost = candidate.cost + found.cost;
    if (best === undefined || cost < best.cost) best = { cost, path, trouble: found };
  }
  if (best === undefined || looked === undefined) throw new Error('approach: no way was found, which geometry forbids');
  return { best, looked };
}

/** Through bends the designer has said the way; it is dear to work out, so the first clean one is taken. */
function throughBends(ask: Ask, surroundings: Surroundings): Approach {
  let found: { best: Chosen; looked: Bounds } | undefined;
  const all = frames(ask, [1, 0]);
  const [straight, bare] = [all[0], all.at(-1)];
  const choices = radii(ask);
  for (const each of new Set([straight, bare])) {
    for (const radius of new Set([choices[0], choices.at(-1)])) {
      if (each === undefined || radius === undefined) continue;
      const { length, path } = shortestThrough(each.begin, ask.bends, each.finish, radius);
      const candidate = { cost: length + each.cost + circling(totalTurn(path)), frame: each, middle: path };
      const now = chosen([candidate], surroundings, found?.best);
      found = { best: now.best, looked: found === undefined ? now.looked : joinedBounds(found.looked, now.looked) };
      if (now.best.trouble.cost === 0) return { path: now.best.path, looked: found.looked };
    }
  }
  if (found === undefined) throw new Error('approach: no way was found, which geometry forbids');
  return { path: found.best.path, looked: found.looked };
}

/**
 * The way from one pose to another at a gait: the cheapest of all shortest-path words at the gait's easy turn, its
 * least turn and one between, with and without straights at the ends; when they all meet something, ways round it too.
 * Clean ones come first; when there is none, the least bad is taken and the checks say so.
 */
export function approach(ask: Ask, surroundings: Surroundings): Approach {
  if (ask.bends.length > 0) return throughBends(ask, surroundings);
  const plain = chosen(candidates(ask, SHARES), surroundings);
  if (plain.best.trouble.meets.length === 0) return { path: plain.best.path, looked: plain.looked };
  const round = chosen(roundabout(ask, plain.best.trouble), surroundings, plain.best);
  return { path: round.best.path, looked: joinedBounds(plain.looked, round.looked) };
}
