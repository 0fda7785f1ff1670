/** npm run bench: prints the figures that matter for speed and memory in one table. Nothing is asserted. */
import { cpus } from 'node:os';
import { createEvaluator } from '../../engine/coat/evaluateCoat.ts';
import { createFace } from '../../engine/geometry/face.ts';
import type { Plant } from '../../engine/plant/plant.ts';
import { computeColumns } from '../../engine/transport/column.ts';
import { createPlainKernel } from '../../engine/transport/depositKernel.ts';
import { createRecycler } from '../../engine/transport/recycler.ts';
import { buildScene } from '../../engine/transport/buildScene.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../engine/transport/simd/simdKernel.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';
import { createNodePool } from '../../workers/nodePool.ts';
import { plantOf } from '../support/plants.ts';
import { benchDesign } from './benchDesign.ts';
import { browserRows } from './browserBench.ts';
import { fieldRows } from './fieldRows.ts';
import { filmRows } from './filmRows.ts';
import { gasRows } from './gasRows.ts';
import { rowsInChromium } from './inChromium.ts';
import { kernelRows } from './kernelRows.ts';
import { mapRows } from './mapRows.ts';
import { naiveSum } from './naiveSum.ts';
import { shadowRows } from './shadowRows.ts';
import type { Row } from './row.ts';
import { FOR_SLOPES, IN_THREADS, median, ms, REPEATS } from './timing.ts';

async function editRows(plant: Plant): Promise<Row[]> {
  const pool = createNodePool(2);
  const evaluator = createEvaluator(pool.transport, pool.fields);
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
  }, IN_THREADS);
  const charge = await median(async () => {
    turn++;
    await evaluator.evaluate({
      ...plant,
      filaments: plant.filaments.map((filament, f) =>
        f === turn % 96 ? { ...filament, charge: filament.charge * 1.1 } : filament,
      ),
    });
  }, IN_THREADS);
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

/** Memory after a full evaluation of 1,200 sub-sources on 50,000 points with two workers, and after edits. */
async function memoryRows(): Promise<Row[]> {
  const plant = plantOf(benchDesign({ rings: 2, count: 100 }));
  const before = process.memoryUsage().rss;
  const used = (): string => `${((process.memoryUsage().rss - before) / 2 ** 20).toFixed(0)} MB`;
  const pool = createNodePool(2);
  const evaluator = createEvaluator(pool.transport);
  const coat = await evaluator.evaluate(plant, { points: 51_000 });
  const what = `memory for 1,200 sub-sources × ${coat.face.points.count} points, workers included`;
  const first: Row = { what, figure: used(), goal: '≤ 150 MB' };
  for (let k = 1; k <= 3; k++) {
    const filaments = plant.filaments.map((filament) => ({ ...filament, charge: filament.charge * (1 + k / 10) }));
    await evaluator.evaluate({ ...plant, filaments }, { points: 51_000 });
  }
  pool.dispose();
  return [
    first,
    { what: 'the same after all charges were changed three times, stores full', figure: used(), goal: '' },
  ];
}

/** The sum in one naive expression, as a first script would have it. */
async function naiveFigure(of: Plant): Promise<string> {
  const { points } = createFace(of.shape, 20_000);
  const pairs = points.count * of.filaments.reduce((sum, { source }) => sum + source.count, 0);
  return `${(((await median(() => naiveSum(of, points))) * 1e6) / pairs).toFixed(2)} ns a pair`;
}

/** Slope of log time against log size: 1 where the cost grows in proportion. */
function slope(sizes: readonly number[], times: readonly number[]): number {
  const [x, y] = [sizes.map(Math.log), times.map(Math.log)];
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const rise = x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0);
  return rise / x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
}

/** Time of all columns over points of a face, a point, ms; one thread, arrays used again. */
async function costOfPoint(filaments: number, pointCount: number): Promise<number> {
  const grown = plantOf(benchDesign({ count: filaments, emission: { law: 'cosine power' } }));
  const kernel = createSimdKernel() ?? createPlainKernel();
  const visibility = createVisibility(await buildScene(sceneDataOf(grown)));
  const { points } = createFace(grown.shape, pointCount);
  const sources = grown.filaments.map(({ source }) => source);
  const arrays = createRecycler(2 ** 30);
  const time = await median(() => {
    for (const { deposit } of computeColumns(sources, points, visibility, kernel, arrays.take))
      arrays.giveBack(deposit);
  }, FOR_SLOPES);
  return time / points.count;
}

/** How cost grows with sources, and with points. */
async function growthRows(): Promise<Row[]> {
  const counts = [12, 24, 48, 96];
  const byCount: number[] = [];
  for (const count of counts) byCount.push(await costOfPoint(count, 10_000));
  const sizes = [5000, 10_000, 20_000, 40_000];
  const bySize: number[] = [];
  for (const size of sizes) bySize.push((await costOfPoint(24, size)) * size);
  return [
    {
      what: 'cost against sources, slope of log over log',
      figure: slope(counts, byCount).toFixed(2),
      goal: '1.0 ± 0.05',
    },
    { what: 'cost against points, slope of log over log', figure: slope(sizes, bySize).toFixed(2), goal: '1.0 ± 0.05' },
  ];
}

function print(rows: readonly Row[]): void {
  const width = Math.max(...rows.map(({ what }) => what.length));
  const figureWidth = Math.max(...rows.map(({ figure }) => figure.length));
  console.log(
    `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.versions.node}; medians of ${REPEATS} after 2 to warm up, or in threads of ${IN_THREADS.count} after ${IN_THREADS.warmUp}\n`,
  );
  for (const { what, figure, goal } of rows)
    console.log(`${what.padEnd(width)}  ${figure.padStart(figureWidth)}  ${goal}`);
}

const plant = plantOf(benchDesign({ emission: { law: 'cosine power' } }));
const memory = await memoryRows();
print([
  { what: 'plain implementation, cosine, one thread (yardstick)', figure: await naiveFigure(plant), goal: '' },
  ...kernelRows(),
  ...(await rowsInChromium('./kernelRows.ts', 'kernelRows')),
  ...(await mapRows(createNodePool)),
  ...(await rowsInChromium('./mapRowsInBrowser.ts', 'mapRowsInBrowser')),
  ...(await growthRows()),
  ...(await editRows(plant)),
  ...fieldRows(),
  ...(await rowsInChromium('./fieldRows.ts', 'fieldRows')),
  ...(await shadowRows()),
  ...(await gasRows()),
  ...(await filmRows()),
  ...memory,
  ...(await browserRows()),
]);
process.exit(0);
