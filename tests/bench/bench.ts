/** npm run bench: prints the figures that matter for speed and memory in one table. Nothing is asserted. */
import { cpus } from 'node:os';
import { createEvaluator } from '../../engine/coat/evaluateCoat.ts';
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import { createFace } from '../../engine/geometry/face.ts';
import { openPlantFile } from '../../engine/plant/openPlant.ts';
import type { Plant } from '../../engine/plant/plant.ts';
import { computeColumns } from '../../engine/transport/column.ts';
import { createPlainKernel } from '../../engine/transport/depositKernel.ts';
import { buildScene } from '../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../engine/transport/simd/simdKernel.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';
import { createNodePool } from '../../workers/nodePool.ts';
import { benchDesign } from './benchDesign.ts';
import { browserRows } from './browserBench.ts';
import { naiveSum } from './naiveSum.ts';
import type { Row } from './row.ts';

const REPEATS = 9;

const LAWS: readonly (readonly [string, EmissionLaw])[] = [
  ['cosine', { kind: 'cosine', power: 1 }],
  ['cosine, power 3', { kind: 'cosine', power: 3 }],
  ['isotropic', { kind: 'isotropic' }],
  ['straight wire', { kind: 'wire' }],
  ['open coil', { kind: 'coil' }],
];

/** Median time of `work` in ms, after two runs to warm up. */
async function median(work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < REPEATS + 2; i++) {
    const start = performance.now();
    await work();
    if (i >= 2) times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[REPEATS >> 1] ?? NaN;
}

