/** The SIMD kernel: WebAssembly from assembly/deposit.ts, two points at a time in double precision. */
import { decodeBase64 } from '../../design/base64.ts';
import type { OrientedPoints } from '../../geometry/orientedPoints.ts';
import { RUN, type DepositKernel } from '../depositKernel.ts';
import { addDepositInto, MAX_WHOLE_POWER } from '../depositKernels.ts';
import { DEPOSIT_WASM } from './deposit.gen.ts';

type Vector6 = [px: number, py: number, pz: number, ax: number, ay: number, az: number];

/** What assembly/deposit.ts exports. */
interface DepositExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  base(): number;
  clear(bytes: number): void;
  knudsen(bytes: number, ...rest: [...Vector6, weight: number]): void;
  cosinePower(bytes: number, ...rest: [...Vector6, weight: number, power: number]): void;
  isotropic(bytes: number, px: number, py: number, pz: number, weight: number): void;
  wire(bytes: number, ...rest: [...Vector6, weight: number]): void;
  coil(bytes: number, ...rest: [...Vector6, weight: number]): void;
}

/** The part of the WebAssembly interface used here; the engine's own library of types has none. */
interface WasmApi {
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
}

/** Arrays of a run: three coordinates, three of the normal; the sum is the seventh. */
const ARRAYS = 6;

/** Starts the module, or answers null where WebAssembly or its SIMD is missing or forbidden. */
function instantiate(): DepositExports | null {
  const api = (globalThis as unknown as { readonly WebAssembly?: WasmApi }).WebAssembly;
  const bytes = decodeBase64(DEPOSIT_WASM);
  if (!api || !bytes) return null;
  try {
    return new api.Instance(new api.Module(bytes)).exports as DepositExports;
  } catch {
    return null;
  }
}

/** Runs of points as the module wants them, made once for each set of points. */
const packedRuns = new WeakMap<OrientedPoints, Float64Array>();

/** [runs · ARRAYS · RUN]: for each run x, y, z, then the normals; filled up with points that catch nothing. */
function packRuns(points: OrientedPoints): Float64Array {
  const found = packedRuns.get(points);
  if (found) return found;
  const { count, position, normal } = points;
  const packed = new Float64Array(Math.ceil(count / RUN) * ARRAYS * RUN);
  for (let i = 0; i < count; i++) {
    const o = Math.floor(i / RUN) * ARRAYS * RUN + (i % RUN);
    for (let k = 0; k < 3; k++) {
      packed[o + k * RUN] = position[3 * i + k]!;
      packed[o + (k + 3) * RUN] = normal[3 * i + k]!;
    }
  }
  // filling points stand far away, so that no distance is zero
  for (let i = count; i % RUN !== 0; i++) packed[Math.floor(i / RUN) * ARRAYS * RUN + (i % RUN)] = 1e6;
  packedRuns.set(points, packed);
  return packed;
}

/** Makes the SIMD kernel, or null where it cannot run: take createPlainKernel then. */
export function createSimdKernel(): DepositKernel | null {
  const wasm = instantiate();
  if (!wasm) return null;
  const at = wasm.base();
  const run = new Float64Array(wasm.memory.buffer, at, ARRAYS * RUN);
  const sum = new Float64Array(wasm.memory.buffer, at + 8 * ARRAYS * RUN, RUN);
  let [begin, end, bytes] = [0, 0, 0];
  let points: OrientedPoints | undefined;
  return {
    name: 'SIMD',
    load(loaded, from, to) {
      if (from % RUN !== 0) throw new RangeError(`a run starts at a multiple of ${RUN}; found ${from}`);
      [points, begin, end] = [loaded, from, to];
      bytes = 16 * Math.ceil((to - from) / 2);
      run.set(packRuns(loaded).subarray(ARRAYS * from, ARRAYS * (from + RUN)));
      wasm.clear(bytes);
    },
    clear() {
      wasm.clear(bytes);
    },
    add(source, j) {
      const { law, position: p, axis: a, weight } = source;
      const o = 3 * j;
      const [px, py, pz, ax, ay, az] = [p[o]!, p[o + 1]!, p[o + 2]!, a[o]!, a[o + 1]!, a[o + 2]!];
      const w = weight[j]!;
      switch (law.kind) {
        case 'isotropic':
          return wasm.isotropic(bytes, px, py, pz, w / (4 * Math.PI));
        case 'cosine':
          if (law.power === 1) return wasm.knudsen(bytes, px, py, pz, ax, ay, az, w / Math.PI);
          if (Number.isInteger(law.power) && law.power >= 1 && law.power <= MAX_WHOLE_POWER) {
            return wasm.cosinePower(bytes, px, py, pz, ax, ay, az, (w * (law.power + 1)) / (2 * Math.PI), law.power);
          }
          break;
        case 'wire':
          return wasm.wire(bytes, px, py, pz, ax, ay, az, w / Math.PI ** 2);
        case 'coil':
          return wasm.coil(bytes, px, py, pz, ax, ay, az, (w * 2) / Math.PI ** 3);
        case 'table':
          break;
      }
      // fractional powers and measured tables need functions that SIMD lacks
      if (points) addDepositInto(sum, points, begin, end, source, j);
    },
    readInto(out) {
      out.set(sum.subarray(0, end - begin));
    },
  };
}
