/** What shadows cost: full maps with obstacles against the same map without, by the same kernel. */
import { createFace } from '../../engine/geometry/face.ts';
import { buildMeshSolid } from '../../engine/geometry/mesh.ts';
import { computeColumns } from '../../engine/transport/column.ts';
import { createPlainKernel } from '../../engine/transport/depositKernel.ts';
import { buildScene } from '../../engine/transport/buildScene.ts';
import { sceneDataOf } from '../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../engine/transport/simd/simdKernel.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';
import { plantOf, type DesignPart } from '../support/plants.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

const REPEATS = 15;

const withObstacles = (...obstacles: readonly object[]): DesignPart => ({ ...benchDesign(), obstacles });

/** The rods of the bench that are out of the way: all but the first three. */
function idleRods(count: number): DesignPart {
  const { obstacles } = benchDesign({ obstacles: count + 3 }) as { readonly obstacles: readonly object[] };
  return withObstacles(...obstacles.slice(3));
}

const HUB_PLUG = {
  shape: 'cylinder',
  name: 'hub plug',
  from: ['0 m', '0 m', '0.1 m'],
  to: ['0 m', '0 m', '0.4 m'],
  diameter: '0.5 m',
};
const BAFFLE = { shape: 'disc', name: 'baffle', center: ['0 m', '0 m', '0.5 m'], normal: [0, 0, 1], diameter: '1.2 m' };
const LINER = {
  shape: 'tube',
  name: 'liner',
  from: ['0 m', '0 m', '0 m'],
  to: ['0 m', '0 m', '1.8 m'],
  diameter: '3.2 m',
};

/** Triangles of a ball, as a drawing program would hand them over. */
function ballMesh(x: number, y: number, z: number, radius: number, steps: number): Float32Array<ArrayBuffer> {
  const corner = (i: number, k: number): number[] => {
    const [polar, azimuth] = [(Math.PI * i) / steps, (Math.PI * k) / steps];
    const across = radius * Math.sin(polar);
    return [x + across * Math.cos(azimuth), y + across * Math.sin(azimuth), z + radius * Math.cos(polar)];
  };
  const corners: number[] = [];
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < 2 * steps; k++) {
      const quad = [corner(i, k), corner(i + 1, k), corner(i + 1, k + 1), corner(i, k + 1)] as const;
      if (i > 0) corners.push(...quad[0], ...quad[2], ...quad[3]);
      if (i < steps - 1) corners.push(...quad[0], ...quad[1], ...quad[2]);
    }
  }
  return Float32Array.from(corners);
}

/** Least time of each work in ms, taken in turns, so that a busy machine delays all alike. */
function leastTimes(works: readonly (() => unknown)[]): number[] {
  const least = works.map(() => Infinity);
  for (let turn = 0; turn < REPEATS + 2; turn++) {
    works.forEach((work, w) => {
      const start = performance.now();
      work();
      if (turn >= 2) least[w] = Math.min(least[w]!, performance.now() - start);
    });
  }
  return least;
}

/** Full maps from 576 sub-sources on 20,000 points, one thread, as multiples of the map without obstacles. */
export async function shadowRows(): Promise<Row[]> {
  const kernel = createSimdKernel() ?? createPlainKernel();
  const cases: readonly (readonly [
    what: string,
    goal: string,
    design: DesignPart,
    mesh?: Float32Array<ArrayBuffer>,
  ])[] = [
    ['no obstacle', '', benchDesign()],
    ['20 rods, 3 of them shade', '≤ 2.5 ×', benchDesign({ obstacles: 20 })],
    ['20 rods out of the way', '≤ 1.4 ×', idleRods(20)],
    ['one rod out of the way', '≤ 1.02 ×', idleRods(1)],
    ['a liner around everything', '≤ 1.02 ×', withObstacles(LINER)],
    ['a hub plug', '', withObstacles(HUB_PLUG)],
    ['a disc over half of the mirror', '', withObstacles(BAFFLE)],
    ['a ball of 3,024 triangles that shades', '', benchDesign(), ballMesh(0.6, 0, 0.5, 0.1, 28)],
    ['a ball of 3,024 triangles out of the way', '≤ 1.02 ×', benchDesign(), ballMesh(1.5, 0, 1.3, 0.1, 28)],
  ];
  const works = await Promise.all(
    cases.map(async ([, , design, mesh]) => {
      const plant = plantOf(design);
      const scene = await buildScene(sceneDataOf(plant));
      const visibility = createVisibility(mesh ? { ...scene, meshes: [buildMeshSolid({ position: mesh })] } : scene);
      const sources = plant.filaments.map(({ source }) => source);
      const { points } = createFace(plant.shape, 20_000);
      return () => computeColumns(sources, points, visibility, kernel);
    }),
  );
  const times = leastTimes(works);
  return cases.map(([what, goal], c) => ({
    what: `shadows: ${what}, one thread`,
    figure: c === 0 ? `${times[0]!.toFixed(1)} ms` : `${(times[c]! / times[0]!).toFixed(2)} ×`,
    goal,
  }));
}
