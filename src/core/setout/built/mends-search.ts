import type { Metres } from '../../measure/quantity.ts';

/** Something measured that has to lie in a band, and how fast it changes with each of the moves that there are. */
export interface BandRow {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** By the moves, in their order. */
  readonly slopes: readonly number[];
}

/** A move that may be made, as the search sees it. */
export interface MoveChoice {
  /** What moves; a whole thing is not moved and one of its ends as well. */
  readonly piece: string;
  /** How many ends travel by it. */
  readonly ends: 1 | 2;
  /** How far it lies off the drawing, in the direction of the move, metres. */
  readonly off: Metres;
}

/** Some moves by how much each, metres; by the places of the moves. */
export interface MoveSet {
  readonly moves: readonly { readonly choice: number; readonly by: Metres }[];
  /** What all ends travel together, metres. */
  readonly travel: Metres;
  /** By how much the moves bring the ends nearer to the drawing; negative: further from it. Metres. */
  readonly towards: Metres;
}

export interface MoveLimits {
  /** Moves are whole numbers of these, metres. */
  readonly step: Metres;
  /** So much inside of the bands rows are brought, where bands are wide enough; outside of them where negative. Metres. */
  readonly margin: Metres;
  /** A row that is no more outside than this need not be moved, metres. */
  readonly slack: Metres;
  /** No end is moved further, metres: a pole that lies further off is laid again. */
  readonly most: Metres;
}

/** A row that changes by less for each metre is not moved by it. */
const STILL = 0.02;
/** Differences of a survey, and rounding of poses, leave so much. */
const ROUNDING = 2e-5;
/** Moves that lead towards the drawing by as much as one another, to a tape, are alike in that. */
const CLOSE: Metres = 0.003;

/** The band less a margin, a quarter of it at most, and never so much that the value itself falls out. */
function insideBand({ value, least, most }: BandRow, wanted: Metres): readonly [number, number] {
  const margin = Math.min(wanted, (most - least) / 4);
  const own = (room: number): number => (room >= 0 && room < margin ? room : margin);
  return [least + own(value - least), most - own(most - value)];
}

/** The solution of a small square system; undefined where its rows are not independent. */
function solvedSystem(rows: readonly (readonly number[])[], right: readonly number[]): readonly number[] | undefined {
  const size = rows.length;
  const all = rows.map((row, i) => [...row, right[i] as number]);
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < size; row += 1) {
      if (Math.abs(all[row]?.[column] as number) > Math.abs(all[pivot]?.[column] as number)) pivot = row;
    }
    [all[column], all[pivot]] = [all[pivot] as number[], all[column] as number[]];
    const lead = all[column] as number[];
    if (Math.abs(lead[column] as number) < 1e-6) return undefined;
    for (let row = 0; row < size; row += 1) {
      const other = all[row] as number[];
      const share = row === column ? 0 : (other[column] as number) / (lead[column] as number);
      for (let k = column; k <= size; k += 1) other[k] = (other[k] as number) - share * (lead[k] as number);
    }
  }
  return all.map((row, i) => (row[size] as number) / (row[i] as number));
}

/** All sets of `size` of the numbers from 0 to `count` − 1, each in order. */
function* subsets(count: number, size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield [];
  for (let first = from; first <= count - size; first += 1) {
    if (size === 0) return;
    for (const rest of subsets(count, size - 1, first + 1)) yield [first, ...rest];
  }
}

function binomial(count: number, size: number): number {
  let found = 1;
  for (let i = 0; i < size; i += 1) found = (found * (count - i)) / (i + 1);
  return Math.max(0, found);
}

/** How many corners a search of this size tries at most. */
export function searchSize(choices: number, rows: number, size: number): number {
  return binomial(choices, size) * binomial(rows, size) * 2 ** size;
}

function after(row: BandRow, chosen: readonly number[], by: readonly number[]): number {
  return chosen.reduce((sum, choice, i) => sum + (row.slopes[choice] as number) * (by[i] as number), row.value);
}

/** How far all rows together lie outside of their bands. */
function totalOutside(rows: readonly BandRow[], chosen: readonly number[] = [], by: readonly number[] = []): number {
  return rows.reduce((sum, row) => {
    const value = after(row, chosen, by);
    return sum + Math.max(row.least - value, value - row.most, 0);
  }, 0);
}

function moveSet(choices: readonly MoveChoice[], chosen: readonly number[], by: readonly number[]): MoveSet {
  const moves = chosen.map((choice, i) => ({ choice, by: by[i] as number }));
  const sum = (of: (choice: MoveChoice, by: Metres) => Metres): Metres =>
    moves.reduce((total, { choice, by: far }) => total + of(choices[choice] as MoveChoice, far), 0);
  return {
    moves,
    travel: sum(({ ends }, far) => ends * Math.abs(far)),
    towards: sum(({ ends, off }, far) => ends * (Math.abs(off) - Math.abs(off + far))),
  };
}

/** The least travel first; of equal travel what leads towards the drawing, then whole poles, which keep their heading. */
function byTravel(choices: readonly MoveChoice[]): (a: MoveSet, b: MoveSet) => number {
  const ends = ({ moves }: MoveSet): number => moves.reduce((sum, { choice }) => sum + (choices[choice]?.ends ?? 1), 0);
  return (a, b) => {
    if (Math.abs(a.travel - b.travel) > ROUNDING) return a.travel - b.travel;
    return Math.abs(a.towards - b.towards) > CLOSE ? b.towards - a.towards : ends(b) - ends(a);
  };
}

