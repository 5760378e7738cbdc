/**
 * A symmetric positive definite matrix in envelope (skyline) storage: each row from its first non-zero column to the
 * diagonal, factored in place as L·D·Lᵀ. What is zero left of the envelope stays zero, so the cost of a chain is linear
 * in its length.
 */
export interface Envelope {
  /** First non-zero column of each row. */
  readonly first: Int32Array;
  /** Where column 0 of each row would lie in `cells`. */
  readonly rowOffset: Int32Array;
  readonly cells: Float64Array;
  /** Size of each row before factoring (square root of its diagonal); rows are scaled by it. */
  readonly size: Float64Array;
  /** The inverse of D; 0 for a row that depends on the rows before it and is left out. */
  readonly inverse: Float64Array;
}

/** A row whose squared sine to the span of the rows before it is below this is linearly dependent (about 3e-6 rad). */
const DEPENDENT = 1e-11;

export function envelope(first: Int32Array): Envelope {
  const count = first.length;
  const rowOffset = new Int32Array(count);
  let total = 0;
  for (let r = 0; r < count; r++) {
    const start = first[r] ?? r;
    rowOffset[r] = total - start;
    total += r - start + 1;
  }
  return {
    first,
    rowOffset,
    cells: new Float64Array(total),
    size: new Float64Array(count),
    inverse: new Float64Array(count),
  };
}

/** Factors in place, with `damping` added to the diagonal of the scaled matrix. Dependent rows get no pivot. */
export function factor(matrix: Envelope, damping: number): void {
  const { first, rowOffset, cells, size, inverse } = matrix;
  const count = first.length;
  for (let r = 0; r < count; r++) size[r] = Math.sqrt(cells[(rowOffset[r] as number) + r] as number);
  for (let r = 0; r < count; r++) {
    const row = rowOffset[r] as number;
    const from = first[r] as number;
    const mine = size[r] as number;
    if (mine === 0) {
      cells.fill(0, row + from, row + r);
      inverse[r] = 0;
      continue;
    }
    for (let c = from; c < r; c++) {
      const other = rowOffset[c] as number;
      const scale = mine * (size[c] as number);
      let sum = scale === 0 ? 0 : (cells[row + c] as number) / scale;
      for (let k = Math.max(from, first[c] as number); k < c; k++) {
        sum -= (cells[row + k] as number) * (cells[other + k] as number);
      }
      // Until the row is done it holds L·D; a column without a pivot takes no part.
      cells[row + c] = inverse[c] === 0 ? 0 : sum;
    }
    let pivot = 1 + damping;
    for (let k = from; k < r; k++) {
      const scaled = (cells[row + k] as number) * (inverse[k] as number);
      pivot -= scaled * (cells[row + k] as number);
      cells[row + k] = scaled;
    }
    inverse[r] = pivot > DEPENDENT ? 1 / pivot : 0;
  }
}

/** Solves in place: `side`, the right-hand side, becomes the solution; rows that were left out get 0. */
export function substitute(matrix: Envelope, side: Float64Array): void {
  const { first, rowOffset, cells, size, inverse } = matrix;
  const count = first.length;
  for (let r = 0; r < count; r++) {
    const row = rowOffset[r] as number;
    if (inverse[r] === 0) {
      side[r] = 0;
      continue;
    }
    let sum = (side[r] as number) / (size[r] as number);
    for (let k = first[r] as number; k < r; k++) sum -= (cells[row + k] as number) * (side[k] as number);
    side[r] = sum;
  }
  for (let r = 0; r < count; r++) side[r] = (side[r] as number) * (inverse[r] as number);
  for (let r = count - 1; r >= 0; r--) {
    if (inverse[r] === 0) continue;
    const row = rowOffset[r] as number;
    const value = side[r] as number;
    for (let k = first[r] as number; k < r; k++) side[k] = (side[k] as number) - (cells[row + k] as number) * value;
    side[r] = value / (size[r] as number);
  }
}
