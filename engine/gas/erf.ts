/** The error function, which JavaScript lacks. */

/** Beyond this argument erf is 1 to the last bit. */
const SATURATED = 5.95;

/**
 * Error function by a series of positive terms, which loses no digits.
 *
 *     erf x = (2/√π) e^(−x²) Σ 2ⁿ x^(2n+1) / (1·3·5···(2n+1))
 *
 * Error: a few units in the last place.
 *
 * @param x [1] ≥ 0
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 7.1.6
 */
export function erf(x: number): number {
  if (x >= SATURATED) return 1;
  let term = x;
  let sum = x;
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}