/** Where as many edges of bands as there are moves meet: the least travel, and the least excess, lie at one of these. */
function* vertices(
  rows: readonly BandRow[],
  chosen: readonly number[],
  edges: readonly (readonly [number, number])[],
): Generator<readonly number[]> {
  const size = chosen.length;
  for (const tight of subsets(rows.length, size)) {
    const slopes = tight.map((row) => chosen.map((choice) => rows[row]?.slopes[choice] as number));
    for (let sides = 0; sides < 2 ** size; sides += 1) {
      const right = tight.map((row, i) => (edges[row]?.[(sides >> i) & 1] as number) - (rows[row]?.value as number));
      const found = solvedSystem(slopes, right);
      if (found !== undefined) yield found;
    }
  }
}

/** The whole numbers of steps near some moves. */
function* rounded(by: readonly number[], step: Metres): Generator<readonly number[]> {
  const [first, ...others] = by;
  if (first === undefined) {
    yield [];
    return;
  }
  const low = Math.floor(first / step);
  for (const rest of rounded(others, step)) {
    for (const steps of [low - 1, low, low + 1, low + 2]) yield [steps * step, ...rest];
  }
}

function isOneThingEach(choices: readonly MoveChoice[], chosen: readonly number[]): boolean {
  return chosen.every((choice, i) => {
    const own = choices[choice] as MoveChoice;
    return chosen.every((other, j) => {
      const like = choices[other] as MoveChoice;
      return i === j || own.piece !== like.piece || (own.ends === 1 && like.ends === 1);
    });
  });
}

/**
 * For each set of so many of the moves that brings every row into its band: the least travel in whole steps near the exact
 * least, which is found by trying all corners of the bands. The least travel first.
 */
export function movesOfSize(
  rows: readonly BandRow[],
  choices: readonly MoveChoice[],
  size: number,
  { step, margin, slack, most }: MoveLimits,
): readonly MoveSet[] {
  const outside = rows.filter((row) => totalOutside([row]) > slack);
  const order = byTravel(choices);
  const found: MoveSet[] = [];
  for (const chosen of subsets(choices.length, size)) {
    const moves = ({ slopes }: BandRow): boolean => chosen.some((choice) => Math.abs(slopes[choice] as number) > STILL);
    if (!outside.every(moves) || !isOneThingEach(choices, chosen)) continue;
    const own = rows.filter(moves);
    const bands = own.map((row) => insideBand(row, margin));
    const isInside = (by: readonly number[], slack: number): boolean =>
      own.every((row, i) => {
        const value = after(row, chosen, by);
        const [low, high] = bands[i] as readonly [number, number];
        return value >= low - slack && value <= high + slack;
      });
    const inside: MoveSet[] = [];
    for (const corner of vertices(own, chosen, bands)) {
      if (!isInside(corner, ROUNDING) || corner.some((by) => Math.abs(by) > most)) continue;
      for (const by of rounded(corner, step)) {
        if (!by.includes(0) && isInside(by, ROUNDING)) inside.push(moveSet(choices, chosen, by));
      }
    }
    const [best] = inside.sort(order);
    if (best !== undefined) found.push(best);
  }
  return found.sort(order);
}

/** Of sets of up to so many moves, the one that leaves least outside of the bands, in whole steps; undefined: none helps. */
export function nearestMoves(
  rows: readonly BandRow[],
  choices: readonly MoveChoice[],
  size: number,
  { step, most }: Pick<MoveLimits, 'step' | 'most'>,
): MoveSet | undefined {
  let best: MoveSet | undefined;
  let left = totalOutside(rows) - ROUNDING;
  for (let count = 1; count <= size; count += 1) {
    for (const chosen of subsets(choices.length, count)) {
      if (!isOneThingEach(choices, chosen)) continue;
      const own = rows.filter(({ slopes }) => chosen.some((choice) => Math.abs(slopes[choice] as number) > STILL));
      const bands = own.map(({ least, most: high }) => [least, high] as const);
      for (const corner of vertices(own, chosen, bands)) {
        for (const by of rounded(corner, step)) {
          if (by.includes(0) || by.some((each) => Math.abs(each) > most)) continue;
          const outside = totalOutside(rows, chosen, by);
          if (outside > left - ROUNDING) continue;
          left = outside;
          best = moveSet(choices, chosen, by);
        }
      }
    }
  }
  return best;
}

/** Rounds of a search step by step. Estimate: more moves than that are no mend. */
const MOST_ROUNDS = 6;

/**
 * Moves that bring all rows in, found step by step: in each round the one or two that leave least outside. Neither the fewest
 * nor the smallest; undefined where it comes to a halt outside.
 */
export function stepwiseMoves(
  rows: readonly BandRow[],
  choices: readonly MoveChoice[],
  limits: Pick<MoveLimits, 'step' | 'most' | 'slack'>,
): MoveSet | undefined {
  const by = choices.map(() => 0);
  const all = choices.map((_, i) => i);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const now = rows.map((row) => ({ ...row, value: after(row, all, by) }));
    if (now.every((row) => totalOutside([row]) <= limits.slack)) {
      const moved = all.filter((i) => by[i] !== 0);
      return moveSet(
        choices,
        moved,
        moved.map((i) => by[i] as number),
      );
    }
    const next = nearestMoves(now, choices, 2, limits);
    if (next === undefined) return undefined;
    for (const { choice, by: far } of next.moves) by[choice] = (by[choice] as number) + far;
  }
  return undefined;
}
