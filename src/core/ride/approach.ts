import type { PlacedPiece } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import { easyTurn, leastTurn } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Reach, reaches, reachPath } from '../plane/dubins.ts';
import { shortestThrough } from '../plane/dubins-waypoints.ts';
import { type Path, totalTurn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, joinedBounds } from '../plane/ring.ts';
import { type Surroundings, type Trouble, trouble } from './collision-cost.ts';
import { type Frame, framed, frames } from './end-straights.ts';
import { routed } from './route.ts';

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

/** Why no way is clear: the piece that the least bad one meets, or none where it leaves the arena. */
export interface Blocked {
  readonly piece: PlacedPiece | undefined;
}

/** A way, and the box of all that was looked at to choose it: what changes outside cannot change the choice. */
export interface Approach {
  readonly path: Path;
  readonly looked: Bounds;
  /** Absent for a clear way, and for one that the designer has pulled through bends. */
  readonly blocked?: Blocked;
}

/** What a metre of radius is worth that is missing, and a radian of circling, in metres of way. Estimates. */
const PRICE = { radius: 1.5, circling: 3 };
/** A way turns this much before it counts as circling. */
const PLAIN_TURN = 1.25 * Math.PI;
/** How many horse's lengths are kept straight at an end: one is wanted. */
const SHARES = [1, 0.5, 0];
/** No more ways than this are looked at closely. */
const MOST_TRIED = 60;

/** A way that may be taken; most are never laid out, so it only says how. */
interface Candidate {
  readonly cost: Metres;
  readonly frame: Frame;
  readonly middle: Path | { readonly reach: Reach; readonly radius: Metres };
}

function framesOf(ask: Ask, shares: readonly number[]): Frame[] {
  return frames({ ...ask, unit: ask.horse.bodyLength.value }, shares);
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
  for (const each of framesOf(ask, shares)) {
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

function laidOut({ frame, middle }: Candidate): Path {
  return framed(frame, 'reach' in middle ? reachPath(frame.begin, middle.reach, middle.radius) : middle);
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
  const all = framesOf(ask, [1, 0]);
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
 * Ways round what the best plain one meets, below its cost. First the one that asks least of room, without straights on
 * the least turn: where there is none, there is no other. Then those with the straights that the horse wants.
 */
function roundabout(
  ask: Ask,
  surroundings: Surroundings,
  { cost, trouble: { meets, bounds } }: Chosen,
): { readonly options: Candidate[]; readonly looked: Bounds } {
  const choices = radii(ask);
  const [widest = 0, least = 0] = [choices[0], choices.at(-1)];
  const { leaves, comes } = surroundings;
  let looked = bounds;
  const way = (each: Frame, radius: Metres): Candidate[] => {
    const fixed = each.cost + PRICE.radius * (widest - radius);
    const found = routed({
      begin: each.begin,
      finish: each.finish,
      radius,
      round: meets,
      most: cost - fixed,
      trouble: (path, ends) =>
        trouble(framed(each, path, ends), {
          ...surroundings,
          leaves: ends.first ? leaves : undefined,
          comes: ends.last ? comes : undefined,
        }),
    });
    if (found.looked !== undefined) looked = joinedBounds(looked, found.looked);
    if (found.route === undefined) return [];
    const { length, path } = found.route;
    return [{ cost: length + fixed + circling(totalTurn(path)), frame: each, middle: path }];
  };
  const all = framesOf(ask, [1, 0]);
  const [straight, bare] = [all[0], all.at(-1)];
  if (straight === undefined || bare === undefined) return { options: [], looked };
  const options = way(bare, least);
  if (options.length > 0) options.push(...way(straight, widest), ...way(straight, least));
  return { options, looked };
}

function isClear({ trouble: { meets, outside } }: Chosen): boolean {
  return meets.length === 0 && !outside;
}

/**
 * The way from one pose to another at a gait: the cheapest of all shortest-path words at the gait's easy turn, its
 * least turn and one between, with and without straights at the ends; when they all meet something, the shortest way
 * round it. Clean ones come first; when there is none, the least bad is taken, and it says that it is blocked.
 */
export function approach(ask: Ask, surroundings: Surroundings): Approach {
  if (ask.bends.length > 0) return throughBends(ask, surroundings);
  const plain = chosen(candidates(ask, SHARES), surroundings);
  if (isClear(plain.best)) return { path: plain.best.path, looked: plain.looked };
  const round = roundabout(ask, surroundings, plain.best);
  const { best, looked } = chosen(round.options, surroundings, plain.best);
  const all = joinedBounds(plain.looked, joinedBounds(round.looked, looked));
  const way = { path: best.path, looked: all };
  return isClear(best) ? way : { ...way, blocked: { piece: best.trouble.piece } };
}
