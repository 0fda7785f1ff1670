/** Smooth tables against the logarithm of pressure. */

/** Values at evenly spaced ln p, with slopes that add no new extremes. */
export interface LogTable {
  readonly first: number;
  readonly step: number;
  readonly values: Float64Array;
  /** dvalue/dln p */
  readonly slopes: Float64Array;
}

/** Pa; the pressures of a tank, from far below any base pressure to above the atmosphere. */
const LOWEST = 1e-8;
const NODES_PER_DECADE = 16;
const DECADES = 13.5;
export const NODE_COUNT = Math.round(NODES_PER_DECADE * DECADES) + 1;
const STEP = Math.LN10 / NODES_PER_DECADE;

/** Pressures of the nodes, Pa. */
export const NODE_PRESSURES: Float64Array = Float64Array.from({ length: NODE_COUNT }, (_, i) =>
  Math.exp(Math.log(LOWEST) + i * STEP),
);

/**
 * Tangents of a monotone cubic on even nodes.
 *
 * @see F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300: harmonic mean of neighbouring slopes
 */
export function logTable(values: Float64Array): LogTable {
  const slopes = new Float64Array(values.length);
  for (let i = 1; i < values.length - 1; i++) {
    const left = values[i]! - values[i - 1]!;
    const right = values[i + 1]! - values[i]!;
    slopes[i] = left * right > 0 ? (2 * left * right) / (left + right) / STEP : 0;
  }
  return { first: Math.log(LOWEST), step: STEP, values, slopes };
}

/** Value and slope of a table at a pressure into out[0] and out[1]; constant beyond the ends. */
export function readLogTableInto(out: Float64Array, { first, step, values, slopes }: LogTable, pressure: number): void {
  const s = (Math.log(pressure) - first) / step;
  const i = Math.min(Math.max(Math.floor(s), 0), values.length - 2);
  const u = Math.min(Math.max(s - i, 0), 1);
  const y0 = values[i]!;
  const d0 = slopes[i]! * step;
  const d1 = slopes[i + 1]! * step;
  const rise = values[i + 1]! - y0;
  const c = 3 * rise - 2 * d0 - d1;
  const d = d0 + d1 - 2 * rise;
  out[0] = y0 + u * (d0 + u * (c + u * d));
  out[1] = s >= i && s <= i + 1 ? (d0 + u * (2 * c + 3 * d * u)) / step : 0;
}

/**
 * Value of a curve given by points with rising pressures: straight in log–log between them, straight in
 * log pressure beside a value of zero, constant beyond the ends.
 */
export function readLogPoints(
  points: readonly (readonly [pressure: number, value: number])[],
  pressure: number,
): number {
  const after = points.findIndex(([p]) => p >= pressure);
  const [p1, v1] = points[after] ?? points.at(-1) ?? [1, 0];
  const [p0, v0] = points[after - 1] ?? [p1, v1];
  if (after <= 0 || p0 === p1) return after < 0 ? (points.at(-1)?.[1] ?? 0) : v1;
  const u = Math.log(pressure / p0) / Math.log(p1 / p0);
  return v0 > 0 && v1 > 0 ? v0 * (v1 / v0) ** u : v0 + u * (v1 - v0);
}

/** Value between two nodes, straight in ln p; constant beyond the ends. */
export function readNodes(values: Float64Array, pressure: number): number {
  const s = (Math.log(pressure) - Math.log(LOWEST)) / STEP;
  const i = Math.min(Math.max(Math.floor(s), 0), values.length - 2);
  const u = Math.min(Math.max(s - i, 0), 1);
  return values[i]! * (1 - u) + values[i + 1]! * u;
}
