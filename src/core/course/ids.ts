/** How a layout names things: `fan-1` is an obstacle, `fan-1/pole-2` one of its pieces. */

/** The obstacle that a key names, or whose piece it names. */
export function obstacleOf(key: string): string {
  const slash = key.indexOf('/');
  return slash < 0 ? key : key.slice(0, slash);
}

/** The piece that a key names; undefined for an obstacle. */
export function pieceOf(key: string): string | undefined {
  const slash = key.indexOf('/');
  return slash < 0 ? undefined : key.slice(slash + 1);
}

/** What keys choose: whole obstacles, and single pieces of obstacles that are not chosen whole. */
export interface Chosen {
  readonly whole: ReadonlySet<string>;
  readonly pieces: ReadonlyMap<string, ReadonlySet<string>>;
}

export function chosenBy(keys: readonly string[]): Chosen {
  const whole = new Set(keys.filter((key) => pieceOf(key) === undefined));
  const pieces = new Map<string, Set<string>>();
  for (const key of keys) {
    const owner = obstacleOf(key);
    const piece = pieceOf(key);
    if (piece === undefined || whole.has(owner)) continue;
    const others = pieces.get(owner) ?? new Set<string>();
    pieces.set(owner, others.add(piece));
  }
  return { whole, pieces };
}

/** `stem-1`, `stem-2` …: the first that is not taken. */
export function freeId(stem: string, taken: Iterable<string>): string {
  const used = new Set(taken);
  let count = 1;
  while (used.has(`${stem}-${count}`)) count += 1;
  return `${stem}-${count}`;
}
