/** The SIMD kernel: WebAssembly from assembly/, two points at a time in double precision, or four in single. */
import type { EmissionLaw } from '../../emission/emissionLaw.ts';
import type { FilamentSource, Shield } from '../../emission/filamentSource.ts';
import { createPlainKernel, markCutInto, MIXES, RUN, type DepositKernel } from '../depositKernel.ts';
import { isWholePower } from '../depositKernels.ts';
import type { OrientedPoints } from '../../geometry/orientedPoints.ts';
import { createRunStore, type PlacedRun } from './runStore.ts';
import { kernelsOf, startModule } from './wasmModule.ts';

export interface SimdOptions {
  /**
   * double: the bits of the plain kernel, but for fractional cosine powers n (within 3 + 1.5n units in the last place
   * of each term) and gas (within 3 units of each term; a factor below 2⁻¹⁰²¹ is 0).
   *
   * single: for dragging. Coordinates are rounded to 2⁻²⁴ of their distance from the middle of the run and terms to
   * about 1e-6 of their size (see tests/engine/transport/singleKernel.test.ts); sums are double.
   */
  readonly precision?: 'double' | 'single';
}

/** Sub-sources that are summed in single precision before they go into the doubles: 16 roundings of 2⁻²⁵ at most. */
const MOST_PENDING = 16;

/** Sub-sources that have room in the module's memory; SOURCES of assembly/layout.ts. */
const MOST_PLACED = 64;

/** Numbers of a sub-source there: place, axis, weight, power. */
const NUMBERS = 8;

/** The loops of addSources in assembly/laws.ts, in its order. */
const LAWS = ['isotropic', 'Knudsen', 'odd cosine', 'even cosine', 'cosine power', 'wire', 'coil'] as const;

/** The loop that a law runs in. */
function loopOf(law: EmissionLaw): (typeof LAWS)[number] {
  if (law.kind === 'table') throw new Error('measured tables are summed in TypeScript');
  if (law.kind !== 'cosine') return law.kind;
  if (law.power === 1) return 'Knudsen';
  if (!isWholePower(law.power)) return 'cosine power';
  return law.power % 2 === 1 ? 'odd cosine' : 'even cosine';
}

/** What a law multiplies weights by, and then divides them by, in the operation order of depositKernels.ts. */
function multiplierOf(law: EmissionLaw): number {
  if (law.kind === 'coil') return 2;
  return law.kind === 'cosine' && law.power !== 1 ? law.power + 1 : 1;
}
function divisorOf(law: EmissionLaw): number {
  switch (law.kind) {
    case 'isotropic':
      return 4 * Math.PI;
    case 'cosine':
      return law.power === 1 ? Math.PI : 2 * Math.PI;
    case 'wire':
      return Math.PI ** 2;
    case 'coil':
      return Math.PI ** 3;
    case 'table':
      return 1;
  }
}

