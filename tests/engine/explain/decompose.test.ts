import { describe, expect, test } from 'vitest';
import { decompose, type Decomposition } from '../../../engine/explain/decompose.ts';
import { zoneAt } from '../../../engine/explain/places.ts';
import { buildScene } from '../../../engine/transport/buildScene.ts';
import { sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import type { OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import type { Plant } from '../../../engine/plant/plant.ts';
import { presets } from '../../../presets/index.ts';
import { openPlantFile } from '../../../engine/index.ts';
import { oneSource, planeReceivers, plantOf, receivers, sourceList, type DesignPart } from '../../support/plants.ts';

/** Of five factors and their shares for one source. */
const ROUNDING = 1e-14;
/** Of sums over up to 600 sub-sources and 146 pairs of points. */
const ROUNDING_OF_SUMS = 1e-12;

const FLAT: DesignPart = {
  mirror: { radiusOfCurvature: 'flat', outerDiameter: '8 m', facing: 'up' },
  tank: { diameter: '30 m', depth: '30 m' },
};

async function decomposed(
  plant: Plant,
  from: OrientedPoints,
  to: OrientedPoints,
  freePath?: number,
): Promise<Decomposition> {
  return decompose(plant, await buildScene(sceneDataOf(plant)), from, to, freePath);
}

const sharesOf = ({ factors }: Decomposition): number[] => factors.map(({ share }) => share);
const aloneOf = ({ factors }: Decomposition): number[] => factors.map(({ alone }) => alone);
const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

function expectClose(actual: readonly number[], expected: readonly number[], tolerance = ROUNDING): void {
  expect(actual).toHaveLength(expected.length);
  actual.forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThanOrEqual(tolerance));
}

/** Shapley's value of three factors that go from 1 to x, y, z: the first one's share. */
const ofThree = (x: number, y: number, z: number): number => (x - 1) * (1 / 3 + (y + z) / 6 + (y * z) / 3);

// L. Holland, W. Steckelmacher, Vacuum 2 (1952) 346: small sources over a plane, t/t0 = [1 + (x/h)²]^−2 for the
// cosine law and ^−3/2 for all directions alike; c = cos of the angle at source and plane
describe('a small source over a plane', () => {
  test.each([0.25, 0.5, 1, 2])(
    'of the cosine law at x/h = %d: c² by distance, c by departure, c by arrival',
    async (x) => {
      const plant = plantOf({ ...FLAT, ...oneSource([0, 0, 1], { law: 'cosine power', power: 1 }) });
      const result = await decomposed(plant, planeReceivers([[0, 0]]), planeReceivers([[x, 0]]));
      const c = 1 / Math.sqrt(1 + x * x);
      expectClose(aloneOf(result), [c * c - 1, c - 1, c - 1, 0, 0]);
      expectClose(sharesOf(result), [ofThree(c * c, c, c), ofThree(c, c * c, c), ofThree(c, c * c, c), 0, 0]);
      expectClose([sumOf(sharesOf(result))], [(1 + x * x) ** -2 - 1]);
    },
  );

  test.each([0.5, 1, 2])('of no preferred direction at x/h = %d: nothing by departure', async (x) => {
    const plant = plantOf({ ...FLAT, ...oneSource([0, 0, 1], { law: 'isotropic' }) });
    const result = await decomposed(plant, planeReceivers([[0, 0]]), planeReceivers([[x, 0]]));
    const c = 1 / Math.sqrt(1 + x * x);
    // two factors: step times the mean of the other
    expectClose(sharesOf(result), [((c * c - 1) * (1 + c)) / 2, 0, ((c - 1) * (1 + c * c)) / 2, 0, 0]);
    expectClose([sumOf(sharesOf(result))], [(1 + x * x) ** -1.5 - 1]);
  });
});

// the same paper: inside a sphere a source at the centre, and a cosine source on it, coat evenly
describe('a source that coats a sphere evenly', () => {
  const SPHERE: DesignPart = {
    mirror: { radiusOfCurvature: '5 m', conicConstant: 0, outerDiameter: '6 m', facing: 'up' },
    tank: { diameter: '30 m', depth: '30 m' },
  };

  test('from its centre has no factor that differs', async () => {
    const plant = plantOf({ ...SPHERE, ...oneSource([0, 0, 5], { law: 'isotropic' }) });
    const result = await decomposed(plant, zoneAt(plant.shape, 0), zoneAt(plant.shape, Infinity));
    expectClose(sharesOf(result), [0, 0, 0, 0, 0], ROUNDING_OF_SUMS);
  });

  test('from the sphere itself gains by distance what it loses by both angles', async () => {
    const plant = plantOf({ ...SPHERE, ...oneSource([0, 0, 10], { law: 'cosine power', power: 1 }) });
    const gamma = 0.6; // of the place, seen from the centre; the source sees it under half of that
    const place = receivers([
      {
        point: [5 * Math.sin(gamma), 0, 5 - 5 * Math.cos(gamma)],
        normal: [-Math.sin(gamma), 0, Math.cos(gamma)],
      },
    ]);
    const result = await decomposed(plant, planeReceivers([[0, 0]]), place);
    const c = Math.cos(gamma / 2);
    expectClose(aloneOf(result), [c ** -2 - 1, c - 1, c - 1, 0, 0]);
    expectClose(sharesOf(result), [ofThree(c ** -2, c, c), ofThree(c, c ** -2, c), ofThree(c, c ** -2, c), 0, 0]);
    expectClose([result.difference / result.from.deposit], [0]);
  });
});

describe('a single cause', () => {
  test('shadow: an obstacle over one of two like places takes all of it', async () => {
    const disc = {
      shape: 'disc',
      name: 'lid',
      center: ['0.5 m', '0 m', '0.5 m'],
      normal: [0, 0, 1],
      diameter: '0.2 m',
    };
    const plant = plantOf({ ...FLAT, ...oneSource([0, 0, 1], { law: 'isotropic' }), obstacles: [disc] });
    const result = await decomposed(plant, planeReceivers([[-1, 0]]), planeReceivers([[1, 0]]));
    expectClose(sharesOf(result), [0, 0, 0, -1, 0]);
    expect(result.to.blocked).toEqual([{ blocker: 0, deposit: result.from.deposit }]);
    expect([result.from.seenFilaments, result.to.seenFilaments]).toEqual([1, 0]);
  });

  // Lambert-Beer: what has flown r without a collision is exp(−r/λ)
  test('gas: with all else alike only the flights count, and at like distances nothing', async () => {
    const plant = plantOf({ ...FLAT, ...oneSource([0, 0, 4], { law: 'isotropic' }) });
    const facing = (r: number): OrientedPoints => receivers([{ point: [0, 0, 4 - r], normal: [0, 0, 1] }]);
    const [near, far, lambda] = [1.5, 3, 2];
    const result = await decomposed(plant, facing(near), facing(far), lambda);
    const [g, d] = [Math.exp((near - far) / lambda), (near / far) ** 2];
    expectClose([aloneOf(result)[4]!, sharesOf(result)[4]!], [g - 1, ((g - 1) * (1 + d)) / 2]);
    expectClose([sumOf(sharesOf(result))], [g * d - 1]);
    const like = await decomposed(plant, planeReceivers([[1, 0]]), planeReceivers([[0, -1]]), lambda);
    expectClose(sharesOf(like), [0, 0, 0, 0, 0]);
  });

  test('places behind the source lose by departure, and no shadow is invented', async () => {
    const plant = plantOf({
      ...FLAT,
      ...oneSource([0, 0, 1], { law: 'cosine power', power: 1, direction: [1, 0, 0] }),
    });
    const result = await decomposed(plant, planeReceivers([[1, 0]]), planeReceivers([[-1, 0]]));
    expectClose(sharesOf(result), [0, -1, 0, 0, 0]);
  });
});

// closed forms of thin rings over a plane, E the complete elliptic integral, checked there against quadrature:
// Holland & Steckelmacher's ring source, isotropic, h = 1: t/t0 for R = 0.5, 1 at ρ = 1
describe('a ring of many small sources', () => {
  test.each([
    [0.5, 0.509321],
    [1, 0.949],
  ])('of radius %d over a plane: the shares add up to the closed form', async (R, ratio) => {
    const count = 96;
    const ring = Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * k) / count;
      return { position: [R * Math.cos(angle), R * Math.sin(angle), 1] as const, charge: 1 / count };
    });
    const plant = plantOf({ ...FLAT, ...sourceList(ring, { law: 'isotropic' }) });
    const result = await decomposed(plant, planeReceivers([[0, 0]]), planeReceivers([[1, 0]]));
    expect(Math.abs(1 + sumOf(sharesOf(result)) - ratio)).toBeLessThan(1e-6); // digits of the table
    expect(Math.abs(result.from.effectiveFilaments - count)).toBeLessThan(ROUNDING_OF_SUMS);
    expect(result.to.effectiveFilaments).toBeLessThan(count);
    expect(result.from.seenFilaments).toBe(count);
    expect(Math.abs(result.from.nearest - Math.hypot(R, 1))).toBeLessThan(ROUNDING);
  });
});

describe('every preset', () => {
  const opened = presets.map(({ id, file }) => {
    const result = openPlantFile(file);
    if (!result.ok) throw new Error(id);
    return [id, result.plant] as const;
  });

  test.each(opened)('%s: the shares from centre to edge sum to the difference, with gas too', async (_id, plant) => {
    const [centre, edge] = [zoneAt(plant.shape, 0), zoneAt(plant.shape, Infinity)];
    for (const freePath of [Infinity, 3]) {
      const { factors, difference, from } = await decomposed(plant, centre, edge, freePath);
      const sum = sumOf(factors.map(({ deposit }) => deposit));
      expect(Math.abs(sum - difference) / from.deposit).toBeLessThan(ROUNDING_OF_SUMS);
    }
  });
});

test('places with different numbers of points are refused', async () => {
  const plant = plantOf({ ...FLAT, ...oneSource([0, 0, 1], { law: 'isotropic' }) });
  await expect(
    decomposed(
      plant,
      planeReceivers([[0, 0]]),
      planeReceivers([
        [0, 0],
        [1, 0],
      ]),
    ),
  ).rejects.toThrow(RangeError);
});
