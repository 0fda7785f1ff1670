/** A pool of compute workers behind the engine's Transport: shared work, progress, cancellation, replacement. */
import { transfer } from 'comlink';
import type { FieldRequest, Fields } from '../engine/field/fields.ts';
import type { SmoothField } from '../engine/field/smoothField.ts';
import type { ChunkRunner } from '../engine/gas/scatter.ts';
import type { ScatterProblem } from '../engine/gas/scatterProblem.ts';
import type { ScatterTally } from '../engine/gas/tally.ts';
import type { OrientedPoints } from '../engine/geometry/orientedPoints.ts';
import type {
  Control,
  DepositRequest,
  DepositResult,
  KeyedPoints,
  KeyedSource,
  SceneData,
  TraceRequest,
  Transport,
} from '../engine/transport/transport.ts';
import { createOrientedPoints } from '../engine/geometry/orientedPoints.ts';
import { RUN } from '../engine/transport/depositKernel.ts';
import { createPacker, packSources } from './packedSources.ts';
import type { Answer, ComputeApi, Parcel, Progress } from './protocol.ts';
import { shareByCost } from './shareByCost.ts';

/** A started worker, whatever kind of thread it is. */
export interface ComputeWorker {
  readonly api: ComputeApi;
  /** set by the pool: called with each progress report */
  onProgress: (progress: Progress) => void;
  /** rejects when the worker dies; never resolves */
  readonly died: Promise<never>;
  readonly terminate: () => void;
}

export interface WorkerPool {
  readonly transport: Transport;
  readonly fields: Fields;
  /** flies atoms through gas, shared among the workers; the same counts on any number of them */
  readonly fly: ChunkRunner;
  /** Ends all workers; the transport must not be used any more. */
  readonly dispose: () => void;
}

/** Points that stay together when work is split: a run of the kernel, whose neighbours share shadows and caches. */
const CHUNK = RUN;

/** A place in the pool: its worker, if one is alive, the keys of the content that it was sent, and what it may write over. */
interface Seat {
  worker: ComputeWorker | null;
  known: Set<string>;
  spare: ArrayBuffer[];
}

/** Keys a seat may remember before it starts over; beyond it the worker has forgotten the first ones anyway. */
const MAX_KNOWN = 20_000;

