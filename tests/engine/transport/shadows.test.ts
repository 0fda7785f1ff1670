import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { describe, expect, test } from 'vitest';
import { createEvaluator, type Coat } from '../../../engine/index.ts';
import { buildMeshSolid } from '../../../engine/geometry/mesh.ts';
import { readStl } from '../../../engine/geometry/stl.ts';
import { packSolids } from '../../../engine/geometry/solids.ts';
import { computeColumn } from '../../../engine/transport/column.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import {
  coatOf,
  metres,
  oneSource,
  place,
  plantOf,
  planeReceivers,
  pointSource,
  sceneOf,
  shapeOf,
  type DesignPart,
  type Vector,
} from '../../support/plants.ts';
import { base64, cubeStl } from '../../support/stl.ts';

/** Rounding of a projected edge. */
const ON_EDGE = 1e-9;
/**
 * Widest cell that an edge crosses after refinement, at 20,000 points on a mirror of 2 m, m; the grid's cells are 0.1 m
 * across their diagonal. Refinement stops where a cell's two rules agree to 1e-4 of an average cell's mass. Measured: 0.6 to 2.7 cm.
 */
const EDGE = 0.03;

const flatPlant = (source: DesignPart, obstacles: readonly DesignPart[], mirror: DesignPart = {}) =>
  plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m', ...mirror },
    tank: { diameter: '4 m', depth: '3 m' },
    ...source,
    obstacles,
  });

/** Least distance of two neighbouring map points that lie on either side of a shadow edge, and the greatest. */
function edgeWidth({ face, thickness }: Coat, insideShadow: (x: number, y: number) => number): number {
  const { position } = face.points;
  let widest = 0;
  for (const { nodes, side, depth } of face.cells) {
    const values = [...nodes];
    if (!values.some((node) => thickness[node]! > 0) || !values.some((node) => thickness[node] === 0)) continue;
    // a cell with both: the edge runs somewhere in it, at most its diagonal from every node
    const corners = [0, side - 1, side * (side - 1), side * side - 1].map((k) => nodes[k]!);
    const far = Math.hypot(
      position[3 * corners[0]!]! - position[3 * corners[3]!]!,
      position[3 * corners[0]! + 1]! - position[3 * corners[3]! + 1]!,
    );
    expect(depth).toBeGreaterThan(0);
    for (const node of values) {
      const signed = insideShadow(position[3 * node]!, position[3 * node + 1]!);
      if (signed > 0 !== (thickness[node] === 0)) widest = Math.max(widest, Math.abs(signed));
    }
    widest = Math.max(widest, far);
  }
  return widest;
}

