/** Flights against the rays of the mass budget, and the clear ball about a place against both. */
import { describe, expect, test } from 'vitest';
import { clearanceAt, clearanceOf } from '../../../engine/gas/clearance.ts';
import { drawDirectionInto } from '../../../engine/gas/draw.ts';
import { flightSceneOf, nearestHit } from '../../../engine/gas/nearestHit.ts';
import { createRandom, keyInto, uniform, type Random } from '../../../engine/gas/random.ts';
import { firstHitOfBody, firstHitOfFace, glassOf } from '../../../engine/geometry/glass.ts';
import { buildMeshSolid } from '../../../engine/geometry/mesh.ts';
import { isInGlass, type MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { casterCount, firstHitOfCaster, type Scene } from '../../../engine/geometry/scene.ts';
import { packSolids } from '../../../engine/geometry/solids.ts';
import { exitOfTank, isInTank } from '../../../engine/geometry/tank.ts';
import { FACE, FIRST_OBSTACLE, GLASS_BODY, WALL } from '../../../engine/transport/massRays.ts';
import { shapeOf } from '../../support/plants.ts';

/** Both ways solve the same quadratics, in another order of operations. */
const ROUNDING = 1e-11;
const RAYS = 20_000;

const OBSTACLES = packSolids([
  { shape: 'box', name: 'box', center: [0.6, 0.3, 0.5], size: [0.3, 0.2, 0.1], rotation: [0.3, 0.2, 0.5] },
  { shape: 'cylinder', name: 'rod', from: [-0.5, 0, 0.4], to: [-0.3, 0.6, 0.6], diameter: 0.1 },
  { shape: 'tube', name: 'tube', from: [0, 0, 0.3], to: [0, 0.1, 0.9], diameter: 0.3 },
  {
    shape: 'cone frustum',
    name: 'cone',
    from: [-0.6, -0.6, 0.5],
    to: [-0.6, -0.5, 0.9],
    fromDiameter: 0.4,
    toDiameter: 0.1,
  },
  { shape: 'disc', name: 'disc', center: [0.5, -0.6, 0.8], normal: [0.6, 0, 0.8], diameter: 0.4 },
  {
    shape: 'annulus',
    name: 'annulus',
    center: [0, 0, 1.1],
    normal: [0, 0, 1],
    innerDiameter: 0.5,
    outerDiameter: 1.2,
  },
  { shape: 'sphere', name: 'ball', center: [0.1, -0.5, 0.6], diameter: 0.25 },
]);

/** A tetrahedron. */
const MESH = buildMeshSolid({
  position: Float32Array.from(
    [
      [0, 1, 2],
      [0, 3, 1],
      [0, 2, 3],
      [1, 3, 2],
    ].flatMap((corners) =>
      corners.flatMap(
        (k) =>
          [
            [0.2, 0.6, 0.4],
            [0.5, 0.7, 0.4],
            [0.3, 0.9, 0.5],
            [0.3, 0.7, 0.7],
          ][k]!,
      ),
    ),
  ),
});

const CONIC: Partial<MirrorShape> = { curvature: 1 / 3, conicConstant: -1.2, holeRadius: 0.25 };
const SHAPES: readonly (readonly [string, MirrorShape])[] = [
  ['flat', shapeOf()],
  ['a bowl with a hole', shapeOf(CONIC)],
  ['a deep sphere', shapeOf({ curvature: 0.8 })],
  ['a dome', shapeOf({ curvature: -0.5, conicConstant: 0.4 })],
  ['an off-axis piece', shapeOf({ ...CONIC, centerX: 0.3, rimRadius: 0.8, holeRadius: 0 })],
  ['a hexagon', shapeOf({ ...CONIC, cornerAngle: 0.3 })],
  ['an asphere', shapeOf({ ...CONIC, aspheric: [{ power: 4, coefficient: -0.08 }] })],
];

function sceneWith(shape: MirrorShape, isFull: boolean): Scene {
  return {
    glass: glassOf(shape),
    tank: { radius: 1.4, centerX: shape.centerX, lowZ: -1, highZ: 1.5 },
    solids: isFull ? OBSTACLES : packSolids([]),
    meshes: isFull ? [MESH] : [],
  };
}

/** A place in the tank and outside the glass. */
function drawPlaceInto(out: Float64Array, { tank, glass }: Scene, random: Random): void {
  do {
    out[0] = tank.centerX + tank.radius * (2 * uniform(random) - 1);
    out[1] = tank.radius * (2 * uniform(random) - 1);
    out[2] = tank.lowZ + (tank.highZ - tank.lowZ) * uniform(random);
  } while (!isInTank(tank, out[0], out[1], out[2]) || isInGlass(glass.shape, out[0], out[1], out[2]));
}

type Ray = readonly [ox: number, oy: number, oz: number, dx: number, dy: number, dz: number];

/** Every surface asked in turn, as the mass budget does. */
function endOfRay(scene: Scene, ray: Ray): readonly [place: number, t: number] {
  const hits: [number, number][] = [
    [WALL, exitOfTank(scene.tank, ...ray)],
    [FACE, firstHitOfFace(scene.glass, ...ray, 0)],
    [GLASS_BODY, firstHitOfBody(scene.glass, ...ray, 0)],
    ...Array.from({ length: casterCount(scene) }, (_, c): [number, number] => [
      FIRST_OBSTACLE + c,
      firstHitOfCaster(scene, c, ...ray, 0, Infinity),
    ]),
  ];
  return hits.reduce((best, hit) => (hit[1] < best[1] ? hit : best));
}

describe.each(SHAPES)('in a tank with %s', (_name, shape) => {
  test.each([
    ['alone', false],
    ['and obstacles', true],
  ] as const)('%s a flight ends where the mass budget’s ray ends, or before if it is short', (_what, isFull) => {
    const scene = sceneWith(shape, isFull);
    const flight = flightSceneOf(scene);
    const random = createRandom();
    keyInto(random, 21, isFull ? 1 : 0, 0);
    const from = new Float64Array(6);
    const met = new Set<number>();
    let worst = 0;
    for (let k = 0; k < RAYS; k++) {
      drawPlaceInto(from, scene, random);
      drawDirectionInto(from, 3, random);
      const ray = [...from] as unknown as Ray;
      const [place, t] = endOfRay(scene, ray);
      if (nearestHit(flight, ...ray, 0, Infinity) !== place) expect([place, t, ...ray]).toEqual('the same place');
      worst = Math.max(worst, Math.abs(flight.distance[0]! - t));
      if (nearestHit(flight, ...ray, 0, t * 0.999) !== -1) expect(ray).toEqual('no hit before the end');
      met.add(place);
    }
    expect(worst).toBeLessThan(ROUNDING);
    expect(met.size).toBe(3 + casterCount(scene));
  });

  test('no surface reaches into the clear ball about a place', () => {
    const scene = sceneWith(shape, true);
    const clearance = clearanceOf(scene);
    const flight = flightSceneOf(scene);
    const random = createRandom();
    keyInto(random, 22, 0, 0);
    const at = new Float64Array(6);
    let least = Infinity;
    let known = 0;
    for (let k = 0; k < RAYS / 20; k++) {
      drawPlaceInto(at, scene, random);
      const clear = clearanceAt(clearance, at[0]!, at[1]!, at[2]!);
      let nearest = Infinity;
      for (let i = 0; i < 60; i++) {
        drawDirectionInto(at, 3, random);
        nearestHit(flight, ...([...at] as unknown as Ray), 0, Infinity);
        nearest = Math.min(nearest, flight.distance[0]!);
      }
      least = Math.min(least, nearest - clear);
      known += clear / nearest / (RAYS / 20);
    }
    expect(least).toBeGreaterThanOrEqual(-ROUNDING);
    expect(known).toBeGreaterThan(0.5); // a bound of nothing would be true, and useless
  });
});

test('the clear ball touches the nearest surface where its distance is exact', () => {
  const scene = sceneWith(shapeOf(), true);
  const clearance = clearanceOf(scene);
  const at = (x: number, y: number, z: number): number => clearanceAt(clearance, x, y, z);
  // by hand: flat glass below, end wall above, side, the ball's middle, inside and outside the upright annulus
  expect(at(0.9, 0, 0.05)).toBeCloseTo(0.05, 8);
  expect(at(0, 0, 1.45)).toBeCloseTo(0.05, 8);
  expect(at(1.35, 0, 1)).toBeCloseTo(0.05, 8);
  expect(at(0.1, -0.5, 0.6)).toBeCloseTo(0.125, 8);
  expect(at(0.4, 0, 1.2)).toBeCloseTo(0.1, 8);
  expect(at(0, 0.22, 1.1)).toBeCloseTo(0.03, 8);
});
