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
  return own.cosine.map((c, m) => {
    const square = c * c + own.sine[m]! ** 2;
    const mirroredSquare = mirrored.cosine[m]! ** 2 + mirrored.sine[m]! ** 2;
    return Math.sqrt(square) + Math.sqrt(mirroredSquare);
  });
}

/**
 * Harmonics beyond the last, and those that pass for lower ones at the nodes.
 *
 *     Σ_{m≤M} |Q_m| (c_{N−m} + c_{N+m} + …) + Σ_{m>M} |Q_m| c_m
 */
function azimuthError(tail: Tail, sizes: Float64Array, azimuthCount: number): number {
  if (!Number.isFinite(tail.sum)) return Infinity;
  const reach = sizes.length;
  // from the second turn on, what passes is about the same for all m: the largest of it
  let farther = 0;
  for (let n = 2 * azimuthCount; n <= 3 * azimuthCount; n += azimuthCount) farther += 2 * tailTerm(tail, n - tail.last);
  let error = 0;
  for (let m = 0; m <= tail.last; m++) {
    error += sizes[m]! * (tailTerm(tail, azimuthCount - m) + tailTerm(tail, azimuthCount + m) + farther);
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

/** Radial terms beyond the last; sizes of the charges' sums by harmonic. */
function radialTail({ counts: { radialCount: K }, cosine, sine, steepest }: ColumnSeries, sizes: Float64Array): Tail {
  const terms = new Float64Array(K);
  for (let o = 0, m = 0; o < cosine.length; o += K, m++) {
    for (let k = 0; k < K; k++) {
      const square = cosine[o + k]! ** 2 + (sine ? sine[o + k]! ** 2 : 0);
      terms[k]! += sizes[m]! * Math.sqrt(square);
    }
  }
  return tailOf(terms, 2 * K, steepest);
}

/** Bound of the error that the series of a class leaves anywhere on the face. */
export function classError(column: ColumnSeries, one: TwinClass): ClassError {
  const { amplitude, counts, steepest } = column;
  const tail = tailOf(amplitude, counts.azimuthCount, steepest);
  const isAlone = one.members.length === 1;
  const reach = isAlone ? tail.last + 1 : Math.max(REACH * (tail.last + 1), PERIODS * one.members.length);
  const sizes = isAlone ? new Float64Array(reach).fill(massOf(one)) : chargeSizes(one, reach);
  const radial = radialTail(column, sizes);
  return {
    // alone: the terms beyond the last, and as much again where they pass for lower ones at the nodes
    azimuth: SAFETY * (isAlone ? 2 * massOf(one) * tail.sum : azimuthError(tail, sizes, counts.azimuthCount)),
    radius: SAFETY * 2 * radial.sum,
    azimuthPower: tail.apparent - 1,
    radiusPower: radial.apparent - 1,
  };
}

/** Mass that a class evaporates, kg. */
export function massOf({ masses, mirroredMasses }: TwinClass): number {
  let sum = 0;
  for (const mass of masses) sum += mass;
  for (const mass of mirroredMasses) sum += mass;
  return sum;
}