describe('a disc over a plate throws the shadow of exact projection', () => {
  test.each<[string, Vector, Vector, number]>([
    ['straight above', [0, 0, 1], [0.1, 0.05, 0.5], 0.3],
    ['from the side: over half of the mirror', [0.9, 0.2, 0.8], [0.35, 0.1, 0.4], 0.5],
    ['from a rim to the other', [-1.1, 0, 1.2], [-0.4, -0.2, 0.7], 0.35],
  ])('from a point %s', async (_, source, disc, radius) => {
    const plant = flatPlant(oneSource(source, { law: 'isotropic' }), [
      { shape: 'disc', name: 'disc', center: place(disc), normal: [0, 0, 1], diameter: metres(2 * radius) },
    ]);
    const coat = await coatOf(plant, { points: 20_000, rays: 16 });
    // the shadow of a level disc on a level plate is a disc, magnified from the source: similar triangles
    const scale = source[2] / (source[2] - disc[2]);
    const [cx, cy] = [source[0] + scale * (disc[0] - source[0]), source[1] + scale * (disc[1] - source[1])];
    const insideBy = (x: number, y: number): number => scale * radius - Math.hypot(x - cx, y - cy);
    const { position, count } = coat.face.points;
    let shaded = 0;
    for (let i = 0; i < count; i++) {
      const inside = insideBy(position[3 * i]!, position[3 * i + 1]!);
      if (Math.abs(inside) < ON_EDGE) continue;
      expect(coat.thickness[i] === 0).toBe(inside > 0);
      if (inside > 0) shaded++;
    }
    expect(shaded).toBeGreaterThan(count / 50);
    // the edge lies in cells no wider than this; the grid's own are about 0.1 m across
    expect(edgeWidth(coat, insideBy)).toBeLessThan(EDGE);
  });

  test('a leaning disc throws an ellipse', async () => {
    const [source, centre]: [Vector, Vector] = [
      [0.3, -0.2, 1.1],
      [0.1, 0, 0.5],
    ];
    const normal: Vector = [0.48, 0.36, 0.8];
    const plant = flatPlant(oneSource(source, { law: 'straight wire' }), [
      { shape: 'disc', name: 'disc', center: place(centre), normal: [...normal], diameter: '0.5 m' },
    ]);
    const coat = await coatOf(plant, { points: 8000, rays: 16 });
    const { position, count } = coat.face.points;
    for (let i = 0; i < count; i++) {
      const d: Vector = [position[3 * i]! - source[0], position[3 * i + 1]! - source[1], -source[2]];
      // where the line of sight pierces the disc's plane
      const to =
        normal[0] * (centre[0] - source[0]) + normal[1] * (centre[1] - source[1]) + normal[2] * (centre[2] - source[2]);
      const t = to / (normal[0] * d[0] + normal[1] * d[1] + normal[2] * d[2]);
      const inside =
        0.25 -
        Math.hypot(
          source[0] + t * d[0] - centre[0],
          source[1] + t * d[1] - centre[1],
          source[2] + t * d[2] - centre[2],
        );
      if (Math.abs(inside) > ON_EDGE) expect(coat.thickness[i] === 0).toBe(t > 0 && t < 1 && inside > 0);
    }
  });

  test('the area of the shadow comes out of the statistics, within their error', async () => {
    // with the source far away the lit part is coated evenly: mean thickness = lit share of the area
    const plant = flatPlant(oneSource([0, 0, 2.5], { law: 'isotropic' }), [
      { shape: 'disc', name: 'disc', center: ['0.1 m', '0 m', '0.5 m'], normal: [0, 0, 1], diameter: '0.6 m' },
    ]);
    const { statistics, budget } = await coatOf(plant, { points: 20_000, rays: 2 ** 17 });
    const open = await coatOf(flatPlant(oneSource([0, 0, 2.5], { law: 'isotropic' }), []), {
      points: 20_000,
      rays: 16,
    });
    // mass in the shadow's disc: solid angle of the obstacle, by the integral of the open coat over the projected disc
    let hidden = 0;
    const [scale, steps] = [1.25, 400];
    const [cx, r] = [0.1 * scale, 0.3 * scale];
    for (let a = 0; a < steps; a++) {
      for (let b = 0; b < steps; b++) {
        const s = r * Math.sqrt((a + 0.5) / steps);
        const angle = (2 * Math.PI * (b + 0.5)) / steps;
        const rho2 = (cx + s * Math.cos(angle)) ** 2 + (s * Math.sin(angle)) ** 2;
        hidden += 2.5 / (4 * Math.PI * (2.5 ** 2 + rho2) ** 1.5);
      }
    }
    hidden *= (Math.PI * r * r) / steps ** 2;
    const lost = open.statistics.collection.value - statistics.collection.value;
    expect(Math.abs(lost - hidden)).toBeLessThan(statistics.collection.error);
    expect(statistics.collection.error / hidden).toBeLessThan(0.03);
    const disc = budget.items.find(({ name }) => name === 'disc')!.mass;
    expect(Math.abs(disc.value - hidden)).toBeLessThan(disc.error);
  });
});

describe('what cannot matter changes nothing', () => {
  const sources: DesignPart = {
    filamentTypes: { helix: { loops: 2, length: '40 mm', charge: '1 g', emission: { law: 'open coil' } } },
    filaments: [{ arrangement: 'ring', name: 'ring', type: 'helix', count: 7, diameter: '1.6 m', height: '0.8 m' }],
  };
  const bowl = { radiusOfCurvature: '6 m', holeDiameter: '0.3 m' };

  test.each<[string, DesignPart]>([
    [
      'a box above the filaments',
      { shape: 'box', name: 'x', center: ['0 m', '0 m', '1.4 m'], size: ['2 m', '2 m', '0.2 m'] },
    ],
    [
      'a tube around everything',
      { shape: 'tube', name: 'x', from: ['0 m', '0 m', '0 m'], to: ['0 m', '0 m', '2 m'], diameter: '3 m' },
    ],
    ['a sphere below the hole', { shape: 'sphere', name: 'x', center: ['0 m', '0 m', '-0.3 m'], diameter: '0.1 m' }],
    [
      'a rod beside the mirror',
      {
        shape: 'cylinder',
        name: 'x',
        from: ['1.4 m', '-1 m', '0.4 m'],
        to: ['1.4 m', '1 m', '0.4 m'],
        diameter: '0.1 m',
      },
    ],
  ])('%s', async (_, obstacle) => {
    const evaluate = (obstacles: readonly DesignPart[]) =>
      createEvaluator().evaluate(flatPlant(sources, obstacles, bowl), { points: 3000, rays: 16 });
    const [bare, with1] = [await evaluate([]), await evaluate([obstacle])];
    expect(with1.face.points.count).toBe(bare.face.points.count);
    expect(with1.thickness).toEqual(bare.thickness); // bit by bit
    expect(with1.statistics).toEqual(bare.statistics);
  });
});

