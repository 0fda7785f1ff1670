/** From values at evenly spaced azimuths to cosine and sine harmonics, for all radii at once. */

/** [count] cos(2πi/count) */
const cosines = new Map<number, Float64Array>();

function cosineTable(count: number): Float64Array {
  let table = cosines.get(count);
  if (!table) {
    table = Float64Array.from({ length: count }, (_, i) => Math.cos((2 * Math.PI * i) / count));
    cosines.set(count, table);
  }
  return table;
}

/** Highest harmonic that `azimuthCount` azimuths tell from all lower ones. */
export function harmonicsOf(azimuthCount: number): number {
  return azimuthCount / 2 - 1;
}

/** Rows of K numbers, one after another. */
function addRow(out: Float64Array, o: number, rows: Float64Array, from: number, factor: number, length: number): void {
  for (let k = 0; k < length; k++) out[o + k]! += factor * rows[from + k]!;
}

/**
 * Cosine harmonics of an even periodic function from folded values.
 *
 *     A_m = (2/N) Σ_j e_j cos(2πmj/N),  A_0 halved
 *
 * Azimuths j and N/2 − j share their cosine but for the sign (−1)^m: half the work for each harmonic.
 *
 * @param out [(M + 1)·K] overwritten
 * @param folded [(N/2 + 1)·K] e_j: x_0, x_j + x_{N−j}, x_{N/2}; overwritten
 * @param count N, a multiple of 4
 */
export function cosineHarmonicsInto(out: Float64Array, folded: Float64Array, count: number, length: number): void {
  const table = cosineTable(count);
  const quarter = count / 4;
  const highest = harmonicsOf(count);
  out.fill(0, 0, (highest + 1) * length);
  foldAgain(folded, 0, count / 2, length);
  for (let m = 0; m <= highest; m++) {
    const factor = (m === 0 ? 1 : 2) / count;
    for (let j = 0; j <= quarter; j++) {
      if (j === quarter && m % 2 === 1) continue;
      const row = m % 2 === 0 ? j : count / 2 - j;
      addRow(out, m * length, folded, row * length, factor * table[(m * j) % count]!, length);
    }
  }
}

/**
 * Sine harmonics of an odd periodic function from folded values.
 *
 *     B_m = (2/N) Σ_j o_j sin(2πmj/N)
 *
 * @param out [(M + 1)·K] overwritten; row 0 is zero
 * @param folded [(N/2 + 1)·K] o_j = x_j − x_{N−j}, rows 0 and N/2 zero; overwritten
 */
export function sineHarmonicsInto(out: Float64Array, folded: Float64Array, count: number, length: number): void {
  const table = cosineTable(count);
  const quarter = count / 4;
  const highest = harmonicsOf(count);
  out.fill(0, 0, (highest + 1) * length);
  foldAgain(folded, 1, count / 2, length);
  for (let m = 1; m <= highest; m++) {
    for (let j = 1; j <= quarter; j++) {
      if (j === quarter && m % 2 === 0) continue;
      const row = m % 2 === 1 ? j : count / 2 - j;
      // sin t = cos(t − π/2)
      const sine = table[(m * j + 3 * quarter) % count]!;
      addRow(out, m * length, folded, row * length, (2 / count) * sine, length);
    }
  }
}

/** Replaces rows j and half − j by their sum (at j) and difference (at half − j). */
function foldAgain(rows: Float64Array, first: number, half: number, length: number): void {
  for (let j = first; j < half / 2; j++) {
    for (let k = 0; k < length; k++) {
      const [a, b] = [rows[j * length + k]!, rows[(half - j) * length + k]!];
      rows[j * length + k] = a + b;
      rows[(half - j) * length + k] = a - b;
    }
  }
}
