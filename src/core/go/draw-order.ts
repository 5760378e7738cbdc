import { seededRandom } from '../change/seeded-random.ts';
import type { Draw, Entry } from '../course/course.ts';
import { ridingEntries } from '../course/entry-count.ts';

/** An order of go that was drawn. */
export interface DrawnOrder {
  /** Ids of all entries: those who ride as drawn, then those who are scratched. */
  readonly order: readonly string[];
  /** Goes of others that lie at least between two goes of one rider; null where everybody rides once. */
  readonly between: number | null;
  /** The most that could lie between them in any order; null where everybody rides once. */
  readonly most: number | null;
}

/** One who rides: their entries in the order in which they are taken. */
interface Rider {
  readonly entries: Entry[];
  /** The first turn at which they may go again. */
  from: number;
}

function nameOf({ rider }: Entry): string {
  return rider.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/** By number as people count, then by names: the same entries give the same list, in whatever order they stand. */
export function compareEntries(a: Entry, b: Entry): number {
  const [m, n] = [a.number, b.number].map((number) => (number === '' ? Number.POSITIVE_INFINITY : firstNumber(number)));
  if (m !== n) return (m ?? 0) - (n ?? 0);
  const words = (entry: Entry): string => [entry.number, nameOf(entry), entry.horse, entry.id].join('\n');
  return words(a) < words(b) ? -1 : 1;
}

/** The number in "104", "104A" or "B-12"; what has none comes after all that have one. */
function firstNumber(text: string): number {
  const [digits] = /\d+/.exec(text) ?? [];
  return digits === undefined ? Number.MAX_SAFE_INTEGER : Number(digits);
}

function shuffle<Item>(items: Item[], random: () => number): Item[] {
  for (let i = items.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    const [a, b] = [items[i] as Item, items[j] as Item];
    items[i] = b;
    items[j] = a;
  }
  return items;
}

/**
 * The most goes of others that can lie between two goes of each rider, by how many each has. With m goes of the busiest, and c
 * riders who have so many, goes d turns apart need (m − 1)·d + c turns, and that many are enough: the schedule of equal tasks
 * with a pause. Null where nobody has more than one.
 */
export function mostBetween(counts: readonly number[]): number | null {
  const most = Math.max(0, ...counts);
  if (most < 2) return null;
  const all = counts.reduce((sum, count) => sum + count, 0);
  const busiest = counts.filter((count) => count === most).length;
  return Math.max(0, Math.floor((all - busiest) / (most - 1)) - 1);
}

/**
 * Whether the goes that are left find turns from `turn` on, each rider's `apart` turns from the one before: at each turn the
 * rider with the most goes left of those who may go (highest level first, which is optimal for chains with equal delays).
 * `free` goes of riders with one go fill any turn.
 */
function finds(riders: readonly Rider[], free: number, turn: number, apart: number): boolean {
  const left = riders.map(({ entries, from }) => ({ count: entries.length, from })).filter(({ count }) => count > 0);
  let goes = left.reduce((sum, { count }) => sum + count, 0);
  let spare = free;
  for (let now = turn; goes > 0; now += 1) {
    let best: (typeof left)[number] | undefined;
    for (const each of left) {
      if (each.count > 0 && each.from <= now && (best === undefined || each.count > best.count)) best = each;
    }
    if (best === undefined) {
      if (spare === 0) return false;
      spare -= 1;
      continue;
    }
    best.count -= 1;
    best.from = now + apart;
    goes -= 1;
  }
  return true;
}

/** One order with goes of a rider at least `apart` turns from each other; that there is one is known. */
function drawnApart(riders: readonly Rider[], apart: number, random: () => number): readonly Entry[] {
  const busy = riders.filter(({ entries }) => entries.length > 1);
  const single = shuffle(
    riders.filter(({ entries }) => entries.length === 1).flatMap(({ entries }) => entries),
    random,
  );
  const order: Entry[] = [];
  for (let goes = riders.reduce((sum, { entries }) => sum + entries.length, 0); goes > 0; goes -= 1) {
    const turn = order.length;
    // One ticket a go: who has three horses is three times as likely to be first.
    const tickets: (Rider | null)[] = [
      ...busy.flatMap((rider) => (rider.from <= turn ? rider.entries.map(() => rider) : [])),
      ...single.map(() => null),
    ];
    const refused = new Set<Rider | null>();
    for (const rider of shuffle(tickets, random)) {
      if (refused.has(rider)) continue;
      const entry = rider === null ? single.pop() : rider.entries.pop();
      if (entry === undefined) throw new Error('drawnApart: a ticket without a go');
      const before = rider?.from ?? 0;
      if (rider !== null) rider.from = turn + apart;
      if (finds(busy, single.length, turn + 1, apart)) {
        order.push(entry);
        break;
      }
      refused.add(rider);
      if (rider === null) single.push(entry);
      else {
        rider.entries.push(entry);
        rider.from = before;
      }
    }
    if (order.length === turn) throw new Error(`drawnApart: no rider may go at turn ${turn}`);
  }
  return order;
}

/**
 * An order of go by lot. The same entries, seed and `between` give the same order, in whatever order they stand. Goes of one
 * rider have at least `between` goes of others between them, or as many as there can be.
 */
export function drawOrder(list: readonly Entry[], { seed, between }: Draw): DrawnOrder {
  const random = seededRandom(seed);
  const sorted = list.toSorted(compareEntries);
  const riding = ridingEntries(sorted);
  const byName = new Map<string, Rider>();
  for (const entry of riding) {
    // Who has no name yet is somebody of their own.
    const name = nameOf(entry) === '' ? `\n${entry.id}` : nameOf(entry);
    const rider = byName.get(name) ?? { entries: [], from: 0 };
    rider.entries.push(entry);
    byName.set(name, rider);
  }
  const riders = [...byName.values()];
  const most = mostBetween(riders.map(({ entries }) => entries.length));
  const kept = most === null ? null : Math.min(between, most);
  for (const { entries } of riders) shuffle(entries, random);
  const drawn = drawnApart(riders, (kept ?? 0) + 1, random);
  const scratched = sorted.filter((entry) => entry.scratched === true);
  return { order: [...drawn, ...scratched].map(({ id }) => id), between: kept, most };
}

/** The ids of the list by number as people count; those without a number come last. */
export function numberOrder(list: readonly Entry[]): readonly string[] {
  return list.toSorted(compareEntries).map(({ id }) => id);
}
