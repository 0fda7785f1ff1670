/** The column of one filament as coefficients: deposit per kilogram over the whole face. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { RUN } from '../transport/depositKernel.ts';
import { cosineHarmonicsInto, harmonicsOf, sineHarmonicsInto } from './azimuthTransform.ts';
import { chebyshevTransform } from './chebyshev.ts';
import type { NodeCounts } from './faceNodes.ts';
import type { FieldKernel } from './fieldKernel.ts';

/** Rows by harmonic, 0 … harmonicsOf(azimuthCount), radial terms running fastest. */
export interface ColumnSeries {
  readonly counts: NodeCounts;
  /** [harmonics · radialCount] 1/m² */
  readonly cosine: Float64Array;
  /** the same of the sines; null for a filament that is its own mirror image */
  readonly sine: Float64Array | null;
  /** [harmonics] largest size of each harmonic at the nodes, 1/m² */
  readonly amplitude: Float64Array;
  /** power of the fastest decay that its coefficients may have in the end (see kinks.ts) */
  readonly steepest: number;
}

/** Sum of a filament's sub-sources at the nodes, without shadows and shields, 1/m². */
export function depositAtNodes(
  source: FilamentSource,
  nodes: OrientedPoints,
  kernel: FieldKernel,
  perFreePath: number,
): Float64Array {
  const values = new Float64Array(nodes.count);
  for (let begin = 0; begin < nodes.count; begin += RUN) {
    const end = Math.min(nodes.count, begin + RUN);
    kernel.load(nodes, begin, end, perFreePath);
    kernel.addAll(source);
    kernel.readInto(values.subarray(begin, end));
  }
  return values;
}

const transforms = new Map<number, Float64Array>();

/** Replaces each row of values at Chebyshev nodes by its coefficients. */
function transformRows(rows: Float64Array, length: number): Float64Array {
  let matrix = transforms.get(length);
  if (!matrix) transforms.set(length, (matrix = chebyshevTransform(length)));
  const row = new Float64Array(length);
  for (let o = 0; o < rows.length; o += length) {
    row.set(rows.subarray(o, o + length));
    for (let k = 0; k < length; k++) {
      let sum = 0;
      for (let j = 0; j < length; j++) sum += matrix[k * length + j]! * row[j]!;
      rows[o + k] = sum;
    }
  }
  return rows;
}

/** x_j + x_{N−j} (sign 1) or x_j − x_{N−j} (sign −1) for j = 0 … N/2, ends taken once or dropped. */
function folded(values: Float64Array, { radialCount: K, azimuthCount: N }: NodeCounts, sign: 1 | -1): Float64Array {
  const rows = new Float64Array((N / 2 + 1) * K);
  const isHalf = values.length < N * K;
  for (let j = 0; j <= N / 2; j++) {
    const isEnd = j === 0 || j === N / 2;
    if (isEnd && sign < 0) continue;
    const other = isEnd ? -1 : (isHalf ? j : N - j) * K;
    for (let k = 0; k < K; k++) {
      rows[j * K + k] = values[j * K + k]! + (other < 0 ? 0 : sign * values[other + k]!);
    }
  }
  return rows;
}

/** Largest size of each harmonic over its row; NaN stays NaN. */
function amplitudes(cosine: Float64Array, sine: Float64Array | null, length: number): Float64Array {
  const amplitude = new Float64Array(cosine.length / length);
  for (let m = 0, o = 0; m < amplitude.length; m++) {
    let most = 0;
    for (let k = 0; k < length; k++, o++) {
      const square = cosine[o]! * cosine[o]! + (sine ? sine[o]! * sine[o]! : 0);
      if (square > most || Number.isNaN(square)) most = square;
    }
    amplitude[m] = Math.sqrt(most);
  }
  return amplitude;
}

/**
 * Coefficients from values at the nodes.
 *
 * @param values [N·K], or [(N/2 + 1)·K] of a column that is even in the azimuth
 * @param steepest see kinks.ts
 */
export function columnSeries(values: Float64Array, counts: NodeCounts, steepest: number): ColumnSeries {
  const { radialCount: K, azimuthCount: N } = counts;
  const harmonicCount = harmonicsOf(N) + 1;
  const cosine = new Float64Array(harmonicCount * K);
  cosineHarmonicsInto(cosine, folded(values, counts, 1), N, K);
  const isEven = values.length < N * K;
  const sine = isEven ? null : new Float64Array(harmonicCount * K);
  if (sine) sineHarmonicsInto(sine, folded(values, counts, -1), N, K);
  const amplitude = amplitudes(cosine, sine, K);
  transformRows(cosine, K);
  if (sine) transformRows(sine, K);
  return { counts, cosine, sine, amplitude, steepest };
}
