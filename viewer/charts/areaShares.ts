/** How the clear aperture divides by thickness. */
import { scaleLinear } from 'd3-scale';
import type { Coat } from '../../engine/index.ts';
import { faceTriangles, isClear, type Face } from '../../engine/geometry/face.ts';

export interface Bin {
  /** in the unit of the field; the upper end belongs to the next bin */
  readonly low: number;
  readonly high: number;
  /** of the clear aperture's area, 1 */
  readonly share: number;
}

/** Triangles of the clear aperture: three nodes each, and areas, m². */
export interface ClearArea {
  readonly nodes: Uint32Array;
  readonly areas: Float64Array;
}

export function clearArea({ cells, points: { position: p } }: Face): ClearArea {
  const nodes = faceTriangles(cells.filter(isClear));
  const areas = new Float64Array(nodes.length / 3);
  for (let t = 0; t < areas.length; t++) {
    const [a, b, c] = [3 * nodes[3 * t]!, 3 * nodes[3 * t + 1]!, 3 * nodes[3 * t + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    areas[t] = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
  }
  return { nodes, areas };
}

/** Share of a triangle where a linear function with corner values f ≤ g ≤ h, f < h, is below a level. */
function shareBelow(f: number, g: number, h: number, level: number): number {
  if (level <= f) return 0;
  if (level >= h) return 1;
  if (level <= g) return (level - f) ** 2 / ((g - f) * (h - f));
  return 1 - (h - level) ** 2 / ((h - f) * (h - g));
}

/** Bin of a value; values at or beyond the ends belong to the outermost bins. */
function binOf(edges: readonly number[], value: number): number {
  let [low, high] = [0, edges.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (value >= edges[middle]!) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * Shares of an area between the edges of bins, the field being linear in each triangle: they sum
 * to 1, as values beyond the outer edges count in the outermost bins.
 *
 * @param edges rising, two at least
 */
export function areaShares({ nodes, areas }: ClearArea, field: Float64Array, edges: readonly number[]): Bin[] {
  const sums = new Float64Array(edges.length - 1);
  let total = 0;
  for (let t = 0; t < areas.length; t++) {
    const [p, q, r] = [field[nodes[3 * t]!]!, field[nodes[3 * t + 1]!]!, field[nodes[3 * t + 2]!]!];
    const f = Math.min(p, q, r);
    const h = Math.max(p, q, r);
    const g = Math.max(Math.min(p, q), Math.min(Math.max(p, q), r));
    const [first, last] = [binOf(edges, f), binOf(edges, h)];
    total += areas[t]!;
    let below = 0;
    for (let i = first; i < last; i++) {
      const upTo = shareBelow(f, g, h, edges[i + 1]!);
      sums[i]! += areas[t]! * (upTo - below);
      below = upTo;
    }
    sums[last]! += areas[t]! * (1 - below);
  }
  return Array.from(sums, (sum, i) => ({ low: edges[i]!, high: edges[i + 1]!, share: total > 0 ? sum / total : 0 }));
}

export interface HistogramData {
  readonly bins: readonly Bin[];
  readonly mean_nm: number;
  /** limits of the tolerance about the mean, nm */
  readonly limits_nm: readonly [number, number];
  /** share of the mean either side */
  readonly tolerance: number;
  /** share of the area inside the limits, 1 */
  readonly inside: number;
}

/** Bins wanted over the range of the thickness. */
const BINS = 24;
/** Share of the mean that the bins span at least, so that rounding is not drawn as a spread. */
const LEAST_SPAN = 0.002;

/** Round edges of bins around a range. */
export function binEdges(low: number, high: number, leastSpan: number): number[] {
  const pad = Math.max(0, leastSpan - (high - low)) / 2 || 0;
  const from = Math.max(0, low - pad);
  const scale = scaleLinear([from, Math.max(high + pad, from + Number.MIN_VALUE)], [0, 1]).nice(BINS);
  const edges = scale.ticks(BINS);
  return edges.length >= 2 ? edges : [0, 1];
}

/** The clear aperture of a coat by thickness. */
export function histogramOf({ face, thickness, statistics, plant }: Coat): HistogramData {
  const area = clearArea(face);
  const field = thickness.map((value) => value * 1e9);
  let [low, high] = [Infinity, 0];
  for (const node of area.nodes) {
    low = Math.min(low, field[node]!);
    high = Math.max(high, field[node]!);
  }
  const mean_nm = statistics.mean.value * 1e9;
  const { tolerance } = plant.film;
  return {
    bins: areaShares(area, field, high > 0 ? binEdges(low, high, LEAST_SPAN * high) : [0, 1]),
    mean_nm,
    limits_nm: [mean_nm * (1 - tolerance), mean_nm * (1 + tolerance)],
    tolerance,
    inside: statistics.fractionInside.value,
  };
}
