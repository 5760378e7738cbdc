/**
 * Places for all labels of a drawing at once, so that none covers another, a thing or a line to a label. Each label has
 * its free places with their costs; a local search with seeded restarts takes the cheapest set without a conflict.
 */
import { seededRandom } from '../core/change/seeded-random.ts';
import type { Bounds } from '../core/plane/ring.ts';
import {
  coveredByBox,
  coveredByStroke,
  grown,
  type ShapeIndex,
  segmentBoxDistance,
  strokesCross,
} from './paper-shapes.ts';
import type { PaperPoint } from './paper-transform.ts';

export type Leader = readonly [PaperPoint, PaperPoint];

/** A label that looks for a place. Sizes without air, mm. */
export interface LabelWish {
  readonly width: number;
  readonly height: number;
  /** What it stands about. */
  readonly around: Bounds;
  /** How much worse a place is than the best that can be thought of, mm of way; `off` is the air to `around`. */
  cost(middle: PaperPoint, off: number): number;
  /** Beyond this from where it leads to it gets a line there, mm; absent: never. */
  readonly far?: number;
  /** Where its line ends, seen from a place. */
  tip?(middle: PaperPoint): PaperPoint;
  /** It may be left out where there is no room. */
  readonly isOptional?: true;
  /** A line to a disc begins at its rim. */
  readonly isRound?: true;
}

/** Where a label stands. */
export interface LabelPlace {
  readonly middle: PaperPoint;
  readonly box: Bounds;
  readonly leader?: Leader;
}

interface Candidate extends LabelPlace {
  readonly cost: number;
  readonly isAbsent?: true;
}

/** What the search found; a label that was left out has no place. */
export interface LabelPlaces {
  readonly places: readonly (LabelPlace | undefined)[];
  /** Labels that cover something, or one another. */
  readonly conflicts: number;
}

/** Air about a label, mm. */
const AIR = 0.6;
/** Half the width of a line to a label with its air, mm. */
const LEADER_REACH = 0.3;
/** How far off a place is tried, mm. */
const OFF = [0.6, 1.3, 2.2, 3.4, 5, 7, 9.5, 12.5, 16, 21, 27, 35, 45, 58, 75];
/** So many free places are kept for a label, and so many on the line of travel. */
const KEPT = 36;
const KEPT_ON_LINE = 6;
/** So many of the best may lie close together; after them a place is at least so far from the others that are kept, mm. */
const CLOSE = 10;
const APART = 2;
/** What it costs to stand on the line of travel, to cross it with a line, to need a line at all, to be left out, mm of way. */
const ON_LINE = 40;
const LEADER_OVER_LINE = 1.5;
const NEEDS_LEADER = 2.5;
const LEFT_OUT = 14;
/** Without the line that it needs, no farther off than this, mm: as good as any place while it is the only one. */
const LOOSE = 30;
const LOOSE_REACH = 14;
/** So many of such places are kept. */
const SPARE = 16;
const CONFLICT = 1000;
const RESTARTS = 60;

function boxAbout({ x, y }: PaperPoint, { width, height }: LabelWish): Bounds {
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
}

/** Middles round what a label is about, so far off. */
function middlesAt({ around, width, height }: LabelWish, off: number): readonly PaperPoint[] {
  const [left, right] = [around.minX - off - width / 2, around.maxX + off + width / 2];
  const [top, bottom] = [around.minY - off - height / 2, around.maxY + off + height / 2];
  const step = Math.max(1.1, off * 0.35);
  const across = Math.max(2, Math.ceil((right - left) / step));
  const down = Math.max(2, Math.ceil((bottom - top) / step));
  const middles: PaperPoint[] = [];
  for (let i = 0; i <= across; i += 1) {
    const x = left + ((right - left) * i) / across;
    middles.push({ x, y: top }, { x, y: bottom });
  }
  for (let i = 1; i < down; i += 1) {
    const y = top + ((bottom - top) * i) / down;
    middles.push({ x: left, y }, { x: right, y });
  }
  return middles;
}

