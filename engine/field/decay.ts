/** What a series leaves out, judged from how its last terms fall off. */

/** Terms a·m^−power for all m beyond the last known one. */
export interface Tail {
  /** Σ of all terms beyond, Infinity if they do not fall off */
  readonly sum: number;
  readonly power: number;
  /** power with which the last known terms fall off: above `power` while a smooth part hides a kink */
  readonly apparent: number;
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

/** Values of a, evenly spaced in its logarithm, with the ratio of their quarters: descending. */
const STEPS = 256;
const DECAYS = Float64Array.from({ length: STEPS }, (_, i) => SLOWEST * (FASTEST / SLOWEST) ** (i / (STEPS - 1)));
const RATIOS = DECAYS.map(quarterRatio);

/** The a whose quarters have this ratio, rounded down to the table; 0 if they do not fall off. */
function decayOf(ratio: number): number {
  if (!(ratio < RATIOS[0]!)) return 0;
  let [low, high] = [0, STEPS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (RATIOS[middle]! > ratio) low = middle;
    else high = middle;
  }
  return DECAYS[low]!;
}

/** Passes over the decay: each takes more exactly off what the nodes add to the last terms. */
const PASSES = 4;

/** Sums of the third and fourth quarter, per term of the fourth, each term less what passes for it if all fall as m^−power. */
function quarters(size: Float64Array, wrap: number, power: number): readonly [number, number] {
  const count = size.length;
  const half = Math.floor(count / 2);
  const split = Math.floor((3 * count) / 4);
  let [third, fourth] = [0, 0];
  for (let m = half; m < count; m++) {
    const own = size[m]! / (1 + (m / (wrap - m)) ** power);
    if (m < split) third += own;
    else fourth += own;
  }
  // quarters of unlike length are compared term by term
  return [(third * (count - split)) / Math.max(1, split - half), fourth];
}

/**
 * Sum of the terms beyond the last one, from the sums of the last two quarters.
 *
 *     Σ_{m>M} m^−(a+1) ≈ S₂/((4/3)^a − 1),   S₁, S₂ sums over the third and the fourth quarter
 *
 * An algebraic law through both quarters lies above a geometric one beyond them, so that it serves
 * smooth fields and fields with a kink alike. Where a kink is known, its own law is the fastest that
 * is believed: the smooth part of the field hides it among the first terms. At the nodes term m
 * holds term wrap − m too, which makes the last ones seem to fall off too slowly; the decay is
 * corrected for that, their sum is not.
 *
 * @param size [count] absolute values of the terms, from index 0
 * @param wrap index whose distance two terms have in common if the nodes cannot tell them apart
 * @param steepest power of the fastest decay that is believed, > 1.3
 */
export function tailOf(size: Float64Array, wrap: number, steepest = Infinity): Tail {
  const last = size.length - 1;
  let largest = 0;
  for (const value of size) {
    if (!Number.isFinite(value)) return { sum: Infinity, power: 1, apparent: 1, last };
    if (value > largest) largest = value;
  }
  const floor = ROUNDING * largest * size.length;
  const [, fourth] = quarters(size, Infinity, 1);
  if (fourth <= floor) return { sum: floor, power: FASTEST, apparent: FASTEST, last };
  // the slowest decay explains most by what passes for the last terms: begin with the fastest
  let apparent = FASTEST;
  for (let pass = 0; pass < PASSES; pass++) {
    const [before, after] = quarters(size, wrap, apparent + 1);
    apparent = decayOf(after / before);
  }
  const a = Math.min(apparent, steepest - 1);
  if (a === 0) return { sum: Infinity, power: 1, apparent: 1, last };
  return { sum: fourth / ((4 / 3) ** a - 1) + floor, power: a + 1, apparent: apparent + 1, last };
}

/** The model's term m, for m beyond the last known one. */
export function tailTerm({ sum, power, last }: Tail, m: number): number {
  return ((sum * (power - 1)) / last) * (last / m) ** power;
}
