import { expect, test } from 'vitest';
import { createEvaluator, openPlantFile, type Plant } from '../../../engine/index.ts';
import { spotAt, zoneAt } from '../../../engine/explain/places.ts';
import { readPlace } from '../../../engine/explain/reading.ts';
import { evaporatedMasses } from '../../../engine/plant/plant.ts';
import { buildScene } from '../../../engine/transport/buildScene.ts';
import { createLocalTransport } from '../../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { presets } from '../../../presets/index.ts';

/** The kernels' elliptic integral for coils is off by up to this (fastEllipticE); other laws agree to rounding. */
const AGAINST_KERNELS = 3.5e-8;
/** A zone of 2 × 73 points against the map's quadrature, which weighs the area of the curved surface. */
const AGAINST_MAP = 1e-3;

const plants = presets.map(({ id, file }) => {
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(id);
  return [id, opened.plant] as const;
});
const plantNamed = (id: string): Plant => plants.find(([name]) => name === id)![1];

test.each(plants)('%s: a place reads what the columns give, shadows included', async (_id, plant) => {
  const scene = await buildScene(sceneDataOf(plant));
  const points = zoneAt(plant.shape, 0.6 * plant.shape.clearOuterRadius);
  const masses = evaporatedMasses(plant);
  const [result] = await createLocalTransport().deposit({
    scene: sceneDataOf(plant),
    blocks: [keyedPoints(points)],
    sources: keyedSourcesOf(plant),
    mixes: plant.filaments.map((_, f) => masses.map((mass, other) => (other === f ? mass : 0))),
    withSignature: false,
    withArrival: false,
  });
  const expected = result!.sums.map((sum) => sum.reduce((all, value) => all + value, 0));
  const { byFilament, bySet, deposit } = readPlace(plant, scene, points);
  const all = expected.reduce((sum, value) => sum + value, 0) / points.count;
  expected.forEach((value, f) =>
    expect(Math.abs(byFilament[f]! - value / points.count) / all).toBeLessThan(AGAINST_KERNELS),
  );
  expect(Math.abs(deposit - all) / all).toBeLessThan(AGAINST_KERNELS);
  expect(Math.abs(bySet.reduce((sum, value) => sum + value, 0) - deposit) / all).toBeLessThan(AGAINST_KERNELS);
});

test('the edge zone is the one of the edge ratio', async () => {
  const plant = plantNamed('tarn-hill-as-wired');
  const { statistics } = await createEvaluator().evaluate(plant, { points: 4000, rays: 0 });
  const { deposit } = readPlace(plant, await buildScene(sceneDataOf(plant)), zoneAt(plant.shape, Infinity));
  const thickness = (deposit * plant.film.sticking) / plant.film.density;
  expect(Math.abs(thickness / statistics.mean.value / statistics.edgeRatio.value - 1)).toBeLessThan(AGAINST_MAP);
});

test('zones keep within the clear aperture and on the glass', () => {
  for (const [, { shape }] of plants)
    for (const radius of [0, 0.4 * shape.rimRadius, Infinity]) {
      const { count, position } = zoneAt(shape, radius);
      for (let i = 0; i < count; i++) {
        const r = Math.hypot(position[3 * i]! - shape.centerX, position[3 * i + 1]!);
        expect(r).toBeGreaterThanOrEqual(shape.clearInnerRadius);
        expect(r).toBeLessThanOrEqual(shape.clearOuterRadius);
      }
    }
});

test('what shadows keep away plus what arrives is what would arrive without obstacles', async () => {
  const plant = plantNamed('spider-shadow');
  const open = { ...plant, obstacleNames: [], meshes: [], solids: { count: 0, records: new Float64Array(0) } };
  const points = zoneAt(plant.shape, 0.4);
  const shaded = readPlace(plant, await buildScene(sceneDataOf(plant)), points);
  const clear = readPlace(open, await buildScene(sceneDataOf(open)), points);
  const kept = shaded.blocked.reduce((sum, { deposit }) => sum + deposit, 0);
  expect(kept).toBeGreaterThan(0.01 * clear.deposit);
  expect(Math.abs((shaded.deposit + kept) / clear.deposit - 1)).toBeLessThan(1e-12);
});

test('a filament without a charge is not counted among those that are seen', async () => {
  const plant = plantNamed('tarn-hill-as-wired');
  const failed = { ...plant, filaments: plant.filaments.map((f, i) => (i < 3 ? { ...f, outOfUse: true } : f)) };
  const reading = readPlace(failed, await buildScene(sceneDataOf(failed)), spotAt(plant.shape, 1.2, 0));
  expect(reading.seenFilaments).toBe(33);
  expect(reading.effectiveFilaments).toBeLessThan(33);
});
