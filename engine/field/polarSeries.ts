/** A smooth field over the face: Chebyshev polynomials in radius times harmonics in azimuth. */
import type { MirrorShape } from '../geometry/mirrorShape.ts';

/**
 * Plain data, so that it can be sent.
 *
 *     f(r, θ) = Σ_i Σ_k [C_ik cos(m_i θ) + S_ik sin(m_i θ)] T_k(x),   x = (2r − inner − outer)/(outer − inner)
 *
 * r and θ are taken about (centerX, 0), the middle of the glass; θ is 0 along +x.
 */
export interface PolarSeries {
  readonly centerX: number;
  /** radii between which it holds, m */
  readonly inner: number;
  readonly outer: number;
  /** terms in radius */
  readonly radialCount: number;
  /** m_i, ascending; the first is 0 */
  readonly harmonics: Int32Array;
  /** [harmonics · radialCount] */
  readonly cosine: Float64Array;
  /** [harmonics · radialCount] */
  readonly sine: Float64Array;
}

/** Where the field of a mirror is described: from the hole to the circle around the outline. */
export function domainOf(shape: MirrorShape): Pick<PolarSeries, 'centerX' | 'inner' | 'outer'> {
  return { centerX: shape.centerX, inner: shape.holeRadius, outer: shape.rimRadius };
}

/** Rows harmonic by harmonic, added up from series of any size. */
export interface SeriesSum {
  readonly radialCount: number;
  /** highest harmonic + 1 */
  readonly harmonicCount: number;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

export function createSeriesSum(radialCount: number, harmonicCount: number): SeriesSum {
  const length = radialCount * harmonicCount;
  return { radialCount, harmonicCount, cosine: new Float64Array(length), sine: new Float64Array(length) };
}

function rowSize({ cosine, sine, radialCount }: SeriesSum, m: number): number {
  let size = 0;
  for (let o = m * radialCount; o < (m + 1) * radialCount; o++) size += Math.sqrt(cosine[o]! ** 2 + sine[o]! ** 2);
  return size;
}

/**
 * The series without harmonics and radial terms that do not matter.
 *
 * @param allowed absolute sum of what may be left out
 * @returns the series, and the sum of what was left out: a bound of the change anywhere
 */
export function thinned(
  domain: Pick<PolarSeries, 'centerX' | 'inner' | 'outer'>,
  sum: SeriesSum,
  allowed: number,
): { readonly series: PolarSeries; readonly leftOut: number } {
  const sizes = Float64Array.from({ length: sum.harmonicCount }, (_, m) => rowSize(sum, m));
  const order = Array.from(sizes.keys()).filter((m) => m > 0);
  order.sort((p, q) => sizes[p]! - sizes[q]!);
  let leftOut = 0;
  const dropped = new Set<number>();
  for (const m of order) {
    if (leftOut + sizes[m]! > allowed / 2) break;
    leftOut += sizes[m]!;
    dropped.add(m);
  }
  const harmonics = Int32Array.from(Array.from(sizes.keys()).filter((m) => !dropped.has(m)));
  const { radialCount, cut } = chopped(sum, harmonics, allowed / 2);
  const cosine = new Float64Array(harmonics.length * radialCount);
  const sine = new Float64Array(harmonics.length * radialCount);
  harmonics.forEach((m, i) => {
    const from = m * sum.radialCount;
    cosine.set(sum.cosine.subarray(from, from + radialCount), i * radialCount);
    sine.set(sum.sine.subarray(from, from + radialCount), i * radialCount);
  });
  return { series: { ...domain, radialCount, harmonics, cosine, sine }, leftOut: leftOut + cut };
}

/** How many radial terms remain if at most `allowed` may be cut off. */
function chopped(
  { radialCount: all, cosine, sine }: SeriesSum,
  harmonics: Int32Array,
  allowed: number,
): { readonly radialCount: number; readonly cut: number } {
  let cut = 0;
  for (let k = all - 1; k > 0; k--) {
    let size = 0;
    for (const m of harmonics) size += Math.sqrt(cosine[m * all + k]! ** 2 + sine[m * all + k]! ** 2);
    if (cut + size > allowed) return { radialCount: k + 1, cut };
    cut += size;
  }
  return { radialCount: 1, cut };
}
