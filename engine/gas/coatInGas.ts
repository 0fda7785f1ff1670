/** A coat laid through residual gas: the straight part by exact sums, the scattered part by counted atoms. */
import type { PreparedFace } from '../coat/preparedFace.ts';
import { massOnFace, statisticsOf, type Statistics } from '../coat/statistics.ts';
import type { ScatterResult } from './scatter.ts';
import type { Counted } from './scatterSummary.ts';
import { smoothField, type SmoothField } from './smoothField.ts';
import { facePlace } from './tallyGrid.ts';

export interface CoatInGasInput {
  readonly prepared: Pick<PreparedFace, 'face' | 'weights' | 'mixed'>;
  /**
   * [points] kg/m² that arrive on straight lines of sight, each weighted by e^(−r·perFreePath), before sticking
   */
  readonly ballistic: Float64Array;
  readonly scattered: ScatterResult;
  /** as in the design: kg/m³, and shares */
  readonly film: { readonly density: number; readonly sticking: number; readonly tolerance: number };
}

/** The part of the errors that counted atoms bring; those of the quadrature are in `statistics`. */
export interface StandardErrors {
  readonly mean: number;
  readonly minimum: number;
  readonly maximum: number;
  readonly uniformity: number;
  readonly collection: number;
}

export interface CoatInGas {
  /** [points] m, both parts */
  readonly thickness: Float64Array;
  /** [points] m, what arrived scattered */
  readonly scatteredThickness: Float64Array;
  /** [points] m, standard error of the scattered part */
  readonly standardError: Float64Array;
  readonly statistics: Statistics;
  readonly standardErrors: StandardErrors;
  /** share of the coat on the whole face that arrived scattered, 1 */
  readonly scatteredShare: Counted;
  /** see SmoothField: well above 1 if the scattered part has features that it does not follow */
  readonly misfit: number;
}

/**
 * Adds the scattered part to the straight one and takes the statistics of both.
 *
 * Extremes found on a map with noise lie a little apart by it: their standard errors say how far.
 */
export function coatInGas({ prepared, ballistic, scattered, film }: CoatInGasInput): CoatInGas {
  const { face, weights, mixed } = prepared;
  const { problem, summary } = scattered;
  const { shape } = problem.scene;
  const { position, count } = face.points;
  const perAreal = film.sticking / film.density;
  const field = smoothField(problem.grid, shape, summary.cells.scattered, summary.cells.scatteredError);
  const thickness = new Float64Array(count);
  const scatteredThickness = new Float64Array(count);
  const standardError = new Float64Array(count);
  const meanTerms = new Float64Array(field.termCount);
  const terms = new Float64Array(field.termCount);
  const { fine, fineTotal } = weights.clear;
  for (let i = 0; i < count; i++) {
    const place = facePlace(shape, position[3 * i]!, position[3 * i + 1]!);
    scatteredThickness[i] = Math.max(0, field.value(place)) * perAreal;
    field.termsInto(terms, place);
    standardError[i] = field.standardError(terms) * perAreal;
    thickness[i] = ballistic[i]! * perAreal + scatteredThickness[i]!;
    for (let k = 0; k < terms.length; k++) meanTerms[k]! += (fine[i]! / fineTotal) * terms[k]!;
  }
  const straight = massOnFace(weights, mixed, ballistic);
  const evaporated = problem.masses.reduce((sum, mass) => sum + mass, 0);
  const astray = summary.scatteredOnMirror;
  const collection = {
    value: (straight.value / evaporated + astray.value) * film.sticking,
    error: (straight.error / evaporated) * film.sticking,
  };
  const statistics = statisticsOf(face, weights, mixed, thickness, film.tolerance, collection);
  const onMirror = straight.value / evaporated + astray.value;
  return {
    thickness,
    scatteredThickness,
    standardError,
    statistics,
    standardErrors: {
      ...spanErrors(field, statistics, (x, y) => facePlace(shape, x, y), perAreal),
      mean: field.standardError(meanTerms) * perAreal,
      collection: astray.standardError * film.sticking,
    },
    scatteredShare: {
      value: onMirror > 0 ? astray.value / onMirror : 0,
      standardError: onMirror > 0 ? (astray.standardError * straight.value) / evaporated / onMirror ** 2 : 0,
    },
    misfit: field.misfit,
  };
}

/**
 * Standard errors at the extremes, and of their uniformity u = (b − a)/(b + a):
 *
 *     du = 2 (a db − b da) / (a + b)²
 */
function spanErrors(
  field: SmoothField,
  { minimum, maximum }: Statistics,
  placeOf: (x: number, y: number) => Parameters<SmoothField['value']>[0],
  perAreal: number,
): Pick<StandardErrors, 'minimum' | 'maximum' | 'uniformity'> {
  const low = field.termsInto(new Float64Array(field.termCount), placeOf(minimum.position[0], minimum.position[1]));
  const high = field.termsInto(new Float64Array(field.termCount), placeOf(maximum.position[0], maximum.position[1]));
  const [a, b] = [minimum.value, maximum.value];
  const span = (a + b) ** 2;
  const slope = high.map((value, k) => (span > 0 ? (2 * (a * value - b * low[k]!)) / span : 0));
  return {
    minimum: field.standardError(low) * perAreal,
    maximum: field.standardError(high) * perAreal,
    uniformity: field.standardError(slope) * perAreal,
  };
}