/** Makes the SIMD kernel, or null where it cannot run: take createPlainKernel then. */
export function createSimdKernel({ precision = 'double' }: SimdOptions = {}): DepositKernel | null {
  const wasm = startModule();
  if (!wasm) return null;
  const isSingle = precision === 'single';
  const { buffer } = wasm.memory;
  const kernels = kernelsOf(wasm, isSingle);
  const store = createRunStore(buffer, wasm.RUNS.value, isSingle);
  const given = new Float64Array(buffer, wasm.SOURCES.value, MOST_PLACED * NUMBERS);
  const shield = new Float64Array(buffer, wasm.SHIELD.value, 4);
  const sum = new Float64Array(buffer, wasm.SUM.value, RUN);
  const mixes = new Float64Array(buffer, wasm.MIXES.value, MIXES * RUN);
  const sumBytes = Float64Array.BYTES_PER_ELEMENT * RUN;
  const cut = new (isSingle ? Float32Array : Float64Array)(buffer, wasm.CUT.value, RUN);
  const total = (isSingle ? wasm.PART : wasm.SUM).value;
  const plain = createPlainKernel();
  const tableSum = new Float64Array(RUN);
  let points: OrientedPoints | undefined;
  let [begin, end, bytes, perFreePath, pending] = [0, 0, 0, 0, 0];
  let run: PlacedRun = { at: wasm.RUNS.value, origin: [0, 0, 0] };

  const clear = (): void => {
    sum.fill(0);
    if (isSingle) wasm.clear(wasm.PART.value, bytes);
    pending = 0;
  };
  const flush = (): void => {
    if (pending > 0) wasm.addPart(bytes);
    pending = 0;
  };
  /** Writes sub-sources first … first + count − 1 into the module's memory. */
  const give = (source: FilamentSource, first: number, count: number): void => {
    const { law, position: p, axis: a, weight: w } = source;
    const [multiplier, divisor] = [multiplierOf(law), divisorOf(law)];
    const { origin } = run;
    const power = law.kind === 'cosine' ? law.power : 0;
    for (let j = first, o = 0; j < first + count; j++, o += NUMBERS) {
      given[o] = p[3 * j]! - origin[0];
      given[o + 1] = p[3 * j + 1]! - origin[1];
      given[o + 2] = p[3 * j + 2]! - origin[2];
      given[o + 3] = a[3 * j]!;
      given[o + 4] = a[3 * j + 1]!;
      given[o + 5] = a[3 * j + 2]!;
      given[o + 6] = (w[j]! * multiplier) / divisor;
      given[o + 7] = power;
    }
  };
  const addGiven = (source: FilamentSource, out: number, first: number, count: number): void => {
    const { law } = source;
    kernels.addSources(
      out,
      run.at,
      bytes,
      LAWS.indexOf(loopOf(law)),
      law.kind === 'cosine' ? law.power >> 1 : 0,
      first,
      count,
    );
  };
  const noteAdded = (count: number): void => {
    if (isSingle && (pending += count) === MOST_PENDING) flush();
  };
  /** Adds sub-sources first … first + count − 1, MOST_PLACED at most. */
  const addSimd = (source: FilamentSource, first: number, count: number): void => {
    give(source, first, count);
    for (let k = 0; k < count;) {
      const together = perFreePath > 0 ? 1 : Math.min(count - k, isSingle ? MOST_PENDING - pending : count);
      if (perFreePath > 0) {
        wasm.clear(wasm.SIDE.value, bytes);
        addGiven(source, wasm.SIDE.value, k, together);
        kernels.addThroughGas(total, run.at, bytes, perFreePath);
      } else addGiven(source, total, k, together);
      noteAdded(together);
      k += together;
    }
  };
  const addShielded = (source: FilamentSource, j: number, { direction, cosHalfAngle }: Shield): void => {
    give(source, j, 1);
    wasm.clear(wasm.SIDE.value, bytes);
    addGiven(source, wasm.SIDE.value, 0, 1);
    shield.set(direction);
    shield[3] = cosHalfAngle;
    kernels.cutByShield(run.at, bytes);
    if (perFreePath > 0) kernels.addThroughGas(total, run.at, bytes, perFreePath);
    else kernels.addSide(total, bytes);
    noteAdded(1);
  };
  /** Measured tables are searched in TypeScript, in double precision. */
  const addTable = (source: FilamentSource, j: number, isShielded: boolean, hidden?: Uint8Array): void => {
    if (!points) return;
    plain.load(points, begin, end, perFreePath);
    if (isShielded) plain.addPastShield(source, j, hidden);
    else plain.add(source, j);
    plain.readInto(tableSum);
    for (let i = 0; i < end - begin; i++) sum[i]! += tableSum[i]!;
  };

  return {
    name: isSingle ? 'SIMD, single' : 'SIMD',
    load(loaded, from, to, gas = 0) {
      [points, begin, end, perFreePath] = [loaded, from, to, gas];
      bytes = 16 * Math.ceil((to - from) / (isSingle ? 4 : 2));
      run = store.place(loaded, from);
      clear();
    },
    clear,
    add(source, j) {
      if (source.law.kind === 'table') addTable(source, j, false);
      else addSimd(source, j, 1);
    },
    addAll(source) {
      const isTable = source.law.kind === 'table';
      for (let j = 0; j < source.count; j += isTable ? 1 : MOST_PLACED) {
        if (isTable) addTable(source, j, false);
        else addSimd(source, j, Math.min(source.count - j, MOST_PLACED));
      }
    },
    addPastShield(source, j, hidden) {
      if (source.law.kind === 'table') return addTable(source, j, true, hidden);
      if (source.shield) addShielded(source, j, source.shield);
      else addSimd(source, j, 1);
      if (!hidden) return;
      if (source.shield) markCutInto(hidden, cut, end - begin);
      else hidden.fill(0, 0, end - begin);
    },
    readInto(out) {
      flush();
      out.set(sum.subarray(0, end - begin));
    },
    clearMixes() {
      mixes.fill(0);
    },
    addToMix(m, factor) {
      flush();
      wasm.addSumTimes(wasm.MIXES.value + m * sumBytes, isSingle ? 2 * bytes : bytes, factor);
    },
    readMixInto(out, m) {
      out.set(mixes.subarray(m * RUN, m * RUN + end - begin));
    },
  };
}
