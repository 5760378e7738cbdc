/** What a bench measures: our number beside an anchor that anyone can re-run, and their ratio. */
export interface Row {
  readonly case: string;
  readonly unit: string;
  readonly ours: number;
  readonly anchor: number;
  readonly anchorName: string;
  /** The anchor over ours: how many times smaller ours is. */
  readonly ratio: number;
}

export function row(name: string, unit: string, numbers: { ours: number; anchor: number; anchorName: string }): Row {
  return { case: name, unit, ...numbers, ratio: numbers.anchor === numbers.ours ? 1 : numbers.anchor / numbers.ours };
}

/** The value below which the share of the samples lies: 0.5 is the median. */
export function percentile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  if (value === undefined) throw new Error('percentile: there are no samples');
  return value;
}

/** Milliseconds of each of `times` runs; `prepare` makes what a run needs, outside the clock. */
export function timed<T>(times: number, prepare: (i: number) => T, run: (made: T) => void): number[] {
  return Array.from({ length: times }, (_, i) => {
    const made = prepare(i);
    const begun = performance.now();
    run(made);
    return performance.now() - begun;
  });
}
