/**
 * Each row has a column of its own, or each column a row where there are fewer of them. The potentials prove that no
 * other choice costs less: a row's and a column's together are never above their cost, a column (or row) that is left
 * over has at most 0, and the sum of all is the total (duality of linear programs).
 */
export interface Assignment {
  readonly total: number;
  /** Row and column, in the order of the rows. */
  readonly pairs: readonly (readonly [row: number, column: number])[];
  readonly rowPotentials: readonly number[];
  readonly columnPotentials: readonly number[];
}

/**
 * The choice of one column for each row whose costs add up to the least; where there are fewer columns than rows, of one
 * row for each column. One shortest augmenting path a row over reduced costs, n²·m steps (Jonker and Volgenant 1987).
 * Costs are finite and may be negative. Throws when the rows differ in length.
 */
export function assignment(costs: readonly (readonly number[])[]): Assignment {
  const [rows, columns] = [costs.length, costs[0]?.length ?? 0];
  const ragged = costs.findIndex((row) => row.length !== columns);
  if (ragged >= 0)
    throw new Error(`assignment: row ${ragged} has ${costs[ragged]?.length} costs, row 0 has ${columns}`);
  if (rows > columns) {
    const turned = assignment(Array.from({ length: columns }, (_, j) => costs.map((row) => row[j] as number)));
    return {
      total: turned.total,
      pairs: turned.pairs.map(([column, row]) => [row, column] as const).sort(([a], [b]) => a - b),
      // Without columns there is nothing to turn back, and every row is left over.
      rowPotentials: columns === 0 ? costs.map(() => 0) : turned.columnPotentials,
      columnPotentials: turned.rowPotentials,
    };
  }
  const flat = new Float64Array(rows * columns);
  for (const [i, row] of costs.entries()) flat.set(row, i * columns);
  const wrong = flat.findIndex((cost) => !Number.isFinite(cost));
  if (wrong >= 0) throw new Error(`assignment: cost ${wrong} of ${flat.length} is ${flat[wrong]}; costs are finite`);
  const u = new Float64Array(rows);
  const v = new Float64Array(columns);
  const rowOf = new Int32Array(columns).fill(-1);
  const duals = { flat, u, v, rowOf };
  for (const row of unserved(duals)) augment(row, duals);
  const pairs = [...rowOf.entries()].flatMap(([column, row]) => (row < 0 ? [] : [[row, column] as const]));
  pairs.sort(([a], [b]) => a - b);
  const total = pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] as number), 0);
  return { total, pairs, rowPotentials: [...u], columnPotentials: [...v] };
}

/** What is known while rows are added: costs row by row, potentials, and the row that each column has (−1: none). */
interface Duals {
  readonly flat: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly rowOf: Int32Array;
}

/** Gives each row its cheapest column, as long as nobody has it; the rows that went without. */
function unserved({ flat, u, v, rowOf }: Duals): readonly number[] {
  const columns = v.length;
  const without: number[] = [];
  for (let row = 0; row < u.length; row += 1) {
    let best = 0;
    for (let j = 1; j < columns; j += 1) {
      if ((flat[row * columns + j] as number) < (flat[row * columns + best] as number)) best = j;
    }
    u[row] = flat[row * columns + best] as number;
    if (rowOf[best] === -1) rowOf[best] = row;
    else without.push(row);
  }
  return without;
}

/** Gives one more row a column, along the path that is shortest in costs less potentials (Dijkstra). */
function augment(free: number, { flat, u, v, rowOf }: Duals): void {
  const columns = v.length;
  const far = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(columns).fill(-1);
  const done = new Uint8Array(columns);
  let [row, column, reach] = [free, -1, 0];
  do {
    // One column is always left: there are no more rows than columns.
    let next = -1;
    let least = Number.POSITIVE_INFINITY;
    const base = reach - (u[row] as number);
    for (let j = 0; j < columns; j += 1) {
      if (done[j] === 1) continue;
      const by = base + (flat[row * columns + j] as number) - (v[j] as number);
      if (by < (far[j] as number)) {
        far[j] = by;
        before[j] = column;
      }
      if ((far[j] as number) < least) {
        least = far[j] as number;
        next = j;
      }
    }
    [column, reach] = [next, least];
    done[column] = 1;
    row = rowOf[column] as number;
  } while (row >= 0);
  u[free] = (u[free] as number) + reach;
  for (let j = 0; j < columns; j += 1) {
    if (done[j] === 0 || j === column) continue;
    const by = reach - (far[j] as number);
    v[j] = (v[j] as number) - by;
    const owner = rowOf[j] as number;
    u[owner] = (u[owner] as number) + by;
  }
  while (column >= 0) {
    const last = before[column] as number;
    rowOf[column] = last < 0 ? free : (rowOf[last] as number);
    column = last;
  }
}
