/** Ring layouts judged many thousand times a second: radial means exactly, the ripple around them by its bound. */
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { chebyshevDerivativesInto, chebyshevInto, unitPlace } from './chebyshev.ts';
import type { FieldKernel } from './fieldKernel.ts';
import { FIRST_TERM, foreseenDecay } from './nodeCounts.ts';
import { radiiOf, type RadialRule } from './fieldStatistics.ts';
import { hasRoundAperture } from './fieldStatistics.ts';
import { radialMeans } from './radialMean.ts';
import { createMeanRoom, ringMeanInto, type MeanErrors, type MeanRoom } from './ringMean.ts';
import type { RingPattern } from './ringPattern.ts';
import { isTurnable } from './rotation.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';

/** A ring to try. Fields may be changed between evaluations. */
export interface TrialRing {
  readonly pattern: RingPattern;
  /** filaments, evenly spaced */
  count: number;
  /** distance of their middles from the axis, m */
  radius: number;
  /** height of their middles above the vertex, m */
  height: number;
  /** kg that each evaporates */
  charge: number;
}

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

export interface RingTrial {
  /** Judges a layout; the result is overwritten by the next call. */
  readonly evaluate: (rings: readonly TrialRing[]) => TrialResult;
}

export interface RingTrialOptions {
  /** wanted bound of the error over the mean, 1 */
  readonly wantedError?: number;
  /** inverse mean free path, 1/m; 0 is vacuum */
  readonly perFreePath?: number;
}

const DEFAULT_WANTED_ERROR = 1e-3;
/** Numbers of nodes to choose from. */
const RADII = [8, 11, 16, 28] as const;
const AZIMUTHS = [24, 48, 96, 192] as const;
const MOST_RADII = RADII.at(-1)!;
/** Shares of the wanted error. */
const AZIMUTH_SHARE = 0.5;
/** The logarithm in the open coil's law asks for more azimuths than the distance does. */
const COIL_AZIMUTHS = 1;
/** The tail's model may be short by this factor, as in seriesError.ts. */
const SAFETY = 1.5;
/** Newton steps from the best radius of the grid. */
const CLIMB = 6;

/** Index of the first number of the list that is large enough, or of the last. */
function firstAtLeast(list: readonly number[], wanted: number): number {
  let i = 0;
  while (i + 1 < list.length && list[i]! < wanted) i++;
  return i;
}

/** What stays the same from one evaluation to the next. */
interface TrialRoom {
  readonly rule: RadialRule;
  /** [radii] areas, relative to the clear one, 1 */
  readonly areas: Float64Array;
  readonly edgeArea: number;
  /** [radii · MOST_RADII] */
  readonly basis: Float64Array;
  /** [MOST_RADII] coefficients of the sum, kg/m² */
  readonly sum: Float64Array;
  /** [radii] */
  readonly profile: Float64Array;
  readonly derivatives: Float64Array;
  readonly low: number;
  readonly high: number;
}

function createTrialRoom(shape: MirrorShape): TrialRoom {
  const rule = radiiOf(shape, MOST_RADII);
  const { radii, weights, edge } = rule;
  const areas = new Float64Array(radii.length);
  let area = 0;
  radii.forEach((r, i) => {
    areas[i] = weights[i]! * rule.areaAt(r);
    area += areas[i]!;
  });
  const basis = new Float64Array(radii.length * MOST_RADII);
  const place = (r: number): number => unitPlace(r, shape.holeRadius, shape.rimRadius);
  radii.forEach((r, i) => chebyshevInto(basis, i * MOST_RADII, MOST_RADII, place(r)));
  for (let i = 0; i < areas.length; i++) areas[i]! /= area;
  return {
    rule,
    areas,
    edgeArea: areas.subarray(edge).reduce((all, one) => all + one, 0),
    basis,
    sum: new Float64Array(MOST_RADII),
    profile: new Float64Array(radii.length),
    derivatives: new Float64Array(3 * MOST_RADII),
    low: place(shape.clearInnerRadius),
    high: place(shape.clearOuterRadius),
  };
}

/** A pattern moved out to its ring; one for each pattern, filled anew each time. */
type Placed = FilamentSource;

function placeInto(placed: Placed, { pattern: { source }, radius, height }: TrialRing): Placed {
  const { position } = source;
  for (let o = 0; o < position.length; o += 3) {
    placed.position[o] = position[o]! + radius;
    placed.position[o + 1] = position[o + 1]!;
    placed.position[o + 2] = position[o + 2]! + height;
  }
  return placed;
}

