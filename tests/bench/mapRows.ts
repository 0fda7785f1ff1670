/** The full map by brute force, shared among workers: in Node or in a browser. */
import { createFace } from '../../engine/geometry/face.ts';
import type { Plant } from '../../engine/plant/plant.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../engine/transport/plantRequests.ts';
import type { KeyedPoints } from '../../engine/transport/transport.ts';
import type { WorkerPool } from '../../workers/pool.ts';
import { plantOf } from '../support/plants.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';
import { IN_THREADS, middleOf, ms, timesOf } from './timing.ts';

/** Pools of one and of two workers that the scaling is taken from. */
const ROUNDS = 7;

/** Times of the full map in a pool that is then disposed of, from columns that no worker has, ms. */
async function timesOfMap(plant: Plant, points: KeyedPoints, pool: WorkerPool): Promise<number[]> {
  const scene = sceneDataOf(plant);
  const mixes = [new Float64Array(plant.filaments.length).fill(1e-3)];
  const sources = keyedSourcesOf(plant);
  // another key each time, so that nothing is kept
  const turns = Array.from({ length: IN_THREADS.warmUp + IN_THREADS.count }, (_, turn) =>
    sources.map(({ key, source }) => ({ key: `${key}${turn}`, source })),
  );
  const request = { scene, blocks: [points], mixes, withSignature: false, withArrival: false };
  const times = await timesOf(async () => pool.transport.deposit({ ...request, sources: turns.pop()! }), IN_THREADS);
  pool.dispose();
  return times;
}

/**
 * The full map by brute force on one and on two workers.
 *
 * @param createPool starts a pool of so many workers
 */
export async function mapRows(createPool: (size: number) => WorkerPool): Promise<Row[]> {
  const plant = plantOf(benchDesign({ emission: { law: 'cosine power' } }));
  const points = keyedPoints(createFace(plant.shape, 21_500).points);
  // in turn, so that what else the machine does falls on both
  const [one, two]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    one.push(...(await timesOfMap(plant, points, createPool(1))));
    two.push(...(await timesOfMap(plant, points, createPool(2))));
  }
  for (const times of [one, two]) times.sort((a, b) => a - b);
  const what = `576 sub-sources × ${points.points.count} points by brute force`;
  return [
    { what: `${what}, 1 worker`, figure: ms(middleOf(one)), goal: '' },
    { what: `${what}, 2 workers`, figure: ms(middleOf(two)), goal: '≤ 16 ms' },
    {
      // a thread that the system wakes late spoils a turn: the shortest ones show what the sharing itself loses
      what: `${what}, scaling of medians / of the shortest`,
      figure: `${(middleOf(one) / middleOf(two)).toFixed(2)} / ${(one[0]! / two[0]!).toFixed(2)} ×`,
      goal: '≥ 1.8 ×',
    },
  ];
}
