/** How far a column's series, summed over its class, may be from the field. */
import type { ColumnSeries } from './columnSeries.ts';
import { tailOf, tailTerm, type Tail } from './decay.ts';
import { chargeSums, type TwinClass } from './twins.ts';

/** Bounds of the two ways in which a class's series leaves something out, kg/m². */
export interface ClassError {
  readonly azimuth: number;
  readonly radius: number;
  /** powers of the number of nodes with which they fall for now */
  readonly azimuthPower: number;
  readonly radiusPower: number;
}

/** The charges' Fourier sums are known up to this many times the column's harmonics. */
const REACH = 4;
/** … and over this many periods of a full ring. */
const PERIODS = 3;
/** The tail's model may be short by this factor: measured on a hundred plants (tests/engine/field). */
const SAFETY = 1.5;

/** |Σ q e^{imφ}| of a class for m = 0 … count − 1, kg; the mirrored ones added by size. */
function chargeSizes({ angles, masses, mirroredAngles, mirroredMasses }: TwinClass, count: number): Float64Array {
  const own = chargeSums(angles, masses, count);
  const mirrored = chargeSums(mirroredAngles, mirroredMasses, count);
  return own.cosine.map((c, m) => Math.hypot(c, own.sine[m]!) + Math.hypot(mirrored.cosine[m]!, mirrored.sine[m]!));
}

/**
 * Harmonics beyond the last, and those that pass for lower ones at the nodes.
 *
 *     Σ_{m≤M} |Q_m| (c_{N−m} + c_{N+m} + …) + Σ_{m>M} |Q_m| c_m
 */
function azimuthError(tail: Tail, sizes: Float64Array, azimuthCount: number): number {
  if (!Number.isFinite(tail.sum)) return Infinity;
  const reach = sizes.length;
  let error = 0;
  for (let m = 0; m <= tail.last; m++) {
    let passing = 0;
    for (let n = azimuthCount; n <= 3 * azimuthCount; n += azimuthCount) {
      passing += tailTerm(tail, n - m) + tailTerm(tail, n + m);
    }
    error += sizes[m]! * passing;
  }
  for (let m = tail.last + 1; m < reach; m++) error += sizes[m]! * tailTerm(tail, m);
  return error + meanOfSecondHalf(sizes) * tail.sum * (tail.last / reach) ** (tail.power - 1);
}

/** Mean size of the charges' sums beyond those that are looked at one by one: a full ring repeats itself. */
function meanOfSecondHalf(sizes: Float64Array): number {
  const half = sizes.length >> 1;
  let sum = 0;
  for (let m = half; m < sizes.length; m++) sum += sizes[m]!;
  return sum / (sizes.length - half);
}

/** Radial terms beyond the last. */
function radialTail({ counts: { radialCount: K }, cosine, sine, steepest }: ColumnSeries, sizes: Float64Array): Tail {
  const terms = new Float64Array(K);
  for (let o = 0, m = 0; o < cosine.length; o += K, m++) {
    for (let k = 0; k < K; k++) {
      const size = sine ? Math.hypot(cosine[o + k]!, sine[o + k]!) : Math.abs(cosine[o + k]!);
      terms[k]! += sizes[m]! * size;
    }
  }
  return tailOf(terms, 2 * K, steepest);
}

/** Bound of the error that the series of a class leaves anywhere on the face. */
export function classError(column: ColumnSeries, one: TwinClass): ClassError {
  const tail = tailOf(column.amplitude, column.counts.azimuthCount, column.steepest);
  const reach = Math.max(REACH * (tail.last + 1), PERIODS * one.members.length);
  const sizes = chargeSizes(one, reach);
  const radial = radialTail(column, sizes);
  return {
    azimuth: SAFETY * azimuthError(tail, sizes, column.counts.azimuthCount),
    // the terms beyond the last, and as much again where they pass for lower ones at the nodes
    radius: SAFETY * 2 * radial.sum,
    azimuthPower: tail.apparent - 1,
    radiusPower: radial.apparent - 1,
  };
}