/** Starts `size` workers and shares each calculation among them. Results do not depend on `size`. */
export function createPool(spawn: () => ComputeWorker, size: number): WorkerPool {
  let isDisposed = false;
  let nextJob = 1;
  const jobs = new Map<number, (share: number) => void>();
  const seats = Array.from({ length: size }, (): Seat => ({ worker: null, known: new Set(), spare: [] }));
  seats.forEach(workerOf);

  /** The worker of a seat; a dead one is replaced when it is next needed. */
  function workerOf(seat: Seat): ComputeWorker {
    if (seat.worker) return seat.worker;
    if (isDisposed) throw new Error('the pool has been disposed of');
    const worker = spawn();
    worker.onProgress = ({ evenfallProgress, share }) => jobs.get(evenfallProgress)?.(share);
    worker.died.catch(() => {
      seat.worker = null;
      seat.known = new Set();
    });
    seat.worker = worker;
    return worker;
  }

  /** Runs one part on each seat; the first failure or a throwing control ends them all. */
  async function runAll<T, P>(parts: readonly Part<T, P>[], control: Control | undefined): Promise<T[]> {
    const running: { readonly job: number; readonly worker: ComputeWorker }[] = [];
    const shares = parts.map(() => 0);
    return new Promise<T[]>((resolve, reject) => {
      const stop = (reason: unknown): void => {
        for (const { job, worker } of running) {
          jobs.delete(job);
          worker.api.cancel(job);
        }
        reject(reason as Error);
      };
      const follow = async (): Promise<void> =>
        control?.step(shares.reduce((sum, share) => sum + share, 0) / shares.length);
      const results = parts.map(async (part, i) => {
        const job = nextJob++;
        const worker = workerOf(part.seat);
        running.push({ job, worker });
        jobs.set(job, (share) => {
          shares[i] = share;
          follow().catch(stop);
        });
        const result = await ask(part, job, worker);
        jobs.delete(job);
        return result;
      });
      Promise.all(results)
        .then(async (all) => {
          await control?.step(1);
          resolve(all);
        })
        .catch(stop);
    });
  }

  async function ask<T, P>({ seat, parcel, call }: Part<T, P>, job: number, worker: ComputeWorker): Promise<T> {
    for (let attempt = 0; attempt < 2; attempt++) {
      const answer = await Promise.race([call(worker.api, job, parcel(seat.known)), worker.died]);
      if (answer.ok) return answer.result;
      seat.known = new Set();
    }
    throw new Error('a calculation worker could not keep what it was sent');
  }

  const deposit = async (request: DepositRequest, control?: Control): Promise<DepositResult[]> => {
    const sharing = request.blocks.map(({ points }) =>
      Math.max(1, Math.min(seats.length, Math.floor(points.count / CHUNK))),
    );
    const pack = createPacker();
    const keys = request.sources.map(keyOf);
    const parts = seats.flatMap((seat, w): Part<readonly DepositResult[]>[] => {
      const blocks = request.blocks.flatMap((block, b) =>
        w < sharing[b]! ? [partOfPoints(block, w, sharing[b]!)] : [],
      );
      if (blocks.length === 0) return [];
      const call = {
        scene: request.scene.key,
        blocks: blocks.map(({ key }) => key),
        sources: keys,
        part: request.part ?? 'arriving',
        precision: request.precision ?? 'double',
        mixes: request.mixes,
        withSignature: request.withSignature,
        withArrival: request.withArrival,
      };
      return [
        {
          seat,
          parcel: (known) => makeParcel(known, request.scene, request.sources, blocks, pack),
          call: async (api, job, parcel) => {
            const spare = seat.spare.splice(0);
            return api.deposit(job, parcel, transfer({ ...call, spare }, spare));
          },
        },
      ];
    });
    const results = (await runAll(parts, control)).map((answers) => [...answers]);
    return request.blocks.map(({ points }, b) => {
      const own = results.slice(0, sharing[b]).map((answers) => answers.shift()!);
      if (own.length === 1) return own[0]!;
      const whole = scatter(own, points.count);
      own.forEach(({ sums }, w) => parts[w]!.seat.spare.push(...sums.map(({ buffer }) => buffer as ArrayBuffer)));
      return whole;
    });
  };

  const trace = async (request: TraceRequest, control?: Control): Promise<Float64Array[]> => {
    const costs = request.sources.map(({ source }) => source.count);
    const shared = shareByCost(costs, seats.length);
    const parts = seats.map((seat, w): Part<readonly Float64Array[]> => {
      const own = shared[w]!.map((f) => request.sources[f]!);
      const call = {
        scene: request.scene.key,
        sources: own.map(keyOf),
        rays: request.rays,
        seed: request.seed,
      };
      return {
        seat,
        parcel: (known) => makeParcel(known, request.scene, own),
        call: async (api, job, parcel) => api.trace(job, parcel, call),
      };
    });
    const results = await runAll(parts, control);
    const byFilament = new Map(shared.flatMap((own, w) => own.map((f, k) => [f, results[w]![k]!] as const)));
    return costs.map((_, f) => byFilament.get(f)!);
  };

  /** One worker has the columns of all twins; shared among several they would be computed in each. */
  const solve = async ({ scene, sources, masses, wantedError }: FieldRequest): Promise<SmoothField> => {
    const call = { scene: scene.key, sources: sources.map(keyOf), masses, wantedError };
    const part: Part<SmoothField> = {
      seat: seats[0]!,
      parcel: (known) => makeParcel(known, scene, sources),
      call: async (api, job, parcel) => api.field(job, parcel, call),
    };
    const [field] = await runAll([part], undefined);
    return field!;
  };

  const problemKeys = new WeakMap<ScatterProblem, string>();
  let nextProblem = 1;
  const fly: ChunkRunner = async (problem, first, count, control) => {
    const key = problemKeys.get(problem) ?? `problem ${nextProblem++}`;
    problemKeys.set(problem, key);
    const parts = seats.flatMap((seat, w): Part<ScatterTally, ScatterProblem | null>[] => {
      const from = Math.floor((count * w) / seats.length);
      const own = Math.floor((count * (w + 1)) / seats.length) - from;
      if (own === 0) return [];
      const call = { problem: key, first: first + from, count: own };
      const send = (known: Set<string>): ScatterProblem | null => {
        if (known.has(key)) return null;
        known.add(key);
        return problem;
      };
      return [{ seat, parcel: send, call: async (api, job, sent) => api.fly(job, sent, call) }];
    });
    const [{ mergeTallies }, tallies] = await Promise.all([import('../engine/gas/tally.ts'), runAll(parts, control)]);
    return mergeTallies(tallies);
  };

  return {
    transport: { deposit, trace },
    fields: { solve },
    fly,
    dispose: () => {
      isDisposed = true;
      for (const { worker } of seats) worker?.terminate();
    },
  };
}

