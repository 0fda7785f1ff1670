/** Ring layouts judged many thousand times a second: radial means exactly, the ripple around them by its bound. */
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { FieldKernel } from './fieldKernel.ts';
import { FIRST_TERM, foreseenDecay } from './nodeCounts.ts';
import { hasRoundAperture } from './fieldStatistics.ts';
import { borderPoints, steepestDecay } from './kinks.ts';
import { radialMeans } from './radialMean.ts';
import { createMeanRoom, ringMeanInto, type MeanErrors, type MeanRoom } from './ringMean.ts';
import type { RingPattern } from './ringPattern.ts';
import { isTurnable } from './rotation.ts';
import { createTrialRoom, emptyResult, judge, type TrialResult } from './trialProfile.ts';
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

/** Index of the first number of the list that is large enough, or of the last. */
function firstAtLeast(list: readonly number[], wanted: number): number {
  let i = 0;
  while (i + 1 < list.length && list[i]! < wanted) i++;
  return i;
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
  const room = createTrialRoom(shape, MOST_RADII);
  const border = borderPoints(shape);
  const means = radialMeans(MOST_RADII, shape.holeRadius, shape.rimRadius);
  const rooms: MeanRoom[] = [];
  const placed = new WeakMap<RingPattern, Placed>();
  const errors: MeanErrors = { azimuth: 0, radius: 0, ripple: 0 };
  const result = emptyResult();

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
    const steepest = steepestDecay(source, border);
    for (;;) {
      const meanRoom = roomOf(k, n);
      ringMeanInto(meanRoom, errors, source, kernel, perFreePath, ring.count, SAFETY, steepest);
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
    judge(room, count, result);
    return result;
  };

  return { evaluate };
}
