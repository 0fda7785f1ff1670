import { afterEach, describe, expect, test } from 'vitest';
import { createEvaluator } from '../../engine/coat/evaluateCoat.ts';
import type { Coat } from '../../engine/coat/coat.ts';
import { createFace } from '../../engine/geometry/face.ts';
import { createLocalTransport } from '../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../engine/transport/plantRequests.ts';
import { createNodePool, spawnNodeWorker } from '../../workers/nodePool.ts';
import { createPool, type ComputeWorker, type WorkerPool } from '../../workers/pool.ts';
import { benchDesign } from '../bench/benchDesign.ts';
import { plantOf } from '../support/plants.ts';

const open: WorkerPool[] = [];
afterEach(() => {
  for (const pool of open.splice(0)) pool.dispose();
});

function kept<P extends WorkerPool>(pool: P): P {
  open.push(pool);
  return pool;
}

/** 24 filaments, shadows included. */
const shadowed = plantOf(benchDesign({ rings: 2, count: 12, obstacles: 4 }));
/** Long enough to be interrupted. */
const heavy = plantOf(benchDesign({ rings: 2, count: 100, obstacles: 20 }));

function numbers(coat: Coat): unknown {
  return {
    thickness: coat.thickness,
    statistics: coat.statistics,
    budget: coat.budget,
    angles: coat.arrival?.meanAngle,
    grazing: coat.arrival?.grazingShare,
  };
}

describe('a pool of workers', () => {
  test('gives the same bits as this thread, whatever the number of workers', async () => {
    const options = { points: 4000, withArrival: true };
    const local = numbers(await createEvaluator().evaluate(shadowed, options));
    for (const size of [1, 2, 3]) {
      const pool = kept(createNodePool(size));
      expect(numbers(await createEvaluator(pool.transport).evaluate(shadowed, options))).toEqual(local);
    }
  });

  test('reports progress that never falls and ends at 1', async () => {
    const pool = kept(createNodePool(2));
    const shares: number[] = [];
    await createEvaluator(pool.transport).evaluate(
      heavy,
      { points: 8000 },
      { step: (share) => void shares.push(share) },
    );
    expect(shares.length).toBeGreaterThan(3);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((p, q) => p - q));
  });

  test('writes over what workers got back, and leaves earlier answers as they are', async () => {
    const received: number[] = [];
    const spawn = (): ComputeWorker => {
      const worker = spawnNodeWorker();
      const deposit: ComputeWorker['api']['deposit'] = async (job, parcel, call) => {
        received.push(call.spare.length);
        return worker.api.deposit(job, parcel, call);
      };
      // a proxy of comlink has no properties to copy
      const api = new Proxy(worker.api, {
        get: (target, name) => (name === 'deposit' ? deposit : target[name as 'deposit']),
      });
      return { ...worker, api };
    };
    const pool = kept(createPool(spawn, 2));
    const request = {
      scene: sceneDataOf(shadowed),
      blocks: [keyedPoints(createFace(shadowed.shape, 4000).points)],
      sources: keyedSourcesOf(shadowed),
      withSignature: false,
      withArrival: false,
    };
    const mixes = [1, 2, 3].map((mass) => [new Float64Array(request.sources.length).fill(mass)]);
    const answers: Float64Array[] = [];
    for (const mix of mixes) answers.push((await pool.transport.deposit({ ...request, mixes: mix }))[0]!.sums[0]!);
    expect(received).toEqual([0, 0, 1, 1, 1, 1]);
    const local = createLocalTransport();
    for (const [k, mix] of mixes.entries())
      expect(answers[k]).toEqual((await local.deposit({ ...request, mixes: mix }))[0]!.sums[0]);
  });

  test('stops when its control throws, and goes on with the next calculation', async () => {
    const pool = kept(createNodePool(2));
    const evaluator = createEvaluator(pool.transport);
    let steps = 0;
    const stopping = evaluator.evaluate(
      heavy,
      { points: 60_000 },
      {
        step: () => {
          steps++;
          throw new Error('superseded');
        },
      },
    );
    await expect(stopping).rejects.toThrow('superseded');
    const atStop = steps;
    const coat = await evaluator.evaluate(shadowed, { points: 2000 });
    expect(coat.statistics.mean.value).toBeGreaterThan(0);
    // the workers answered the second calculation, so the first has ended: it reports no more
    expect(steps).toBe(atStop);
  });

  test('turns a dying worker into an error and replaces it', async () => {
    const spawned: ComputeWorker[] = [];
    const spawn = (): ComputeWorker => {
      const worker = spawnNodeWorker();
      spawned.push(worker);
      return worker;
    };
    const pool = kept(createPool(spawn, 2));
    const evaluator = createEvaluator(pool.transport);
    const doomed = evaluator.evaluate(heavy, { points: 60_000 }, { step: () => spawned[1]?.terminate() });
    await expect(doomed).rejects.toThrow(/calculation worker stopped/);
    const expected = await createEvaluator().evaluate(shadowed, { points: 2000 });
    const coat = await evaluator.evaluate(shadowed, { points: 2000 });
    expect(coat.thickness).toEqual(expected.thickness);
    expect(spawned).toHaveLength(3);
  });

  test('refuses work after it has been disposed of', async () => {
    const pool = createNodePool(1);
    pool.dispose();
    await expect(createEvaluator(pool.transport).evaluate(shadowed, { points: 2000 })).rejects.toThrow(
      /worker|disposed/,
    );
  });
});
