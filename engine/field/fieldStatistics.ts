/** The numbers that describe a smooth field over the clear aperture, from its series. */
import { surfacePointInto, type MirrorShape } from '../geometry/mirrorShape.ts';
import { chebyshevInto, unitPlace } from './chebyshev.ts';
import type { Estimate, PlacedEstimate } from './estimate.ts';
import { rayInto } from './evaluateSeries.ts';
import { polish, type PolarPlace } from './polish.ts';
import type { PolarSeries } from './polarSeries.ts';
import { areaAt, radialRule } from './radialRule.ts';
import type { SmoothField } from './smoothField.ts';

/** As design.md defines them, for mass per area, kg/m². */
export interface FieldStatistics {
  readonly mean: Estimate;
  readonly minimum: PlacedEstimate;
  readonly maximum: PlacedEstimate;
  /** (max − min)/(max + min), 1 */
  readonly uniformity: Estimate;
  /** standard deviation over mean, 1 */
  readonly rms: Estimate;
  /** mean over the outermost 2 % of the clear radius over mean, 1 */
  readonly edgeRatio: Estimate;
}

/** Relative error of the quadrature and of the climb to an extreme: measured 1e-12 on curved, off-axis faces. */
const QUADRATURE = 1e-10;
/** Azimuths beyond those that the harmonics need, for the surface's slope if the mirror is off its axis. */
const MORE_AZIMUTHS = 24;
/** Climbs started for each extreme. */
const CLIMBS = 4;

/** Whether the clear aperture is a plain ring or disc, which these statistics need. A hexagon's sides may cut into it. */
export function hasRoundAperture({ cornerAngle, clearOuterRadius, rimRadius }: MirrorShape): boolean {
  return cornerAngle === null || clearOuterRadius <= rimRadius * Math.cos(Math.PI / 6);
}

/** Values of a field where they are added up and searched: radii times azimuths of one period. */
interface Sampled {
  readonly radii: Float64Array;
  /** first radius of the edge zone */
  readonly edge: number;
  readonly azimuthCount: number;
  /** rad */
  readonly period: number;
  /** [azimuths · radii] radius running fastest, kg/m² */
  readonly values: Float64Array;
  /** [the same] areas, m², up to a common factor */
  readonly areas: Float64Array;
}

function greatestDivisor(numbers: Int32Array): number {
  let divisor = 0;
  for (const number of numbers) {
    let [a, b] = [number, divisor];
    while (b !== 0) [a, b] = [b, a % b];
    divisor = a;
  }
  return divisor;
}

/** How often the field repeats around the axis, and how many azimuths of one period show and integrate it. */
function azimuthsOf(shape: MirrorShape, harmonics: Int32Array): { readonly folds: number; readonly count: number } {
  const highest = harmonics.at(-1) ?? 0;
  if (shape.centerX !== 0) return { folds: 1, count: 2 * highest + MORE_AZIMUTHS };
  const folds = greatestDivisor(harmonics);
  return folds === 0 ? { folds: 1, count: 1 } : { folds, count: (2 * highest) / folds + 4 };
}

function sample(shape: MirrorShape, series: PolarSeries): Sampled {
  const { radialCount: K } = series;
  const { radii, weights, edge } = radialRule(shape, K);
  const basis = new Float64Array(radii.length * K);
  radii.forEach((r, i) => chebyshevInto(basis, i * K, K, unitPlace(r, series.inner, series.outer)));
  const { folds, count } = azimuthsOf(shape, series.harmonics);
  const period = (2 * Math.PI) / folds;
  const values = new Float64Array(count * radii.length);
  const areas = new Float64Array(count * radii.length);
  const ray = new Float64Array(K);
  for (let q = 0, o = 0; q < count; q++) {
    const angle = (period * q) / count;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    rayInto(ray, series, cos, sin);
    for (let i = 0; i < radii.length; i++, o++) {
      let value = 0;
      for (let k = 0; k < K; k++) value += basis[i * K + k]! * ray[k]!;
      values[o] = value;
      const isRepeated = q > 0 && shape.centerX === 0;
      areas[o] = isRepeated ? areas[i]! : areaAt(shape, radii[i]!, cos, sin) * weights[i]!;
    }
  }
  return { radii, edge, azimuthCount: count, period, values, areas };
}

