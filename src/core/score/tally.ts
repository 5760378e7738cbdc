import type { CardEntry, ScoreCard } from './score-card.ts';

/** What a card says of one entry. */
export interface CardRow {
  readonly entry: CardEntry;
  /**
   * `open`: nothing is given yet. `begun`: obstacles are still without a score. `whole`: all have one. The others end the go.
   */
  readonly status: 'open' | 'begun' | 'whole' | 'zero-score' | 'disqualified' | 'scratched';
  /** Sum of what the obstacles were given, and of the penalties. */
  readonly scores: number;
  readonly penalties: number;
  /** Base and scores less penalties; so far, while the go is only begun. Absent: it has none. */
  readonly total?: number;
  /** Numbers of the obstacles that have no score yet. */
  readonly missing: readonly number[];
  /** May not be placed above a go without such a fault. */
  readonly isBelow: boolean;
  /** Absent: not placed, or not yet. Entries that are tied have the same place, and the next ones are left out. */
  readonly place?: number;
  /** Others have the same total, and nothing decides. */
  readonly isTied: boolean;
  /** Others have the same total, and this decides. */
  readonly brokenBy?: 'order' | 'time';
}

/** Sums are made in whole halves, so that no order of adding changes them. */
function inHalves(points: number): number {
  return Math.round(points * 2);
}

type Sum = Omit<CardRow, 'place' | 'isTied' | 'brokenBy'>;

function sumOf({ scoring, columns }: ScoreCard, entry: CardEntry): Sum {
  const byId = new Map(scoring.penalties.map((each) => [each.id, each]));
  let [scores, penalties] = [0, 0];
  let [isBelow, isBegun] = [false, false];
  const missing: number[] = [];
  for (const { leg, number, struck } of columns) {
    if (struck !== undefined) continue;
    const cell = entry.cells[leg];
    const score = cell?.score;
    if (score === undefined) missing.push(number);
    else isBegun = true;
    if (typeof score === 'number') scores += inHalves(score);
    for (const id of cell?.penalties ?? []) {
      const penalty = byId.get(id);
      if (penalty === undefined) throw new Error(`score card: there is no penalty ${id}`);
      penalties += inHalves(penalty.points);
      isBelow ||= penalty.below === true;
      isBegun = true;
    }
  }
  const least = scoring.least === undefined ? Number.NEGATIVE_INFINITY : inHalves(scoring.least);
  const total = Math.max(least, inHalves(scoring.base) + scores - penalties) / 2;
  const common = { entry, scores: scores / 2, penalties: penalties / 2, missing, isBelow };
  if (entry.scratched) return { ...common, status: 'scratched' };
  const ruling = scoring.rulings.find(({ id }) => id === entry.ruling);
  if (ruling?.effect === 'disqualified') return { ...common, status: 'disqualified' };
  if (ruling?.effect === 'zero-score') return { ...common, status: 'zero-score', total: 0 };
  if (missing.length === 0 && isBegun) return { ...common, status: 'whole', total };
  return isBegun ? { ...common, status: 'begun', total } : { ...common, status: 'open' };
}

/** Rows with the same rank are level but for what breaks ties: the higher group first, then the higher total. Null: not placed. */
function rankOf({ scoring }: ScoreCard, { status, isBelow, total = 0 }: Sum): readonly [number, number] | null {
  if (status === 'zero-score') return scoring.zero === 'last' ? [2, 0] : null;
  return status === 'whole' ? [isBelow ? 1 : 0, -total] : null;
}

/** What decides among level entries: the judge's order where one is typed, then the time where all have one. */
function deciders(card: ScoreCard, peers: readonly Sum[]): (row: Sum) => readonly [number, number] {
  const isTimed = card.ties === 'time' && peers.every(({ entry }) => entry.time !== undefined);
  return ({ entry }) => [entry.order ?? Number.POSITIVE_INFINITY, isTimed ? (entry.time ?? 0) : 0];
}

function compared(a: readonly number[], b: readonly number[]): number {
  for (const [i, value] of a.entries()) {
    const other = b[i] ?? 0;
    if (value !== other) return value < other ? -1 : 1;
  }
  return 0;
}

/** The rows that are level, the best first. */
function peerGroups(card: ScoreCard, sums: readonly Sum[]): readonly (readonly Sum[])[] {
  const ranked = sums.flatMap((row) => {
    const rank = rankOf(card, row);
    return rank === null ? [] : [{ row, rank }];
  });
  const groups: { readonly rank: readonly number[]; readonly rows: Sum[] }[] = [];
  for (const { row, rank } of ranked.toSorted((a, b) => compared(a.rank, b.rank))) {
    const last = groups.at(-1);
    if (last !== undefined && compared(last.rank, rank) === 0) last.rows.push(row);
    else groups.push({ rank, rows: [row] });
  }
  return groups.map(({ rows }) => rows);
}

/** Every entry in the order of the card, with its sums and its place among those that are whole. */
export function tally(card: ScoreCard): readonly CardRow[] {
  const sums = card.entries.map((entry) => sumOf(card, entry));
  const placed = new Map<string, Pick<CardRow, 'place' | 'isTied' | 'brokenBy'>>();
  let before = 0;
  for (const peers of peerGroups(card, sums)) {
    const decider = deciders(card, peers);
    for (const row of peers) {
      const own = decider(row);
      const others = peers.filter((other) => other !== row);
      const ahead = others.filter((other) => compared(decider(other), own) < 0).length;
      const isTied = others.some((other) => compared(decider(other), own) === 0);
      const isOrdered = others.some(({ entry }) => entry.order !== row.entry.order);
      const by = isOrdered ? 'order' : 'time';
      placed.set(row.entry.id, {
        place: before + ahead + 1,
        isTied,
        ...(others.length > 0 && !isTied ? { brokenBy: by } : {}),
      });
    }
    before += peers.length;
  }
  return sums.map((row) => ({ ...row, isTied: false, ...placed.get(row.entry.id) }));
}

/** Those that are placed, the first first; then the others in the order of the card. */
export function placings(rows: readonly CardRow[]): readonly CardRow[] {
  const last = Number.POSITIVE_INFINITY;
  return rows.toSorted((a, b) => (a.place ?? last) - (b.place ?? last) || 0);
}
