/** Shadows of turned filaments against those of every filament on its own. */
import { describe, expect, test } from 'vitest';
import { mixedCells } from '../../../engine/coat/refineAtShadows.ts';
import { hiddenByTurns, turnedFilaments, type Hidden } from '../../../engine/coat/turnedShadows.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import { evaporatedMasses, type Plant } from '../../../engine/plant/plant.ts';
import { createLocalTransport } from '../../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { presets } from '../../../presets/index.ts';
import { plantOf, type DesignPart } from '../../support/plants.ts';

const POINTS = 20_000;
const transport = createLocalTransport();

const spider = (vanes: number): DesignPart[] =>
  Array.from({ length: vanes }, (_, k) => {
    const angle = 0.07 + (2 * Math.PI * k) / vanes;
    return {
      shape: 'box',
      name: `vane ${k}`,
      center: [`${0.5 * Math.cos(angle)} m`, `${0.5 * Math.sin(angle)} m`, '0.4 m'],
      size: ['0.7 m', '20 mm', '80 mm'],
      rotation: ['0 deg', '0 deg', `${(angle * 180) / Math.PI} deg`],
    };
  });

const rings = (counts: readonly number[], obstacles: readonly DesignPart[], mirror: DesignPart = {}): Plant =>
  plantOf({
    mirror: { radiusOfCurvature: '12 m', conicConstant: -1, outerDiameter: '2.6 m', ...mirror },
    tank: { diameter: '3.8 m', depth: '2 m' },
    filamentTypes: { two: { loops: 2, length: '40 mm', clipMass: '40 mg', emission: { law: 'open coil' } } },
    filaments: counts.map((count, i) => ({
      arrangement: 'ring',
      name: `ring ${i}`,
      type: 'two',
      count,
      diameter: `${3.1 - 0.9 * i} m`,
      height: `${1 + 0.05 * i} m`,
      startAngle: `${7 * i + 3} deg`,
    })),
    obstacles,
  });

async function compare(plant: Plant) {
  const face = createFace(plant.shape, POINTS);
  const scene = sceneDataOf(plant);
  const sources = keyedSourcesOf(plant);
  // charges of a plant that nobody wired evenly
  const masses = evaporatedMasses(plant).map((mass, f) => mass * (1 + (f % 5) / 3));
  const hidden = async (some: typeof sources, mix: Float64Array): Promise<Hidden> => {
    const request = { scene, sources: some, blocks: [keyedPoints(face.points)], mixes: [mix], part: 'hidden' } as const;
    const [result] = await transport.deposit({ ...request, withSignature: true, withArrival: false });
    return { sum: result!.sums[0]!, signature: result!.signature! };
  };
  const classes = turnedFilaments(face, scene, sources);
  const expected = await hidden(sources, masses);
  const leads = (classes ?? []).map(({ lead }) => hidden([sources[lead]!], Float64Array.of(1)));
  return { face, classes, expected, found: hiddenByTurns(classes ?? [], await Promise.all(leads), masses) };
}

describe.each([
  ['a ring of 24 and a spider of three', () => rings([24], spider(3)), 8],
  ['rings of 16 and 12 and a spider of four', () => rings([16, 12], spider(4)), 7],
  ['rings of 12 and 6 over a hexagon, a spider of six', () => rings([12, 6], spider(6), { outline: 'hexagon' }), 3],
] as const)('%s', (_, plantFor, leads) => {
  test('hide the same as one by one, and the same cells have edges', async () => {
    const { face, classes, expected, found } = await compare(plantFor());
    expect(classes).toHaveLength(leads);
    const largest = Math.max(...expected.sum);
    expect(largest).toBeGreaterThan(0);
    expected.sum.forEach((value, i) => expect(Math.abs(found.sum[i]! - value)).toBeLessThan(1e-12 * largest));
    expect(mixedCells(face.cells, found.signature)).toEqual(mixedCells(face.cells, expected.signature));
  });
});

test('the first presets need the shadow of one filament of each ring', async () => {
  for (const [id, count] of [
    ['tarn-hill-as-wired', 1],
    ['tarn-hill-second-ring', 2],
  ] as const) {
    const plant = plantOf({ ...presets.find((preset) => preset.id === id)!.file });
    const face = createFace(plant.shape, 20_000);
    expect(turnedFilaments(face, sceneDataOf(plant), keyedSourcesOf(plant))).toHaveLength(count);
  }
});

test('no turn is used where a mesh, an off-axis surface or scattered filaments forbid it', () => {
  const classesOf = (plant: Plant) =>
    turnedFilaments(createFace(plant.shape, POINTS), sceneDataOf(plant), keyedSourcesOf(plant));
  expect(classesOf(rings([24], spider(3), { offAxisDistance: '0.4 m' }))).toBeNull();
  expect(classesOf(rings([7], spider(3)))).toBeNull();
  expect(classesOf(rings([36], spider(4)))).toBeNull(); // nine apart are too many to ask for one by one
  const meshes = plantOf({ ...presets.find(({ id }) => id === 'spider-shadow')!.file });
  expect(classesOf(meshes)).toBeNull();
});
