/** The numbers that describe a coat over the clear aperture, each with its numerical error. */
import type { Cell, Face } from '../geometry/face.ts';
import { extremeOf, type Extreme } from './extremes.ts';
import type { ClearTriangles, FaceWeights, NodeAreas } from './faceWeights.ts';

/** A number and how far it may be off, both in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly error: number;
}

export interface Statistics {
  /** area-weighted mean thickness, m */
  readonly mean: Estimate;
  readonly minimum: Extreme;
  readonly maximum: Extreme;
  /** (max − min)/(max + min), 1 */
  readonly uniformity: Estimate;
  /** standard deviation over mean, 1 */
  readonly rms: Estimate;
  /** mean over the outermost 2 % of the radius over mean, 1 */
  readonly edgeRatio: Estimate;
  /** mass on the mirror over mass evaporated, 1 */
  readonly collection: Estimate;
  /** share of the area whose thickness is within the tolerance of the mean, 1 */
  readonly fractionInside: Estimate;
}

/** Rounding that remains when both rules agree to the last digit. */
const ROUNDING = 1e-12;

function weightedSum(weights: Float64Array, values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i]! * values[i]!;
  return sum;
}

function weightedSquares(weights: Float64Array, values: Float64Array, center: number): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    const off = values[i]! - center;
    sum += weights[i]! * off * off;
  }
  return sum;
}

/** Share of a triangle's area where a linear function with corner values f ≤ g ≤ h is below a level. */
function shareBelow(f: number, g: number, h: number, level: number): number {
  if (level <= f) return 0;
  if (level >= h) return 1;
  if (level <= g) return (level - f) ** 2 / ((g - f) * (h - f));
  return 1 - (h - level) ** 2 / ((h - f) * (h - g));
}

/** Share of the clear area where the field lies between two levels, the field being linear in each triangle. */
function shareBetween({ nodes, areas }: ClearTriangles, field: Float64Array, low: number, high: number): number {
  let inside = 0;
  let all = 0;
  for (let t = 0; t < areas.length; t++) {
    const p = field[nodes[3 * t]!]!;
    const q = field[nodes[3 * t + 1]!]!;
    const r = field[nodes[3 * t + 2]!]!;
    const f = Math.min(p, q, r);
    const h = Math.max(p, q, r);
    all += areas[t]!;
    if (f >= low && h <= high) inside += areas[t]!;
    else if (h >= low && f <= high) {
      const g = p + q + r - f - h;
      inside += areas[t]! * (shareBelow(f, g, h, high) - shareBelow(f, g, h, low));
    }
  }
  return all > 0 ? inside / all : 0;
}

/** Standard deviations that the errors of the cells at shadow edges are given, added as independent ones. */
const EDGE_DEVIATIONS = 4;

/**
 * Error that the cells at shadow edges leave beside the difference of the two rules over the whole face.
 *
 * An edge cuts each cell at another place, so the cells' errors have either sign and add as
 * independent ones; what they have in common shows in the difference over the whole face.
 */
function mixedError(cells: readonly Cell[], field: Float64Array): number {
  let squares = 0;
  for (const { nodes, weights, coarse } of cells) {
    let difference = 0;
    for (let k = 0; k < nodes.length; k++) difference += (weights[k]! - coarse[k]!) * field[nodes[k]!]!;
    squares += difference * difference;
  }
  return EDGE_DEVIATIONS * Math.sqrt(squares);
}

function estimate(fine: number, coarse: number, extra = 0): Estimate {
  return { value: fine, error: Math.abs(fine - coarse) + extra + ROUNDING * Math.abs(fine) };
}

/**
 * Mass on the whole face from a field of mass per area.
 *
 * @param areal [points] kg/m²
 * @param mixed cells that a shadow edge crosses
 */
export function massOnFace({ all }: FaceWeights, mixed: readonly Cell[], areal: Float64Array): Estimate {
  return estimate(weightedSum(all.fine, areal), weightedSum(all.coarse, areal), mixedError(mixed, areal));
}

