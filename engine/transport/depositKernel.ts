/** The hot loop behind one interface: plain TypeScript here, SIMD in simd/. */
import type { EmissionLaw } from '../emission/emissionLaw.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { addDepositInto } from './depositKernels.ts';
import { addThroughGasInto, cutByShieldInto } from './passage.ts';

/** Points of one run: their 24 kB stay in the first-level cache while the sub-sources pass over them. */
export const RUN = 512;

/** Mixes that a kernel sums at a time. */
export const MIXES = 4;

/**
 * Sums deposits of sub-sources over one run of points at a time. Not reentrant: one thread, one run.
 *
 * The SIMD kernel gives the bits of the plain one, but for fractional cosine powers and gas (see simd/simdKernel.ts)
 * and in single precision.
 */
export interface DepositKernel {
  readonly name: 'TypeScript' | 'SIMD' | 'SIMD, single';
  /**
   * Takes up points begin … end, at most RUN, and zeroes the sum.
   *
   * @param perFreePath 1/λ of the gas, 1/m: deposits are multiplied by exp(−r/λ); 0, unless given, is vacuum
   */
  load(points: OrientedPoints, begin: number, end: number, perFreePath?: number): void;
  /** Zeroes the sum. */
  clear(): void;
  /** Adds the deposit of sub-source j per kilogram of its filament, 1/m², as if it had no shield. */
  add(source: FilamentSource, j: number): void;
  /** The same for all sub-sources of a filament, one after the other. */
  addAll(source: FilamentSource): void;
  /**
   * Adds the deposit of sub-source j where the filament's shield, if any, lets it through.
   *
   * @param hidden [points of the run] if given, overwritten: 1 where the shield took a deposit, else 0
   */
  addPastShield(source: FilamentSource, j: number, hidden?: Uint8Array): void;
  /** Writes the sum of the run's points into the start of `out`. */
  readInto(out: Float64Array): void;
  /** Zeroes the mixes: weighted sums of sums over one run. */
  clearMixes(): void;
  /** Adds the sum, times a factor, to mix m < MIXES. */
  addToMix(m: number, factor: number): void;
  /** Writes mix m into the start of `out`. */
  readMixInto(out: Float64Array, m: number): void;
}

/**
 * How far the deposit of a filament in single precision may be off, relative to itself.
 *
 * @see tests/engine/transport/singleKernel.test.ts, which measures it: worst below 6e-7, cos³ 7.3e-7, cos¹² 2e-6
 */
export function singleError(law: EmissionLaw): number {
  return 1e-6 + 1.5e-7 * (law.kind === 'cosine' ? law.power : 0);
}

/** Marks the points from which a shield took something. */
export function markCutInto(hidden: Uint8Array, cut: ArrayLike<number>, count: number): Uint8Array {
  for (let i = 0; i < count; i++) hidden[i] = cut[i] === 0 ? 0 : 1;
  return hidden;
}

/**
 * The readable kernel, and the one where SIMD is missing.
 *
 * @param most points that it will take up at a time
 */
export function createPlainKernel(most = RUN): DepositKernel {
  const sum = new Float64Array(most);
  const mixes = Array.from({ length: MIXES }, () => new Float64Array(most));
  const side = new Float64Array(most);
  const cut = new Float64Array(most);
  let run:
    | { readonly points: OrientedPoints; readonly begin: number; readonly end: number; readonly perFreePath: number }
    | undefined;
  const addInto = (source: FilamentSource, j: number, isShielded: boolean): void => {
    if (!run) return;
    const { points, begin, end, perFreePath } = run;
    if (!isShielded && perFreePath === 0) return addDepositInto(sum, points, begin, end, source, j);
    side.fill(0);
    addDepositInto(side, points, begin, end, source, j);
    if (isShielded) cutByShieldInto(cut, side, points, begin, end, source, j);
    if (perFreePath > 0) addThroughGasInto(sum, side, points, begin, end, source, j, perFreePath);
    else for (let i = 0; i < sum.length; i++) sum[i]! += side[i]!;
  };
  return {
    name: 'TypeScript',
    load(points, begin, end, perFreePath = 0) {
      run = { points, begin, end, perFreePath };
      sum.fill(0);
    },
    clear() {
      sum.fill(0);
    },
    add(source, j) {
      addInto(source, j, false);
    },
    addAll(source) {
      for (let j = 0; j < source.count; j++) addInto(source, j, false);
    },
    addPastShield(source, j, hidden) {
      addInto(source, j, source.shield !== null);
      if (!run || !hidden) return;
      if (source.shield) markCutInto(hidden, cut, run.end - run.begin);
      else hidden.fill(0, 0, run.end - run.begin);
    },
    readInto(out) {
      if (run) out.set(sum.subarray(0, run.end - run.begin));
    },
    clearMixes() {
      for (const mix of mixes) mix.fill(0);
    },
    addToMix(m, factor) {
      const mix = mixes[m]!;
      for (let i = 0; i < mix.length; i++) mix[i]! += sum[i]! * factor;
    },
    readMixInto(out, m) {
      if (run) out.set(mixes[m]!.subarray(0, run.end - run.begin));
    },
  };
}
