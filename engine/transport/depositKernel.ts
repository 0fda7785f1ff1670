/** The hot loop behind one interface: plain TypeScript here, SIMD in simd/. Both give the same bits. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { addDepositInto } from './depositKernels.ts';

/** Points of one run: their 24 kB stay in the first-level cache while the sub-sources pass over them. */
export const RUN = 512;

/** Sums deposits of sub-sources over one run of points at a time. Not reentrant: one thread, one run. */
export interface DepositKernel {
  readonly name: 'TypeScript' | 'SIMD';
  /** Takes up points begin … end, at most RUN, and zeroes the sum. */
  load(points: OrientedPoints, begin: number, end: number): void;
  /** Zeroes the sum. */
  clear(): void;
  /** Adds the deposit of sub-source j per kilogram of its filament, 1/m². */
  add(source: FilamentSource, j: number): void;
  /** Writes the sum of the run's points into the start of `out`. */
  readInto(out: Float64Array): void;
}

/**
 * The readable kernel, and the one where SIMD is missing.
 *
 * @param most points that it will take up at a time
 */
export function createPlainKernel(most = RUN): DepositKernel {
  const sum = new Float64Array(most);
  let run: { readonly points: OrientedPoints; readonly begin: number; readonly end: number } | undefined;
  return {
    name: 'TypeScript',
    load(points, begin, end) {
      run = { points, begin, end };
      sum.fill(0);
    },
    clear() {
      sum.fill(0);
    },
    add(source, j) {
      if (run) addDepositInto(sum, run.points, run.begin, run.end, source, j);
    },
    readInto(out) {
      if (run) out.set(sum.subarray(0, run.end - run.begin));
    },
  };
}
