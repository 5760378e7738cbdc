/** How much of the normal distribution lies above `x`, for x ≥ 0: erfc(x/√2)/2. */
function upperTail(x: number): number {
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (x < 3) {
    // The series of the distribution function: x + x³/3 + x⁵/15 + …
    let term = x;
    let sum = x;
    for (let k = 3; term > 1e-17 * sum; k += 2) {
      term *= (x * x) / k;
      sum += term;
    }
    return 0.5 - density * sum;
  }
  // Laplace's continued fraction, from its inside out.
  let below = x;
  for (let k = 60; k > 0; k -= 1) below = x + k / below;
  return density / below;
}

/** The x that a normally distributed value exceeds with the chance `tail`, 0 < tail ≤ 0.5. */
export function normalQuantile(tail: number): number {
  if (!(tail > 0 && tail <= 0.5)) throw new Error(`normalQuantile: tail must be above 0 and at most 0.5, got ${tail}`);
  let low = 0;
  let high = 40;
  for (let halving = 0; halving < 80; halving += 1) {
    const middle = (low + high) / 2;
    if (upperTail(middle) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The |w| that none of so many good observations exceeds with the chance 1 − level: each is tested at the level by which
 * all together keep theirs (Šidák).
 */
export function criticalW(level: number, tests: number): number {
  if (!(level > 0 && level < 1)) throw new Error(`criticalW: level must lie between 0 and 1, got ${level}`);
  const single = -Math.expm1(Math.log1p(-level) / Math.max(1, tests));
  return normalQuantile(single / 2);
}