describe('a cube is a cube', () => {
  const size = [0.5, 0.3, 0.2] as const;
  const center: Vector = [0.2, -0.1, 0.5];
  const rotation = [0.2, 0.4, -0.7] as const;
  const placement = { scale: 1, position: center, rotation };
  const box = packSolids([
    { shape: 'box', name: 'box', center: [...center], size: [...size], rotation: [...rotation] },
  ]);

  test('whether it is a box or a mesh: columns agree but for points on the edge of the shadow', () => {
    const random = xoroshiro128plus(77);
    const points = planeReceivers(
      Array.from({ length: 20_000 }, () => [2 * uniformFloat64(random) - 1, 2 * uniformFloat64(random) - 1] as const),
    );
    const mesh = buildMeshSolid(readStl(cubeStl(size), placement));
    const source = pointSource({ kind: 'isotropic' }, [0.3, 0.2, 1.2]);
    const shape = shapeOf({ rimRadius: 2 });
    const [a, b] = [
      computeColumn(source, points, createVisibility(sceneOf(shape, box))).deposit,
      computeColumn(source, points, createVisibility(sceneOf(shape, packSolids([]), [mesh]))).deposit,
    ];
    const differing = a.filter((value, i) => value !== b[i]);
    expect(a.filter((value) => value === 0).length).toBeGreaterThan(500);
    expect(differing.length).toBeLessThanOrEqual(2); // single precision moves the edge by 1e-7 of 4 m²·20,000 points
  });

  test('from the design file to the budget', async () => {
    const degrees = rotation.map((angle) => `${angle} rad`);
    const common = { name: 'cube', position: undefined };
    const source = oneSource([0.3, 0.2, 1.2], { law: 'isotropic' });
    const boxed = await coatOf(
      flatPlant(source, [
        { shape: 'box', name: common.name, center: place(center), size: size.map(metres), rotation: degrees },
      ]),
      { points: 3000, rays: 2 ** 14 },
    );
    const meshed = await coatOf(
      flatPlant(source, [
        {
          shape: 'mesh',
          name: common.name,
          data: base64(cubeStl(size)),
          unit: 'm',
          position: place(center),
          rotation: degrees,
        },
      ]),
      { points: 3000, rays: 2 ** 14 },
    );
    expect(meshed.face.points.count).toBe(boxed.face.points.count);
    const differing = boxed.thickness.filter((value, i) => value !== meshed.thickness[i]);
    expect(differing.length).toBe(0);
    const mass = (coat: Coat) => coat.budget.items.find(({ name }) => name === 'cube')!.mass;
    expect(Math.abs(mass(boxed).value - mass(meshed).value)).toBeLessThan(mass(boxed).error);
  });
});

test('halving the grid narrows the cells at a shadow’s edge', async () => {
  const plant = flatPlant(oneSource([0, 0, 1], { law: 'isotropic' }), [
    { shape: 'disc', name: 'disc', center: ['0.1 m', '0 m', '0.5 m'], normal: [0, 0, 1], diameter: '0.6 m' },
  ]);
  const insideBy = (x: number, y: number): number => 0.6 - Math.hypot(x - 0.2, y);
  const widths: number[] = [];
  for (const points of [4000, 16_000, 64_000])
    widths.push(edgeWidth(await coatOf(plant, { points, rays: 16 }), insideBy));
  expect(widths[1]!).toBeLessThan(widths[0]!);
  expect(widths[2]!).toBeLessThan(widths[1]!);
});