/** From the edge of a label to what it is about; undefined where it is near enough to be read with it. */
function leaderFrom(wish: LabelWish, middle: PaperPoint, box: Bounds): Leader | undefined {
  if (wish.far === undefined || wish.tip === undefined) return undefined;
  const tip = wish.tip(middle);
  let from = {
    x: Math.min(Math.max(tip.x, box.minX), box.maxX),
    y: Math.min(Math.max(tip.y, box.minY), box.maxY),
  };
  if (wish.isRound === true) {
    const long = Math.hypot(tip.x - middle.x, tip.y - middle.y) || 1;
    const k = wish.width / 2 / long;
    from = { x: middle.x + (tip.x - middle.x) * k, y: middle.y + (tip.y - middle.y) * k };
  }
  const length = Math.hypot(from.x - tip.x, from.y - tip.y);
  if (length <= wish.far) return undefined;
  // A hair of air, so that the line does not touch the letters.
  const k = Math.min(1, (wish.isRound === true ? 0.05 : 0.35) / length);
  return [{ x: from.x + (tip.x - from.x) * k, y: from.y + (tip.y - from.y) * k }, tip];
}

/** Without its last bit: it ends at what it leads to. */
function shortened([from, to]: Leader): Leader {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const k = Math.max(0, 1 - 0.5 / length);
  return [from, { x: from.x + (to.x - from.x) * k, y: from.y + (to.y - from.y) * k }];
}

/** Places that are tried, with what they cost before anything is known of what lies there. */
interface Trial {
  readonly middle: PaperPoint;
  readonly box: Bounds;
  readonly cost: number;
}

function trialsAt(wish: LabelWish, off: number, room: Bounds): readonly Trial[] {
  const trials: Trial[] = [];
  for (const middle of middlesAt(wish, off)) {
    const box = boxAbout(middle, wish);
    if (box.minX < room.minX || box.maxX > room.maxX || box.minY < room.minY || box.maxY > room.maxY) continue;
    trials.push({ middle, box, cost: wish.cost(middle, off) });
  }
  return trials.sort((a, b) => a.cost - b.cost);
}

function isCrowded(kept: readonly Candidate[], { x, y }: PaperPoint): boolean {
  for (const { middle } of kept) if ((middle.x - x) ** 2 + (middle.y - y) ** 2 < APART ** 2) return true;
  return false;
}

function candidatesOf(wish: LabelWish, index: ShapeIndex, room: Bounds): readonly Candidate[] {
  const kept: Candidate[] = [];
  let [free, onLine] = [0, 0];
  let first: Trial | undefined;
  const struck: Candidate[] = [];
  const loose: Candidate[] = [];
  for (const off of OFF) {
    if (free >= KEPT) break;
    for (const { middle, box, cost } of trialsAt(wish, off, room)) {
      first ??= { middle, box, cost };
      if (kept.length >= CLOSE && isCrowded(kept, middle)) continue;
      const under = coveredByBox(index, grown(box, AIR));
      const isOnLine = under.lines > 0;
      if (under.isSolid || (isOnLine && (wish.isOptional === true || onLine >= KEPT_ON_LINE))) continue;
      const leader = leaderFrom(wish, middle, box);
      let whole = cost + under.lines * ON_LINE;
      if (leader !== undefined) {
        const crossed = coveredByStroke(index, shortened(leader), LEADER_REACH);
        if (crossed.isSolid) {
          if (struck.length < SPARE) struck.push({ middle, box, cost: cost + CONFLICT, leader });
          const isNear = Math.hypot(leader[0].x - leader[1].x, leader[0].y - leader[1].y) <= LOOSE_REACH;
          if (isNear && !isOnLine && loose.length < SPARE) loose.push({ middle, box, cost: cost + LOOSE });
          continue;
        }
        whole += NEEDS_LEADER + crossed.lines * LEADER_OVER_LINE;
      }
      if (isOnLine) onLine += 1;
      else free += 1;
      kept.push({ middle, box, cost: whole, ...(leader === undefined ? {} : { leader }) });
    }
  }
  if (wish.isOptional === true) kept.push({ ...NOWHERE, cost: LEFT_OUT });
  if (free === 0) kept.push(...loose);
  // The last resorts: a line over something, or the label on whatever lies where it belongs.
  if (kept.length === 0) kept.push(...struck);
  if (kept.length === 0 && first !== undefined) kept.push({ ...first, cost: 2 * CONFLICT });
  return kept.sort((a, b) => a.cost - b.cost);
}