const keyOf = ({ key }: KeyedSource): string => key;

/** One seat's part of a calculation. */
interface Part<T, P = Parcel> {
  readonly seat: Seat;
  readonly parcel: (known: Set<string>) => P;
  readonly call: (api: ComputeApi, job: number, parcel: P) => Promise<Answer<T>>;
}

/** Marks a key as known; whether it was not before. One look, not two: there are many keys. */
function addNew(known: Set<string>, key: string): boolean {
  const before = known.size;
  return known.add(key).size > before;
}

/** What a worker has not been sent yet; marks it as sent. */
function makeParcel(
  known: Set<string>,
  scene: SceneData,
  sources: readonly KeyedSource[],
  blocks: readonly PointsPart[] = [],
  pack = packSources,
): Parcel {
  if (known.size > MAX_KNOWN) known.clear();
  const isNewScene = addNew(known, scene.key);
  const points = blocks.flatMap((block) => (addNew(known, block.key) ? [block.make()] : []));
  const fresh: KeyedSource[] = [];
  for (const source of sources) if (addNew(known, source.key)) fresh.push(source);
  return { scene: isNewScene ? scene : null, points, sources: pack(fresh) };
}

/** A worker's share of points, picked only if it must be sent. */
interface PointsPart {
  readonly key: string;
  readonly make: () => KeyedPoints;
}

/** The share of worker w of n. */
function partOfPoints(whole: KeyedPoints, w: number, n: number): PointsPart {
  if (n === 1) return { key: whole.key, make: () => whole };
  const key = `${whole.key}:${w}/${n}`;
  return { key, make: () => ({ key, points: pickChunks(whole.points, w, n), onFace: whole.onFace }) };
}

/** The stretches of points of worker w of n: every n-th chunk, and an equal share of what is left over. */
function stretchesOf(count: number, w: number, n: number): (readonly [from: number, to: number])[] {
  const stretches: (readonly [number, number])[] = [];
  const dealt = Math.floor(count / (n * CHUNK)) * n * CHUNK;
  for (let from = w * CHUNK; from < dealt; from += n * CHUNK) stretches.push([from, from + CHUNK]);
  const left = count - dealt;
  stretches.push([dealt + Math.floor((left * w) / n), dealt + Math.floor((left * (w + 1)) / n)]);
  return stretches;
}

function pickChunks(points: OrientedPoints, w: number, n: number): OrientedPoints {
  const stretches = stretchesOf(points.count, w, n);
  const picked = createOrientedPoints(stretches.reduce((sum, [from, to]) => sum + to - from, 0));
  let at = 0;
  for (const [from, to] of stretches) {
    picked.position.set(points.position.subarray(3 * from, 3 * to), at);
    picked.normal.set(points.normal.subarray(3 * from, 3 * to), at);
    at += 3 * (to - from);
  }
  return picked;
}

/** Puts the parts' chunks back in their places. */
function scatter(results: readonly DepositResult[], count: number): DepositResult {
  const place = <A extends Float64Array | Uint32Array>(out: A, parts: readonly A[]): A => {
    parts.forEach((part, w) => {
      let at = 0;
      for (const [from, to] of stretchesOf(count, w, parts.length)) {
        out.set(part.subarray(at, at + to - from), from);
        at += to - from;
      }
    });
    return out;
  };
  const sums = results[0]!.sums.map((_, m) =>
    place(
      new Float64Array(count),
      results.map((result) => result.sums[m]!),
    ),
  );
  const signature = results.some((result) => result.signature)
    ? place(
        new Uint32Array(count),
        results.map((result) => result.signature ?? new Uint32Array(result.sums[0]!.length)),
      )
    : null;
  const arrivals = results.flatMap(({ arrival }) => (arrival ? [arrival] : []));
  const arrival =
    arrivals.length === results.length
      ? {
          angle: place(
            new Float64Array(count),
            arrivals.map(({ angle }) => angle),
          ),
          grazing: place(
            new Float64Array(count),
            arrivals.map(({ grazing }) => grazing),
          ),
        }
      : null;
  return { sums, signature, arrival };
}
