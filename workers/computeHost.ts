/** The worker's side: keeps content by key, computes with the engine, reports progress, stops when told. */
import { transfer } from 'comlink';
import { LRUCache } from 'lru-cache';
import type { FilamentSource } from '../engine/emission/filamentSource.ts';
import type { Fields } from '../engine/field/fields.ts';
import type { SmoothField } from '../engine/field/smoothField.ts';
import type { ScatterProblem } from '../engine/gas/scatterProblem.ts';
import type { ChunkRunner } from '../engine/gas/scatter.ts';
import type { ScatterTally } from '../engine/gas/tally.ts';
import { createPlainKernel } from '../engine/transport/depositKernel.ts';
import { createLocalTransport } from '../engine/transport/localTransport.ts';
import { createSimdKernel } from '../engine/transport/simd/simdKernel.ts';
import type { Control, DepositResult, KeyedPoints, KeyedSource, SceneData } from '../engine/transport/transport.ts';
import { unpackSources } from './packedSources.ts';
import type { Answer, ComputeApi, DepositCall, FieldCall, FlyCall, Parcel, Progress, TraceCall } from './protocol.ts';

/** What a host needs of the thread that it runs in. */
export interface HostThread {
  readonly post: (message: Progress) => void;
  /** lets waiting messages in, such as a cancellation */
  readonly breathe: () => Promise<void>;
}

/** Longest work without letting messages in, ms. */
const SLICE = 12;
/** Rest after the last job before columns are kept for later ones, ms. */
const QUIET = 40;
const MISSING = { ok: false, missing: true } as const;

/** Thrown inside a job that was cancelled. */
class Cancelled extends Error {
  override readonly name = 'Cancelled';
}

/** Makes the object that a worker exposes. */
export function createComputeHost(thread: HostThread, storeBytes: number): ComputeApi {
  const transport = createLocalTransport(
    storeBytes,
    createSimdKernel() ?? createPlainKernel(),
    createSimdKernel({ precision: 'single' }) ?? createPlainKernel(),
  );
  // code for drags and for gas is loaded when it is first wanted: the first coat does not wait for it
  const fields = once<Fields>(async () => {
    const { createLocalFields } = await import('../engine/field/fields.ts');
    return createLocalFields(createSimdKernel() ?? createPlainKernel());
  });
  const scenes = new LRUCache<string, SceneData>({ max: 8 });
  const points = new LRUCache<string, KeyedPoints>({ max: 64 });
  const sources = new LRUCache<string, FilamentSource>({ max: 10_000 });
  const problems = new LRUCache<string, ScatterProblem>({ max: 4 });
  const fly = once<ChunkRunner>(async () => (await import('../engine/gas/scatter.ts')).createLocalRunner());
  const cancelled = new Set<number>();

  const unpack = (parcel: Parcel, scene: string): void => {
    if (parcel.scene) scenes.set(scene, parcel.scene);
    for (const block of parcel.points) points.set(block.key, block);
    for (const { key, source } of unpackSources(parcel.sources)) sources.set(key, source);
  };
  const controlOf = (job: number): Control => {
    let last = performance.now();
    return {
      step: async (share) => {
        if (performance.now() - last < SLICE) return;
        thread.post({ evenfallProgress: job, share });
        await thread.breathe();
        last = performance.now();
        if (cancelled.has(job)) throw new Cancelled('the calculation was cancelled');
      },
    };
  };
  const gather = (keys: readonly string[]): KeyedSource[] | null =>
    found(keys, sources)?.map((source, f) => ({ key: keys[f]!, source })) ?? null;
  let running = 0;
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const keepColumns = async (): Promise<void> => {
    while (running === 0 && transport.keepMore()) await thread.breathe();
  };
  const finish = async <T>(job: number, work: Promise<T>): Promise<T> => {
    running++;
    clearTimeout(quiet);
    try {
      return await work;
    } finally {
      cancelled.delete(job);
      if (--running === 0) quiet = setTimeout(() => void keepColumns(), QUIET);
    }
  };

  return {
    deposit: async (job: number, parcel: Parcel, call: DepositCall): Promise<Answer<readonly DepositResult[]>> => {
      unpack(parcel, call.scene);
      for (const buffer of call.spare) transport.giveBack(new Float64Array(buffer));
      const scene = scenes.get(call.scene);
      const blocks = found(call.blocks, points);
      const from = gather(call.sources);
      if (!scene || !blocks || !from) return MISSING;
      const request = { ...call, scene, blocks, sources: from };
      const result = await finish(job, transport.deposit(request, controlOf(job)));
      return transfer({ ok: true, result }, result.flatMap(buffersOf));
    },
    trace: async (job: number, parcel: Parcel, call: TraceCall): Promise<Answer<readonly Float64Array[]>> => {
      unpack(parcel, call.scene);
      const scene = scenes.get(call.scene);
      const from = gather(call.sources);
      if (!scene || !from) return MISSING;
      // the transport keeps these arrays, so they are copied and not transferred
      return {
        ok: true,
        result: await finish(job, transport.trace({ ...call, scene, sources: from }, controlOf(job))),
      };
    },
    field: async (_job: number, parcel: Parcel, call: FieldCall): Promise<Answer<SmoothField>> => {
      unpack(parcel, call.scene);
      const scene = scenes.get(call.scene);
      const from = gather(call.sources);
      if (!scene || !from) return MISSING;
      return { ok: true, result: await (await fields()).solve({ ...call, scene, sources: from }) };
    },
    fly: async (job: number, problem: ScatterProblem | null, call: FlyCall): Promise<Answer<ScatterTally>> => {
      if (problem) problems.set(call.problem, problem);
      const known = problems.get(call.problem);
      if (!known) return MISSING;
      return { ok: true, result: await finish(job, (await fly())(known, call.first, call.count, controlOf(job))) };
    },
    cancel: (job: number): void => {
      cancelled.add(job);
    },
  };
}

/** The values of all keys, or null if one is missing. */
function found<T extends object>(keys: readonly string[], store: LRUCache<string, T>): T[] | null {
  const values: T[] = [];
  for (const key of keys) {
    const value = store.get(key);
    if (!value) return null;
    values.push(value);
  }
  return values;
}

function buffersOf({ sums, signature, arrival }: DepositResult): ArrayBuffer[] {
  const views = [...sums, ...(signature ? [signature] : []), ...(arrival ? [arrival.angle, arrival.grazing] : [])];
  return views.map((view) => view.buffer as ArrayBuffer);
}

/** Makes something when it is first asked for, and answers the same from then on. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined;
  return async () => (made ??= make());
}
