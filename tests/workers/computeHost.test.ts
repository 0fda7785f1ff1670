import { expect, test, vi } from 'vitest';
import { createFace } from '../../engine/geometry/face.ts';
import { openPlantFile } from '../../engine/plant/openPlant.ts';
import { createLocalTransport } from '../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../engine/transport/plantRequests.ts';
import type { KeyedPoints, KeyedSource, SceneData } from '../../engine/transport/transport.ts';
import { createComputeHost } from '../../workers/computeHost.ts';
import { packSources } from '../../workers/packedSources.ts';
import { createPool, type ComputeWorker } from '../../workers/pool.ts';
import type { ComputeApi, DepositCall, Progress } from '../../workers/protocol.ts';
import { benchDesign } from '../bench/benchDesign.ts';

const opened = openPlantFile(benchDesign({ rings: 1, count: 60, obstacles: 20 }));
if (!opened.ok) throw new Error('the bench design is sound');
const { plant } = opened;
const scene = sceneDataOf(plant);
const sources = keyedSourcesOf(plant);
const mixes = [new Float64Array(sources.length).fill(1e-3)];
const points = keyedPoints(createFace(plant.shape, 20_000).points);
const few = keyedPoints(createFace(plant.shape, 500).points);
const wanted = { part: 'arriving', precision: 'double', withSignature: false, withArrival: false } as const;
/** A deposit of all sources at one block of points. */
const callFor = (at: SceneData, block: KeyedPoints): DepositCall => ({
  scene: at.key,
  blocks: [block.key],
  sources: sources.map(({ key }) => key),
  mixes,
  spare: [],
  ...wanted,
});
const STORE_BYTES = 2 ** 24;
/** Nothing else runs in this thread, so waiting for the next turn of its loop lets messages in. */
const breathe = async (): Promise<void> => new Promise((resolve) => void setImmediate(resolve));

test('a cancelled job ends at its next step and reports no further progress', async () => {
  const reports: Progress[] = [];
  const host = createComputeHost(
    {
      post: (progress) => {
        reports.push(progress);
        host.cancel(progress.evenfallProgress);
      },
      breathe,
    },
    STORE_BYTES,
  );
  const parcel = { scene, points: [points], sources: packSources(sources) };
  const call = callFor(scene, points);
  await expect(host.deposit(7, parcel, call)).rejects.toThrow('cancelled');
  expect(reports).toHaveLength(1);
  expect(reports[0]?.share).toBeLessThan(1);
});

test('content that a worker has forgotten is sent again', async () => {
  const host = createComputeHost({ post: () => {}, breathe }, STORE_BYTES);
  let calls = 0;
  let emptied = false;
  const forgetful: ComputeApi = {
    ...host,
    deposit: async (job, parcel, call) => {
      calls++;
      // loses everything that the second calculation counts on
      if (calls === 2) emptied = true;
      return emptied && parcel.scene === null ? { ok: false, missing: true } : host.deposit(job, parcel, call);
    },
  };
  const worker: ComputeWorker = {
    api: forgetful,
    onProgress: () => {},
    died: new Promise<never>(() => {}),
    terminate: () => {},
  };
  const { transport } = createPool(() => worker, 1);
  const request = { scene, blocks: [few], sources, mixes, ...wanted };
  const [first, second] = [await transport.deposit(request), await transport.deposit(request)];
  expect(calls).toBe(3);
  expect(second[0]?.sums[0]).toEqual(first[0]?.sums[0]);
});

/** The source with a count of how often its positions are read. */
function watched({ key, source }: KeyedSource): { readonly keyed: KeyedSource; readonly reads: () => number } {
  let reads = 0;
  const proxy = new Proxy(source, {
    get: (target, name, receiver) => {
      if (name === 'position') reads++;
      return Reflect.get(target, name, receiver) as unknown;
    },
  });
  return { keyed: { key, source: proxy }, reads: () => reads };
}

test('a changed charge recomputes no column, a moved filament only its own', async () => {
  const transport = createLocalTransport();
  const watch = sources.slice(0, 5).map(watched);
  const request = {
    scene,
    blocks: [few],
    sources: watch.map(({ keyed }) => keyed),
    mixes: [Float64Array.of(1, 1, 1, 1, 1)],
    ...wanted,
  };
  await transport.deposit(request);
  while (transport.keepMore());
  const before = watch.map(({ reads }) => reads());
  expect(before.every((reads) => reads > 0)).toBe(true);
  await transport.deposit({ ...request, mixes: [Float64Array.of(2, 1, 1, 0, 1)] });
  expect(watch.map(({ reads }) => reads())).toEqual(before);
  const moved = watched({
    key: 'moved',
    source: { ...sources[0]!.source, position: sources[0]!.source.position.map((x) => x + 0.01) },
  });
  await transport.deposit({ ...request, sources: [moved.keyed, ...request.sources.slice(1)] });
  expect(moved.reads()).toBeGreaterThan(0);
  expect(watch.map(({ reads }) => reads())).toEqual(before);
});

test('columns that do not fit the store are computed, added and forgotten', async () => {
  const roomy = createLocalTransport();
  const tight = createLocalTransport(2 * 8 * few.points.count + 1024);
  const request = { scene, blocks: [few], sources, mixes, ...wanted };
  const expected = await roomy.deposit(request);
  expect((await tight.deposit(request))[0]?.sums[0]).toEqual(expected[0]?.sums[0]);
  expect((await tight.deposit(request))[0]?.sums[0]).toEqual(expected[0]?.sums[0]);
});

test('the glass hides a point behind it that stands free of the face', async () => {
  const transport = createLocalTransport();
  const behind = { count: 1, position: Float64Array.of(0.6, 0, -0.2), normal: Float64Array.of(0, 0, 1) };
  const request = { scene, sources, mixes, ...wanted };
  const hidden = await transport.deposit({ ...request, blocks: [keyedPoints(behind, false)] });
  expect(hidden[0]?.sums[0]?.[0]).toBe(0);
  // the same place with no glass in the way: through the hole
  const below = { count: 1, position: Float64Array.of(0, 0, -0.2), normal: Float64Array.of(0, 0, 1) };
  const open = await transport.deposit({ ...request, blocks: [keyedPoints(below, false)] });
  expect(open[0]?.sums[0]?.[0]).toBeGreaterThan(0);
});

test('a worker that rests keeps what it summed in passing, until it is asked for something else', async () => {
  vi.useFakeTimers();
  let breaths = 0;
  const host = createComputeHost({ post: () => {}, breathe: async () => void breaths++ }, STORE_BYTES);
  const clear = sceneDataOf({ ...plant, solids: { count: 0, records: new Float64Array() } });
  const parcel = { scene: clear, points: [few], sources: packSources(sources) };
  const call = callFor(clear, few);
  const nothing = { scene: null, points: [], sources: packSources([]) };
  await host.deposit(1, parcel, call);
  await vi.advanceTimersByTimeAsync(20);
  await host.deposit(2, nothing, call); // begins the rest anew
  await vi.advanceTimersByTimeAsync(20);
  expect(breaths).toBe(0);
  await vi.advanceTimersByTimeAsync(100);
  expect(breaths).toBeGreaterThan(sources.length / 8 - 1);
  vi.useRealTimers();
});
