/** A ring's azimuthal mean as radial coefficients, with bounds of its error and of the ripple around it. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { RUN } from '../transport/depositKernel.ts';
import { cosineHarmonicsInto, harmonicsOf } from './azimuthTransform.ts';
import { chebyshevTransform } from './chebyshev.ts';
import { tailOf, tailTerm } from './decay.ts';
import { faceNodes, type NodeCounts } from './faceNodes.ts';
import type { FieldKernel } from './fieldKernel.ts';

/** Nodes with room for everything that one evaluation writes. */
export interface MeanRoom {
  readonly counts: NodeCounts;
  readonly nodes: OrientedPoints;
  readonly transform: Float64Array;
  readonly values: Float64Array;
  readonly harmonics: Float64Array;
  readonly amplitude: Float64Array;
  /** [radialCount] coefficients of the azimuthal mean per kilogram, 1/m² */
  readonly coefficients: Float64Array;
  readonly sizes: Float64Array;
}

/** What a mean may be off, per kilogram of the ring, 1/m². */
export interface MeanErrors {
  /** bounds of the mean's error anywhere from too few azimuths and too few radii */
  azimuth: number;
  radius: number;
  /** bound of the field's difference from its azimuthal mean */
  ripple: number;
}

export function createMeanRoom(shape: MirrorShape, counts: NodeCounts): MeanRoom {
  const { radialCount, azimuthCount } = counts;
  const nodes = faceNodes(shape, counts, true);
  const harmonicCount = harmonicsOf(azimuthCount) + 1;
  return {
    counts,
    nodes,
    transform: chebyshevTransform(radialCount),
    values: new Float64Array(nodes.count),
    harmonics: new Float64Array(harmonicCount * radialCount),
    amplitude: new Float64Array(harmonicCount),
    coefficients: new Float64Array(radialCount),
    sizes: new Float64Array(radialCount),
  };
}

function depositInto(room: MeanRoom, source: FilamentSource, kernel: FieldKernel, perFreePath: number): void {
  const { nodes, values } = room;
  for (let begin = 0; begin < nodes.count; begin += RUN) {
    const end = Math.min(nodes.count, begin + RUN);
    kernel.load(nodes, begin, end, perFreePath);
    kernel.addAll(source);
    kernel.readInto(nodes.count <= RUN ? values : values.subarray(begin, end));
  }
}

/** Values at the nodes as those of an even function counted twice, ends once. */
function doubleInner({ values, counts: { radialCount, azimuthCount } }: MeanRoom): void {
  for (let o = radialCount; o < (azimuthCount / 2) * radialCount; o++) values[o]! *= 2;
}

function measureHarmonics({ harmonics, amplitude, counts: { radialCount } }: MeanRoom): void {
  amplitude.fill(0);
  for (let m = 0, o = 0; m < amplitude.length; m++) {
    for (let k = 0; k < radialCount; k++, o++) {
      const size = Math.abs(harmonics[o]!);
      if (size > amplitude[m]! || Number.isNaN(size)) amplitude[m] = size;
    }
  }
}

function transformMean({ harmonics, coefficients, sizes, transform, counts: { radialCount: K } }: MeanRoom): void {
  for (let k = 0; k < K; k++) {
    let sum = 0;
    for (let j = 0; j < K; j++) sum += transform[k * K + j]! * harmonics[j]!;
    coefficients[k] = sum;
    sizes[k] = Math.abs(sum);
  }
}

/**
 * Works out a ring from one of its filaments, at azimuth 0 and even in it.
 *
 *     f₀(r) = (1/2π) ∮ f dθ;   ripple = Σ_{l ≥ 1} c_{l·count}
 *
 * A ring of n equal filaments keeps the mean of one of them and, of its harmonics, those that n
 * divides. At N azimuths harmonics N, 2N, … pass for the mean.
 *
 * @param room coefficients are overwritten
 * @param errors overwritten
 * @param count n, filaments on the ring
 * @param safety factor on all bounds
 * @param steepest see kinks.ts
 */
export function ringMeanInto(
  room: MeanRoom,
  errors: MeanErrors,
  source: FilamentSource,
  kernel: FieldKernel,
  perFreePath: number,
  count: number,
  safety: number,
  steepest: number,
): void {
  const { counts, values, harmonics, amplitude, sizes } = room;
  const N = counts.azimuthCount;
  depositInto(room, source, kernel, perFreePath);
  doubleInner(room);
  cosineHarmonicsInto(harmonics, values, N, counts.radialCount);
  measureHarmonics(room);
  transformMean(room);
  const tail = tailOf(amplitude, N, steepest);
  errors.radius = safety * 2 * tailOf(sizes, 2 * counts.radialCount, steepest).sum;
  if (tail.sum === Infinity) {
    errors.azimuth = errors.ripple = Infinity;
    return;
  }
  let passing = 0;
  for (let l = 1; l <= 3; l++) passing += tailTerm(tail, l * N);
  let ripple = 0;
  for (let m = count; m <= 4 * Math.max(N, count); m += count) {
    ripple += m <= tail.last ? amplitude[m]! : tailTerm(tail, m);
  }
  // what lies beyond is less than the integral of the model over it
  const beyond = (tail.sum * (tail.last / (4 * Math.max(N, count))) ** (tail.power - 1)) / count;
  errors.azimuth = safety * passing;
  errors.ripple = safety * (ripple + beyond);
}