/** Places on the grid that no neighbour exceeds, best first. */
function gridExtremes({ radii, azimuthCount, values }: Sampled, sign: number): number[] {
  const R = radii.length;
  const found: number[] = [];
  for (let o = 0; o < values.length; o++) {
    const [q, i] = [Math.floor(o / R), o % R];
    const value = sign * values[o]!;
    const before = ((q + azimuthCount - 1) % azimuthCount) * R + i;
    const after = ((q + 1) % azimuthCount) * R + i;
    if (value < sign * values[before]! || value < sign * values[after]!) continue;
    if (i > 0 && value < sign * values[o - 1]!) continue;
    if (i < R - 1 && value < sign * values[o + 1]!) continue;
    found.push(o);
  }
  return found.toSorted((p, q) => sign * (values[q]! - values[p]!)).slice(0, CLIMBS);
}

function extremeOf(shape: MirrorShape, { series, error }: SmoothField, grid: Sampled, sign: 1 | -1): PlacedEstimate {
  const { inner, outer } = series;
  const [low, high] = [shape.clearInnerRadius, shape.clearOuterRadius].map((r) => unitPlace(r, inner, outer)) as [
    number,
    number,
  ];
  let best = { x: low, angle: 0, value: -sign * Infinity };
  for (const o of gridExtremes(grid, sign)) {
    const R = grid.radii.length;
    const angle = (grid.period * Math.floor(o / R)) / grid.azimuthCount;
    const start: PolarPlace = { x: unitPlace(grid.radii[o % R]!, inner, outer), angle };
    const found = polish(series, start, sign, low, high);
    if (sign * (found.value - best.value) > 0) best = found;
  }
  const r = inner + ((best.x + 1) * (outer - inner)) / 2;
  const [position, normal] = [new Float64Array(3), new Float64Array(3)];
  surfacePointInto(position, normal, 0, shape, shape.centerX + r * Math.cos(best.angle), r * Math.sin(best.angle));
  const [x = 0, y = 0, z = 0] = position;
  return { value: best.value, error: error + QUADRATURE * Math.abs(best.value), position: [x, y, z] };
}

/**
 * Statistics over the clear aperture, weighted by the curved surface's area.
 *
 *     mean = ∫ f dA / ∫ dA,   dA = r √(1 + z′²) dr dθ
 *
 * Gauss–Legendre in radius and even azimuths integrate the series and its square exactly; minimum and
 * maximum are climbed to on the series itself. Error: that of the field, carried through.
 *
 * @throws RangeError if the outline cuts into the clear aperture (see hasRoundAperture): then the values on a
 * face's points and their own statistics are the way
 */
export function fieldStatistics(shape: MirrorShape, field: SmoothField): FieldStatistics {
  if (!hasRoundAperture(shape)) throw new RangeError('expected a round clear aperture; found one cut by a hexagon');
  const grid = sample(shape, field.series);
  const { values, areas, radii, edge } = grid;
  const isEdge = (o: number): boolean => o % radii.length >= edge;
  let [area, sum, edgeArea, edgeSum, squares] = [0, 0, 0, 0, 0];
  for (let o = 0; o < values.length; o++) {
    area += areas[o]!;
    sum += areas[o]! * values[o]!;
    if (!isEdge(o)) continue;
    edgeArea += areas[o]!;
    edgeSum += areas[o]! * values[o]!;
  }
  const mean = sum / area;
  for (let o = 0; o < values.length; o++) squares += areas[o]! * (values[o]! - mean) ** 2;
  const minimum = extremeOf(shape, field, grid, -1);
  const maximum = extremeOf(shape, field, grid, 1);
  const span = maximum.value + minimum.value;
  const ratio = (value: number, by: number): number => (by > 0 ? value / by : 0);
  const overMean = (value: number): Estimate => ({
    value: ratio(value, mean),
    // neither numerator nor mean is off by more than the field
    error: ratio(field.error * (1 + ratio(value, mean)), mean) + QUADRATURE,
  });
  return {
    mean: { value: mean, error: field.error + QUADRATURE * Math.abs(mean) },
    minimum,
    maximum,
    uniformity: {
      value: ratio(maximum.value - minimum.value, span),
      error: ratio(2 * (maximum.value * minimum.error + minimum.value * maximum.error), span * span) + QUADRATURE,
    },
    rms: overMean(Math.sqrt(squares / area)),
    edgeRatio: overMean(edgeSum / edgeArea),
  };
}
