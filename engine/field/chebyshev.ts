/** Chebyshev polynomials on an interval: nodes, values, derivatives, and coefficients from values at the nodes. */

/**
 * Roots of T_count moved to [from, to], ascending.
 *
 *     r_j = (from + to)/2 − (to − from)/2 · cos(π (j + ½)/count)
 */
export function chebyshevNodes(count: number, from: number, to: number): Float64Array {
  return Float64Array.from(
    { length: count },
    (_, j) => (from + to) / 2 - ((to - from) / 2) * Math.cos((Math.PI * (j + 0.5)) / count),
  );
}

/** Place of r in [from, to] on [−1, 1]. */
export function unitPlace(r: number, from: number, to: number): number {
  return (2 * r - from - to) / (to - from);
}

/** Writes T_0(x) … T_{count−1}(x) into out[at … at + count). Overwrites. */
export function chebyshevInto(out: Float64Array, at: number, count: number, x: number): Float64Array {
  let [before, here] = [x, 1];
  for (let k = 0; k < count; k++) {
    out[at + k] = here;
    [before, here] = [here, 2 * x * here - before];
  }
  return out;
}

/**
 * Writes value, first and second derivative of T_k(x): out[3k], out[3k + 1], out[3k + 2]. Overwrites.
 *
 *     T_{k+1} = 2x T_k − T_{k−1}, differentiated once and twice
 */
export function chebyshevDerivativesInto(out: Float64Array, count: number, x: number): Float64Array {
  out.fill(0, 0, 3 * count);
  out[0] = 1;
  if (count === 1) return out;
  out[3] = x;
  out[4] = 1;
  for (let k = 2, o = 6; k < count; k++, o += 3) {
    out[o] = 2 * x * out[o - 3]! - out[o - 6]!;
    out[o + 1] = 2 * out[o - 3]! + 2 * x * out[o - 2]! - out[o - 5]!;
    out[o + 2] = 4 * out[o - 2]! + 2 * x * out[o - 1]! - out[o - 4]!;
  }
  return out;
}

/** [count²] row k, column j: what value j at the nodes adds to coefficient k. */
export function chebyshevTransform(count: number): Float64Array {
  const matrix = new Float64Array(count * count);
  for (let k = 0; k < count; k++) {
    for (let j = 0; j < count; j++) {
      const sign = k % 2 === 0 ? 1 : -1;
      matrix[k * count + j] = ((k === 0 ? 1 : 2) / count) * sign * Math.cos((Math.PI * k * (j + 0.5)) / count);
    }
  }
  return matrix;
}
