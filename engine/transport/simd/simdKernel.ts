/** The SIMD kernel: WebAssembly from assembly/, two points at a time in double precision, or four in single. */
import type { FilamentSource } from '../../emission/filamentSource.ts';
import { createPlainKernel, markCutInto, MIXES, RUN, type DepositKernel } from '../depositKernel.ts';
import { isWholePower } from '../depositKernels.ts';
import type { OrientedPoints } from '../../geometry/orientedPoints.ts';
import { createRunStore, type PlacedRun } from './runStore.ts';
import { kernelsOf, startModule, type Kernels } from './wasmModule.ts';

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

/** Adds sub-source j under its law to `out`; its place, axis and weight are in SOURCE. */
function addLaw(kernels: Kernels, { law }: FilamentSource, out: number, run: number, bytes: number): void {
  switch (law.kind) {
    case 'isotropic':
      return kernels.addIsotropic(out, run, bytes);
    case 'cosine':
      if (law.power === 1) return kernels.addKnudsen(out, run, bytes);
      if (!isWholePower(law.power)) return kernels.addCosinePower(out, run, bytes);
      if (law.power % 2 === 1) return kernels.addOddCosine(out, run, bytes, law.power >> 1);
      return kernels.addEvenCosine(out, run, bytes, law.power >> 1);
    case 'wire':
      return kernels.addWire(out, run, bytes);
    case 'coil':
      return kernels.addCoil(out, run, bytes);
    case 'table':
      return; // measured tables stay in TypeScript
  }
}

/** Weight of sub-source j with what its law is multiplied by, in the operation order of depositKernels.ts. */
function scaledWeight({ law, weight }: FilamentSource, j: number): number {
  const w = weight[j]!;
  switch (law.kind) {
    case 'isotropic':
      return w / (4 * Math.PI);
    case 'cosine':
      return law.power === 1 ? w / Math.PI : (w * (law.power + 1)) / (2 * Math.PI);
    case 'wire':
      return w / Math.PI ** 2;
    case 'coil':
      return (w * 2) / Math.PI ** 3;
    case 'table':
      return w;
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
  const given = new Float64Array(buffer, wasm.SOURCE.value, 12);
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
  const give = (source: FilamentSource, j: number): void => {
    const { law, position: p, axis: a } = source;
    for (let k = 0; k < 3; k++) {
      given[k] = p[3 * j + k]! - run.origin[k]!;
      given[3 + k] = a[3 * j + k]!;
    }
    given[6] = scaledWeight(source, j);
    given[7] = law.kind === 'cosine' ? law.power : 0;
  };
  const addSimd = (source: FilamentSource, j: number, isShielded: boolean): void => {
    const { shield } = source;
    const isDirect = !isShielded && perFreePath === 0;
    give(source, j);
    if (!isDirect) wasm.clear(wasm.SIDE.value, bytes);
    addLaw(kernels, source, isDirect ? total : wasm.SIDE.value, run.at, bytes);
    if (isShielded && shield) {
      given.set(shield.direction, 8);
      given[11] = shield.cosHalfAngle;
      kernels.cutByShield(run.at, bytes);
    }
    if (perFreePath > 0) kernels.addThroughGas(total, run.at, bytes, perFreePath);
    else if (!isDirect) kernels.addSide(total, bytes);
    if (isSingle && ++pending === MOST_PENDING) flush();
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
      else addSimd(source, j, false);
    },
    addPastShield(source, j, hidden) {
      const isShielded = source.shield !== null;
      if (source.law.kind === 'table') return addTable(source, j, true, hidden);
      addSimd(source, j, isShielded);
      if (!hidden) return;
      if (isShielded) markCutInto(hidden, cut, end - begin);
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