/** Profile at the rule's radii from the first `count` coefficients of the sum. */
function fillProfile({ profile, basis, sum }: TrialRoom, count: number): void {
  for (let i = 0; i < profile.length; i++) {
    let value = 0;
    for (let k = 0, o = i * MOST_RADII; k < count; k++) value += basis[o + k]! * sum[k]!;
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
function climb(room: TrialRoom, count: number, sign: number, best: number, shape: MirrorShape): number {
  const { sum, derivatives, low, high } = room;
  let x = unitPlace(room.rule.radii[best]!, shape.holeRadius, shape.rimRadius);
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

/**
 * Makes an evaluator of ring layouts over one mirror; nothing is allocated from one evaluation to the next
 * but a few numbers.
 *
 * @throws RangeError if the mirror is off its axis or its clear aperture is not round: rings have no simple mean there
 */
export function createRingTrial(
  shape: MirrorShape,
  kernel: FieldKernel,
  { wantedError = DEFAULT_WANTED_ERROR, perFreePath = 0 }: RingTrialOptions = {},
): RingTrial {
  if (!isTurnable(shape)) throw new RangeError('expected a mirror on its own axis');
  if (!hasRoundAperture(shape)) throw new RangeError('expected a round clear aperture; found one cut by a hexagon');
  const room = createTrialRoom(shape);
  const means = radialMeans(MOST_RADII, shape.holeRadius, shape.rimRadius);
  const rooms: MeanRoom[] = [];
  const placed = new WeakMap<RingPattern, Placed>();
  const errors: MeanErrors = { azimuth: 0, radius: 0, ripple: 0 };
  const result: TrialResult = {
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

  const placedOf = (ring: TrialRing): Placed => {
    let found = placed.get(ring.pattern);
    if (!found) {
      found = { ...ring.pattern.source, position: new Float64Array(3 * ring.pattern.source.count) };
      placed.set(ring.pattern, found);
    }
    return placeInto(found, ring);
  };

  const roomOf = (k: number, n: number): MeanRoom => {
    const i = k * AZIMUTHS.length + n;
    return (rooms[i] ??= createMeanRoom(shape, { radialCount: RADII[k]!, azimuthCount: AZIMUTHS[n]! }));
  };

  /** Works out one ring on as many nodes as it takes; answers with their room. */
  const solveRing = (ring: TrialRing): MeanRoom => {
    const source = placedOf(ring);
    const { perHarmonic, perTerm } = foreseenDecay(source, shape);
    const needed = Math.log(FIRST_TERM / wantedError);
    let k = firstAtLeast(RADII, needed / perTerm);
    let n = firstAtLeast(AZIMUTHS, needed / perHarmonic);
    if (source.law.kind === 'coil') n = Math.max(n, COIL_AZIMUTHS);
    for (;;) {
      const meanRoom = roomOf(k, n);
      ringMeanInto(meanRoom, errors, source, kernel, perFreePath, ring.count, SAFETY);
      let mean = 0;
      for (let i = 0; i < meanRoom.coefficients.length; i++) mean += means[i]! * meanRoom.coefficients[i]!;
      const isShortInAzimuth = !(errors.azimuth <= AZIMUTH_SHARE * wantedError * mean) && n + 1 < AZIMUTHS.length;
      const isShortInRadius = !(errors.radius <= (1 - AZIMUTH_SHARE) * wantedError * mean) && k + 1 < RADII.length;
      if (!isShortInAzimuth && !isShortInRadius) return meanRoom;
      if (isShortInAzimuth) n++;
      if (isShortInRadius) k++;
    }
  };

  const evaluate = (rings: readonly TrialRing[]): TrialResult => {
    const { sum } = room;
    sum.fill(0);
    result.error = result.ripple = 0;
    let count = 1;
    for (const ring of rings) {
      const mass = ring.count * ring.charge;
      if (mass === 0) continue;
      const { coefficients } = solveRing(ring);
      for (let k = 0; k < coefficients.length; k++) sum[k]! += mass * coefficients[k]!;
      count = Math.max(count, coefficients.length);
      result.error += mass * (errors.azimuth + errors.radius);
      result.ripple += mass * errors.ripple;
    }
    fillProfile(room, count);
    average(room, result);
    const radiusAt = (x: number): number => shape.holeRadius + ((x + 1) * (shape.rimRadius - shape.holeRadius)) / 2;
    result.minimum = climb(room, count, -1, bestOf(room.profile, -1), shape);
    result.minimumRadius = radiusAt(room.derivatives[0]!);
    result.maximum = climb(room, count, 1, bestOf(room.profile, 1), shape);
    result.maximumRadius = radiusAt(room.derivatives[0]!);
    const span = result.maximum + result.minimum;
    result.uniformity = span > 0 ? (result.maximum - result.minimum) / span : 0;
    return result;
  };

  return { evaluate };
}