/**
 * Statistics of a thickness map over the clear aperture, as design.md defines them.
 *
 * Errors: each number is computed again by the lower rule embedded in the same points (every second
 * node); the difference is its error, an upper bound for smooth maps. Cells that a shadow edge
 * crosses add theirs as independent errors.
 *
 * @param thickness [points] m
 * @param mixed cells that a shadow edge crosses
 * @param tolerance [1] either side of the mean
 * @param collection mass on the mirror over mass evaporated
 */
export function statisticsOf(
  face: Face,
  weights: FaceWeights,
  mixed: readonly Cell[],
  thickness: Float64Array,
  tolerance: number,
  collection: Estimate,
): Statistics {
  const mixedSet = new Set(mixed);
  const isMixed = (cell: Cell): boolean => mixedSet.has(cell);
  const area = weights.clear.fineTotal;
  const shadow = mixedError(mixed, thickness) / area;
  const means = ({ fine, coarse, fineTotal, coarseTotal }: NodeAreas): [number, number] => [
    weightedSum(fine, thickness) / fineTotal,
    weightedSum(coarse, thickness) / coarseTotal,
  ];
  const [mean, meanCoarse] = means(weights.clear);
  const [edge, edgeCoarse] = means(weights.edge);
  const minimum = extremeOf(face, weights, isMixed, thickness, -1);
  const maximum = extremeOf(face, weights, isMixed, thickness, 1);
  const deviation = Math.sqrt(weightedSquares(weights.clear.fine, thickness, mean) / area);
  const deviationCoarse = Math.sqrt(
    Math.max(0, weightedSquares(weights.clear.coarse, thickness, meanCoarse) / weights.clear.coarseTotal),
  );
  const ratio = (value: number, by: number): number => (by > 0 ? value / by : 0);
  const span = maximum.value + minimum.value;
  const inside = ([level, triangles]: [number, ClearTriangles]): number =>
    shareBetween(triangles, thickness, level * (1 - tolerance), level * (1 + tolerance));
  return {
    mean: estimate(mean, meanCoarse, shadow),
    minimum,
    maximum,
    uniformity: {
      value: ratio(maximum.value - minimum.value, span),
      error: ratio(2 * (maximum.value * minimum.error + minimum.value * maximum.error), span * span) + ROUNDING,
    },
    rms: estimate(ratio(deviation, mean), ratio(deviationCoarse, meanCoarse), ratio(shadow, mean)),
    edgeRatio: estimate(ratio(edge, mean), ratio(edgeCoarse, meanCoarse), ratio(shadow, mean)),
    collection,
    fractionInside: estimate(
      mean > 0 ? inside([mean, weights.triangles.fine]) : 0,
      mean > 0 ? inside([meanCoarse, weights.triangles.coarse]) : 0,
    ),
  };
}

/**
 * Statistics of a thickness that may be off by an amount anywhere, on top of their own errors.
 *
 * Each number moves by at most: mean, extremes, edge: e; rms and ratios: e/mean each way; the area inside the
 * tolerance is not bounded by e alone, so it gets the share of the area that a change of e at both limits moves in a
 * coat that spreads evenly from its minimum to its maximum.
 *
 * @param off [m] bound of the thickness's error
 */
export function widened(statistics: Statistics, off: number): Statistics {
  const { mean, minimum, maximum, uniformity, rms, edgeRatio, fractionInside } = statistics;
  const wider = (estimate: Estimate, by: number): Estimate => ({ ...estimate, error: estimate.error + by });
  const relative = mean.value > 0 ? off / mean.value : 0;
  const span = maximum.value + minimum.value;
  const spread = Math.max(maximum.value - minimum.value, off);
  return {
    ...statistics,
    mean: wider(mean, off),
    minimum: { ...minimum, error: minimum.error + off },
    maximum: { ...maximum, error: maximum.error + off },
    uniformity: wider(uniformity, span > 0 ? (2 * off) / span : 0),
    rms: wider(rms, 2 * relative),
    edgeRatio: wider(edgeRatio, relative * (1 + edgeRatio.value)),
    fractionInside: wider(fractionInside, Math.min(1, (4 * off) / spread)),
  };
}