function leaderMeets(leader: Leader | undefined, box: Bounds): boolean {
  return leader !== undefined && segmentBoxDistance(leader[0], leader[1], box) < LEADER_REACH;
}

function areInConflict(a: Candidate, b: Candidate): boolean {
  if (a.isAbsent === true || b.isAbsent === true) return false;
  if (
    a.box.minX - AIR < b.box.maxX &&
    b.box.minX < a.box.maxX + AIR &&
    a.box.minY - AIR < b.box.maxY &&
    b.box.minY < a.box.maxY + AIR
  )
    return true;
  if (leaderMeets(a.leader, b.box) || leaderMeets(b.leader, a.box)) return true;
  if (a.leader === undefined || b.leader === undefined) return false;
  return strokesCross(a.leader[0], a.leader[1], b.leader[0], b.leader[1]);
}

/** Left out. */
const NOWHERE: Candidate = {
  middle: { x: 0, y: 0 },
  box: { minX: 0, maxX: 0, minY: 0, maxY: 0 },
  cost: 0,
  isAbsent: true,
};

type Choice = readonly Candidate[];

function conflictsOf(choice: Choice): number {
  let count = 0;
  for (let i = 0; i < choice.length; i += 1) {
    for (let j = i + 1; j < choice.length; j += 1) {
      if (areInConflict(choice[i] as Candidate, choice[j] as Candidate)) count += 1;
    }
  }
  return count;
}

function costOf(choice: Choice): number {
  return choice.reduce((sum, { cost }) => sum + cost, 0) + CONFLICT * conflictsOf(choice);
}

/** Each label in turn takes its best place beside the others, until none moves any more. */
function settled(all: readonly Choice[], begun: Choice, order: readonly number[]): Choice {
  const choice = [...begun];
  for (let sweep = 0; sweep < 12; sweep += 1) {
    let isMoved = false;
    for (const i of order) {
      let best = choice[i] as Candidate;
      let least = Number.POSITIVE_INFINITY;
      for (const candidate of all[i] ?? []) {
        let cost = candidate.cost;
        if (cost >= least) break;
        for (let j = 0; j < choice.length && cost < least; j += 1) {
          if (j !== i && areInConflict(candidate, choice[j] as Candidate)) cost += CONFLICT;
        }
        if (cost < least) [best, least] = [candidate, cost];
      }
      if (best !== choice[i]) isMoved = true;
      choice[i] = best;
    }
    if (!isMoved) break;
  }
  return choice;
}

/** Places for all of them; `room` is where they may stand. The same question has the same answer. */
export function labelPlaces(wishes: readonly LabelWish[], index: ShapeIndex, room: Bounds): LabelPlaces {
  const all = wishes.map((wish) => candidatesOf(wish, index, room));
  const order = all.map((_, i) => i).filter((i) => (all[i]?.length ?? 0) > 0);
  // Those with the fewest free places first.
  order.sort((a, b) => (all[a]?.length ?? 0) - (all[b]?.length ?? 0) || a - b);
  const first = all.map((candidates) => candidates[0] ?? NOWHERE);
  let best = settled(all, first, order);
  let least = costOf(best);
  const roll = seededRandom(14);
  for (let again = 0; again < RESTARTS && conflictsOf(best) > 0; again += 1) {
    const kicked = best.map((candidate, i) => {
      const own = all[i] ?? [];
      return roll() < 0.3 ? (own[Math.floor(roll() * own.length)] ?? candidate) : candidate;
    });
    const shuffled = order.map((i) => ({ i, at: roll() })).sort((a, b) => a.at - b.at);
    const tried = settled(
      all,
      kicked,
      shuffled.map(({ i }) => i),
    );
    const cost = costOf(tried);
    if (cost < least) [best, least] = [tried, cost];
  }
  const conflicts = conflictsOf(best) + best.filter(({ cost }) => cost >= CONFLICT).length;
  const places = best.map(({ isAbsent, middle, box, leader }): LabelPlace | undefined =>
    isAbsent === true ? undefined : { middle, box, ...(leader === undefined ? {} : { leader }) },
  );
  return { places, conflicts };
}
