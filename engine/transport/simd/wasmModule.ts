/** The compiled module: started where it can run, with what it exports. */
import { decodeBase64 } from '../../design/base64.ts';
import { DEPOSIT_WASM } from './deposit.gen.ts';

/** An address in the module's memory. */
interface Place {
  readonly value: number;
}

/** The laws and passages in one precision; see assembly/laws.ts and assembly/passage.ts. */
export interface Kernels {
  readonly addSources: (
    out: number,
    run: number,
    bytes: number,
    law: number,
    pairs: number,
    first: number,
    count: number,
  ) => void;
  readonly cutByShield: (run: number, bytes: number) => void;
  readonly addThroughGas: (out: number, run: number, bytes: number, perFreePath: number) => void;
  readonly addSide: (out: number, bytes: number) => void;
}

/** What assembly/deposit.ts exports: memory with places in it, and the kernels, 64 in double precision, 32 in single. */
export type DepositExports = {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly RUNS: Place;
  readonly SUM: Place;
  readonly MIXES: Place;
  readonly PART: Place;
  readonly SIDE: Place;
  readonly CUT: Place;
  readonly SOURCES: Place;
  readonly SHIELD: Place;
  clear(at: number, bytes: number): void;
  addPart(bytes: number): void;
  addSumTimes(out: number, bytes: number, factor: number): void;
} & { readonly [K in keyof Kernels as `${K}64` | `${K}32`]: Kernels[K] };

/** The part of the WebAssembly interface used here; the engine's own library of types has none. */
interface WasmApi {
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
}

/** Starts the module, or answers null where WebAssembly or its SIMD is missing or forbidden. */
export function startModule(): DepositExports | null {
  const api = (globalThis as unknown as { readonly WebAssembly?: WasmApi }).WebAssembly;
  const bytes = decodeBase64(DEPOSIT_WASM);
  if (!api || !bytes) return null;
  try {
    return new api.Instance(new api.Module(bytes)).exports as DepositExports;
  } catch {
    return null;
  }
}

/** The kernels of one precision under one set of names. */
export function kernelsOf(wasm: DepositExports, isSingle: boolean): Kernels {
  const of = <K extends keyof Kernels>(name: K): Kernels[K] =>
    (wasm as Readonly<Record<string, unknown>>)[`${name}${isSingle ? 32 : 64}`] as Kernels[K];
  return {
    addSources: of('addSources'),
    cutByShield: of('cutByShield'),
    addThroughGas: of('addThroughGas'),
    addSide: of('addSide'),
  };
}
