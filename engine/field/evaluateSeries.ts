/** Values of a polar series: along rays for grids, and at single places. */
import type { Face } from '../geometry/face.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { chebyshevInto, unitPlace } from './chebyshev.ts';
import type { PolarSeries } from './polarSeries.ts';

/**
 * Radial coefficients along a ray: the harmonics added up at one azimuth.
 *
 *     R_k = Σ_i C_ik cos(m_i θ) + S_ik sin(m_i θ)
 *
 * Error: e^{imθ} by recurrence loses about m roundings.
 *
 * @param out [radialCount] overwritten
 */
export function rayInto(
  out: Float64Array,
  { radialCount: K, harmonics, cosine, sine }: PolarSeries,
  cos: number,
  sin: number,
): void {
  for (let k = 0; k < K; k++) out[k] = cosine[k]!;
  let [c, s, m] = [1, 0, 0];
  for (let i = 1; i < harmonics.length; i++) {
    for (; m < harmonics[i]!; m++) {
      const next = c * cos - s * sin;
      s = s * cos + c * sin;
      c = next;
    }
    const o = i * K;
    for (let k = 0; k < K; k++) out[k]! += cosine[o + k]! * c + sine[o + k]! * s;
  }
}

/** Value at radius place x on [−1, 1] of a ray, by Clenshaw's recurrence. */
function rayValue(ray: Float64Array, count: number, x: number): number {
  let [b1, b2] = [0, 0];
  for (let k = count - 1; k > 0; k--) {
    const b = ray[k]! + 2 * x * b1 - b2;
    b2 = b1;
    b1 = b;
  }
  return ray[0]! + x * b1 - b2;
}

/** Value at polar coordinates about the middle of the glass. */
export function valueAtPolar(series: PolarSeries, r: number, angle: number): number {
  const ray = new Float64Array(series.radialCount);
  rayInto(ray, series, Math.cos(angle), Math.sin(angle));
  return rayValue(ray, series.radialCount, unitPlace(r, series.inner, series.outer));
}

/**
 * Values at any points of the face, between the hole and the circle around the outline.
 *
 * @param begin first point; the rest as in `out`
 * @param out [points − begin] overwritten
 */
export function valuesAtInto(
  out: Float64Array,
  series: PolarSeries,
  { position: p }: OrientedPoints,
  begin = 0,
): Float64Array {
  const { centerX, inner, outer, radialCount: K } = series;
  const ray = new Float64Array(K);
  for (let i = 0, o = 3 * begin; i < out.length; i++, o += 3) {
    const [x, y] = [p[o]! - centerX, p[o + 1]!];
    const r = Math.sqrt(x * x + y * y);
    if (r > 0) rayInto(ray, series, x / r, y / r);
    else rayInto(ray, series, 1, 0);
    out[i] = rayValue(ray, K, unitPlace(r, inner, outer));
  }
  return out;
}

/** Columns of polynomials on the ray at radii of the grid, so that values are sums over whole columns. */
function rayBasis(series: PolarSeries, { radialCount, points: { position: p } }: Face): Float64Array {
  const { centerX, inner, outer, radialCount: K } = series;
  const basis = new Float64Array(K * radialCount);
  for (let i = 0; i < radialCount; i++) {
    const r = Math.hypot(p[3 * i]! - centerX, p[3 * i + 1]!);
    chebyshevInto(basis, i * K, K, unitPlace(r, inner, outer));
  }
  return basis;
}

/**
 * Values at all points of a face: its grid ray by ray, the points of refined cells one by one.
 *
 * Two radii of a ray are summed at once. A field whose harmonics share a divisor repeats, and so do
 * the grid's azimuths; but only a field without any harmonics is copied, the rest is fast enough.
 *
 * @param out [points] overwritten
 */
export function valuesOnFaceInto(out: Float64Array, series: PolarSeries, face: Face): Float64Array {
  const { radialCount, azimuthCount, points } = face;
  const { centerX, inner, outer, radialCount: K } = series;
  const p = points.position;
  const isRound = face.grid.shape.cornerAngle === null;
  const basis = isRound ? rayBasis(series, face) : null;
  const ray = new Float64Array(K);
  for (let q = 0; q < azimuthCount; q++) {
    const from = q * radialCount;
    if (basis && q > 0 && series.harmonics.length === 1) {
      out.copyWithin(from, 0, radialCount);
      continue;
    }
    const rim = 3 * (from + radialCount - 1);
    const [x, y] = [p[rim]! - centerX, p[rim + 1]!];
    const r = Math.hypot(x, y);
    rayInto(ray, series, x / r, y / r);
    if (basis) rayOnGridInto(out, from, radialCount, basis, ray, K);
    else {
      for (let i = from, o = 3 * from; i < from + radialCount; i++, o += 3) {
        const [px, py] = [p[o]! - centerX, p[o + 1]!];
        out[i] = rayValue(ray, K, unitPlace(Math.sqrt(px * px + py * py), inner, outer));
      }
    }
  }
  const gridCount = radialCount * azimuthCount;
  if (points.count > gridCount) valuesAtInto(out.subarray(gridCount, points.count), series, points, gridCount);
  return out;
}

/** Σ_k basis·ray at each radius of one azimuth; four sums side by side hide the latency of addition. */
function rayOnGridInto(
  out: Float64Array,
  from: number,
  radii: number,
  basis: Float64Array,
  ray: Float64Array,
  K: number,
): void {
  let i = 0;
  for (; i + 3 < radii; i += 4) {
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let k = 0, o = i * K; k < K; k++, o++) {
      const term = ray[k]!;
      a += basis[o]! * term;
      b += basis[o + K]! * term;
      c += basis[o + 2 * K]! * term;
      d += basis[o + 3 * K]! * term;
    }
    out[from + i] = a;
    out[from + i + 1] = b;
    out[from + i + 2] = c;
    out[from + i + 3] = d;
  }
  for (; i < radii; i++) {
    let sum = 0;
    for (let k = 0; k < K; k++) sum += basis[i * K + k]! * ray[k]!;
    out[from + i] = sum;
  }
}