function plantOf(design: object): Plant {
  const opened = openPlantFile(design);
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return opened.plant;
}

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 1)} ms`;

async function kernelRows(plant: Plant): Promise<Row[]> {
  const { points } = createFace(plant.shape, 20_000);
  const visibility = createVisibility(await buildScene(sceneDataOf(plant)));
  const pairs = points.count * plant.filaments.reduce((sum, { source }) => sum + source.count, 0);
  const perPair = (time: number): string => `${((time * 1e6) / pairs).toFixed(2)} ns a pair`;
  const kernels = [createPlainKernel(), createSimdKernel()].flatMap((kernel) => (kernel ? [kernel] : []));
  const naive = await median(() => naiveSum(plant, points));
  const rows: Row[] = [{ what: 'plain implementation, cosine (yardstick)', figure: perPair(naive), goal: '' }];
  for (const [name, law] of LAWS) {
    // the cosine law aims at the mirror, the others along the coil
    const sources = plant.filaments.map(({ source, coilAxis }) => ({
      ...source,
      law,
      axis: Float64Array.from(source.axis, (_, i) => (law.kind === 'cosine' ? [0, 0, -1] : coilAxis)[i % 3]!),
    }));
    for (const kernel of kernels) {
      const time = await median(() => computeColumns(sources, points, visibility, kernel));
      rows.push({ what: `${name}, ${kernel.name}, one thread`, figure: perPair(time), goal: '≤ 6' });
    }
  }
  return rows;
}

/** The full map on n workers, from columns that no worker has. */
async function poolRow(plant: Plant, n: number): Promise<Row> {
  const pool = createNodePool(n);
  const points = keyedPoints(createFace(plant.shape, 20_000).points);
  const scene = sceneDataOf(plant);
  const mixes = [new Float64Array(plant.filaments.length).fill(1e-3)];
  let turn = 0;
  const time = await median(async () => {
    turn++;
    // another key each time, so that nothing is kept
    const sources = keyedSourcesOf(plant).map(({ key, source }) => ({ key: `${key}${turn}`, source }));
    await pool.transport.deposit({ scene, blocks: [points], sources, mixes, withSignature: false, withArrival: false });
  });
  pool.dispose();
  return {
    what: `576 sub-sources × ${points.points.count} points, ${n} worker${n > 1 ? 's' : ''}`,
    figure: ms(time),
    goal: n === 2 ? '≤ 60 ms' : '',
  };
}

async function editRows(plant: Plant): Promise<Row[]> {
  const pool = createNodePool(2);
  const evaluator = createEvaluator(pool.transport);
  let turn = 0;
  await evaluator.evaluate(plant);
  const request = {
    scene: sceneDataOf(plant),
    sources: keyedSourcesOf(plant),
    withSignature: false,
    withArrival: false,
  };
  const blocks = [keyedPoints(createFace(plant.shape, 20_000).points)];
  const map = await median(async () => {
    const mix = Float64Array.from(plant.filaments, (_, f) => (f === turn % 96 ? 3e-4 : 2.7e-4));
    turn++;
    await pool.transport.deposit({ ...request, blocks, mixes: [mix] });
  });
  const charge = await median(async () => {
    turn++;
    await evaluator.evaluate({
      ...plant,
      filaments: plant.filaments.map((filament, f) =>
        f === turn ? { ...filament, charge: filament.charge * 1.1 } : filament,
      ),
    });
  });
  const move = await median(async () => {
    turn++;
    const filaments = plant.filaments.map((filament, f) => {
      if (f !== 0) return filament;
      const position = filament.source.position.map((x, i) => (i % 3 === 2 ? x + 1e-4 * turn : x));
      return { ...filament, source: { ...filament.source, position } };
    });
    await evaluator.evaluate({ ...plant, filaments });
  });
  pool.dispose();
  return [
    { what: 'changing a charge, the map', figure: ms(map), goal: '≤ 2 ms' },
    { what: 'changing a charge, to finished statistics', figure: ms(charge), goal: '' },
    { what: 'moving one filament, to finished statistics', figure: ms(move), goal: '≤ 10 ms' },
  ];
}

/** Cost of one column of every filament with and without 20 obstacles. */
async function obstacleRow(): Promise<Row> {
  const [clear, crowded] = [plantOf(benchDesign({ obstacles: 0 })), plantOf(benchDesign({ obstacles: 20 }))];
  const { points } = createFace(clear.shape, 20_000);
  const cost = async (plant: Plant): Promise<number> => {
    const visibility = createVisibility(await buildScene(sceneDataOf(plant)));
    const sources = plant.filaments.map(({ source }) => source);
    const kernel = createSimdKernel() ?? createPlainKernel();
    return median(() => computeColumns(sources, points, visibility, kernel));
  };
  const [without, withObstacles] = [await cost(clear), await cost(crowded)];
  return {
    what: '20 obstacles against none, one thread',
    figure: `${(withObstacles / without).toFixed(1)} ×`,
    goal: '≤ 10 ×',
  };
}

/** Memory after a full evaluation of 1,200 sub-sources on 50,000 points with two workers. */
async function memoryRow(): Promise<Row> {
  const plant = plantOf(benchDesign({ rings: 2, count: 100 }));
  const before = process.memoryUsage().rss;
  const pool = createNodePool(2);
  const coat = await createEvaluator(pool.transport).evaluate(plant, { points: 50_000 });
  const used = process.memoryUsage().rss - before;
  pool.dispose();
  return {
    what: `memory for 1,200 sub-sources × ${coat.face.points.count} points, workers included`,
    figure: `${(used / 2 ** 20).toFixed(0)} MB`,
    goal: '≤ 300 MB',
  };
}

function print(rows: readonly Row[]): void {
  const width = Math.max(...rows.map(({ what }) => what.length));
  const figureWidth = Math.max(...rows.map(({ figure }) => figure.length));
  console.log(
    `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.versions.node}; medians of ${REPEATS} after 2 to warm up\n`,
  );
  for (const { what, figure, goal } of rows)
    console.log(`${what.padEnd(width)}  ${figure.padStart(figureWidth)}  ${goal}`);
}

const plant = plantOf(benchDesign({ emission: { law: 'cosine power' } }));
const memory = await memoryRow();
const kernels = await kernelRows(plant);
const pools = [await poolRow(plant, 1), await poolRow(plant, 2)];
const edits = await editRows(plant);
print([...kernels, ...pools, ...edits, await obstacleRow(), memory, ...(await browserRows())]);
process.exit(0);
