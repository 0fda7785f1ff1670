/** What a series leaves out, judged from how its last terms fall off. */

/** Terms a·m^−power for all m beyond the last known one. */
export interface Tail {
  /** Σ of all terms beyond, Infinity if they do not fall off */
  readonly sum: number;
  readonly power: number;
  /** last known term's index */
  readonly last: number;
}

/** Rounding of a term against the largest one. */
const ROUNDING = 4e-16;
/** Slowest and fastest decay that the model follows: sums of m^−power with power − 1 in this range. */
const SLOWEST = 0.3;
const FASTEST = 40;

/** (1 + 1/3)^a − 1 over 2^a − (1 + 1/3)^a: sum of the last quarter over that of the quarter before, for m^−(a+1). */
function quarterRatio(a: number): number {
  const u = (4 / 3) ** a;
  return (u - 1) / (2 ** a - u);
}

/** The a whose quarters have this ratio. */
function decayOf(ratio: number): number {
  if (!(ratio < quarterRatio(SLOWEST))) return 0;
  if (ratio <= quarterRatio(FASTEST)) return FASTEST;
  let [low, high] = [SLOWEST, FASTEST];
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (quarterRatio(middle) > ratio) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Sum of the terms beyond the last one, from the sums of the last two quarters.
 *
 *     Σ_{m>M} m^−(a+1) ≈ S₂/((4/3)^a − 1),   S₁, S₂ sums over the third and the fourth quarter
 *
 * An algebraic law through both quarters lies above a geometric one beyond them, so that it serves
 * smooth fields and fields with a kink alike.
 *
 * @param size [count] absolute values of the terms, from index 0
 */
export function tailOf(size: Float64Array, count = size.length): Tail {
  const last = count - 1;
  const half = Math.floor(count / 2);
  const split = Math.floor((3 * count) / 4);
  let largest = 0;
  let [third, fourth] = [0, 0];
  for (let m = 0; m < count; m++) {
    const value = size[m]!;
    if (!Number.isFinite(value)) return { sum: Infinity, power: 1, last };
    if (value > largest) largest = value;
    if (m >= split) fourth += value;
    else if (m >= half) third += value;
  }
  // quarters of unlike length are compared term by term
  third *= (count - split) / Math.max(1, split - half);
  const floor = ROUNDING * largest * count;
  if (fourth <= floor) return { sum: floor, power: FASTEST, last };
  const a = decayOf(fourth / third);
  if (a === 0) return { sum: Infinity, power: 1, last };
  return { sum: fourth / ((4 / 3) ** a - 1) + floor, power: a + 1, last };
}

/** The model's term m, for m beyond the last known one. */
export function tailTerm({ sum, power, last }: Tail, m: number): number {
  return ((sum * (power - 1)) / last) * (last / m) ** power;
}
