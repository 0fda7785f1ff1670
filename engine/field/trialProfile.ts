/** A radial profile judged: mean, extremes and evenness from its coefficients, allocating nothing. */
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { chebyshevDerivativesInto, chebyshevInto, unitPlace } from './chebyshev.ts';
import { radialRule, type RadialRule } from './radialRule.ts';

/** Newton steps from the best radius of the rule. */
const CLIMB = 6;

/**
 * Statistics of the azimuthal mean over the clear aperture.
 *
 * The field itself is within `ripple` of that mean, and the mean within `error` of what is said here:
 * minimum and maximum of the field are off by at most their sum.
 */
export interface TrialResult {
  /** kg/m² */
  mean: number;
  minimum: number;
  maximum: number;
  /** where they are, m */
  minimumRadius: number;
  maximumRadius: number;
  /** (max − min)/(max + min), 1 */
  uniformity: number;
  /** standard deviation over mean, 1 */
  rms: number;
  /** mean over the outermost 2 % of the clear radius over mean, 1 */
  edgeRatio: number;
  /** bound of the azimuthal mean's error, kg/m²; Infinity where a ring stands too close for any nodes here */
  error: number;
  /** bound of the difference between field and azimuthal mean, kg/m² */
  ripple: number;
}

/** A result to be filled in. */
export function emptyResult(): TrialResult {
  return {
    mean: 0,
    minimum: 0,
    maximum: 0,
    minimumRadius: 0,
    maximumRadius: 0,
    uniformity: 0,
    rms: 0,
    edgeRatio: 0,
    error: 0,
    ripple: 0,
  };
}

/** What stays the same from one evaluation to the next. */
export interface TrialRoom {
  /** radii between which the polynomials stand, m */
  readonly inner: number;
  readonly outer: number;
  /** room for coefficients */
  readonly most: number;
  readonly rule: RadialRule;
  /** [radii] areas, relative to the clear one, 1 */
  readonly areas: Float64Array;
  readonly edgeArea: number;
  /** [radii · most] polynomials at the radii */
  readonly basis: Float64Array;
  /** [most] coefficients of the sum, kg/m² */
  readonly sum: Float64Array;
  /** [radii] */
  readonly profile: Float64Array;
  readonly derivatives: Float64Array;
  readonly low: number;
  readonly high: number;
}

/** Room for profiles of up to `most` coefficients over a mirror. */
export function createTrialRoom(shape: MirrorShape, most: number): TrialRoom {
  const rule = radialRule(shape, most);
  const { radii, weights, edge } = rule;
  const areas = new Float64Array(radii.length);
  let area = 0;
  radii.forEach((r, i) => {
    areas[i] = weights[i]! * rule.areaAt(r);
    area += areas[i]!;
  });
  const basis = new Float64Array(radii.length * most);
  const place = (r: number): number => unitPlace(r, shape.holeRadius, shape.rimRadius);
  radii.forEach((r, i) => chebyshevInto(basis, i * most, most, place(r)));
  for (let i = 0; i < areas.length; i++) areas[i]! /= area;
  return {
    inner: shape.holeRadius,
    outer: shape.rimRadius,
    most,
    rule,
    areas,
    edgeArea: areas.subarray(edge).reduce((all, one) => all + one, 0),
    basis,
    sum: new Float64Array(most),
    profile: new Float64Array(radii.length),
    derivatives: new Float64Array(3 * most),
    low: place(shape.clearInnerRadius),
    high: place(shape.clearOuterRadius),
  };
}

/** Profile at the rule's radii from the first `count` coefficients of the sum. */
function fillProfile({ profile, basis, sum, most }: TrialRoom, count: number): void {
  for (let i = 0; i < profile.length; i++) {
    let value = 0;
    for (let k = 0, o = i * most; k < count; k++) value += basis[o + k]! * sum[k]!;
    profile[i] = value;
  }
}

/** Fills in mean, RMS and edge ratio of the profile. */
function average({ profile, areas, edgeArea, rule: { edge } }: TrialRoom, result: TrialResult): void {
  let [mean, rim, squares] = [0, 0, 0];
  for (let i = 0; i < profile.length; i++) {
    mean += areas[i]! * profile[i]!;
    if (i >= edge) rim += areas[i]! * profile[i]!;
  }
  for (let i = 0; i < profile.length; i++) squares += areas[i]! * (profile[i]! - mean) ** 2;
  result.mean = mean;
  result.rms = mean > 0 ? Math.sqrt(squares) / mean : 0;
  result.edgeRatio = mean > 0 ? rim / edgeArea / mean : 0;
}

/** Extreme of sign·profile from the best radius of the rule, by Newton's method; its place on [−1, 1] is left in `room.derivatives[0]`. */
function climb(room: TrialRoom, count: number, sign: number, best: number): number {
  const { sum, derivatives, low, high } = room;
  let x = unitPlace(room.rule.radii[best]!, room.inner, room.outer);
  let [value, place] = [-Infinity, x];
  for (let step = 0; step < CLIMB; step++) {
    chebyshevDerivativesInto(derivatives, count, x);
    let [f, d, dd] = [0, 0, 0];
    for (let k = 0; k < count; k++) {
      f += sign * sum[k]! * derivatives[3 * k]!;
      d += sign * sum[k]! * derivatives[3 * k + 1]!;
      dd += sign * sum[k]! * derivatives[3 * k + 2]!;
    }
    if (!(f > value)) break;
    value = f;
    place = x;
    x = Math.min(high, Math.max(low, dd < 0 ? x - d / dd : x));
    if (x === place) break;
  }
  derivatives[0] = place;
  return sign * value;
}

/** Index of the largest value of sign·profile. */
function bestOf(profile: Float64Array, sign: number): number {
  let best = 0;
  for (let i = 1; i < profile.length; i++) if (sign * profile[i]! > sign * profile[best]!) best = i;
  return best;
}

/** Fills in all but the errors from the first `count` coefficients of the sum. */
export function judge(room: TrialRoom, count: number, result: TrialResult): void {
  fillProfile(room, count);
  average(room, result);
  result.minimum = climb(room, count, -1, bestOf(room.profile, -1));
  result.minimumRadius = radiusAt(room, room.derivatives[0]!);
  result.maximum = climb(room, count, 1, bestOf(room.profile, 1));
  result.maximumRadius = radiusAt(room, room.derivatives[0]!);
  const span = result.maximum + result.minimum;
  result.uniformity = span > 0 ? (result.maximum - result.minimum) / span : 0;
}

/** Radius at a place on [−1, 1], m. */
function radiusAt({ inner, outer }: TrialRoom, x: number): number {
  return inner + ((x + 1) * (outer - inner)) / 2;
}
