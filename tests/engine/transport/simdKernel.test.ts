import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { emissionTable } from '../../../engine/emission/emissionTable.ts';
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { createOrientedPoints, type OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { openPlantFile } from '../../../engine/plant/openPlant.ts';
import { computeColumns } from '../../../engine/transport/column.ts';
import { createPlainKernel, RUN } from '../../../engine/transport/depositKernel.ts';
import { buildScene } from '../../../engine/transport/localTransport.ts';
import { sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../../engine/transport/simd/simdKernel.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import { benchDesign } from '../../bench/benchDesign.ts';

const LAWS: readonly EmissionLaw[] = [
  { kind: 'isotropic' },
  { kind: 'cosine', power: 1 },
  { kind: 'cosine', power: 2 },
  { kind: 'cosine', power: 7 },
  { kind: 'cosine', power: 0 },
  { kind: 'cosine', power: 2.5 },
  { kind: 'wire' },
  { kind: 'coil' },
  { kind: 'table', table: emissionTable([0, 1, 3], [1, 0.5, 0.2]) },
];

const opened = openPlantFile(benchDesign({ rings: 1, count: 3, obstacles: 6 }));
if (!opened.ok) throw new Error('the bench design is sound');
const scene = await buildScene(sceneDataOf(opened.plant));

const unit = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }))
  .map(([z, turn]) => [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn), z]);
const place = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 3, maxLength: 3 });

/** Any number of points, whole vectors and runs or not. */
const anyPoints = fc.array(fc.tuple(place, unit), { minLength: 1, maxLength: 40 }).chain((some) =>
  fc.integer({ min: 1, max: RUN + 3 }).map((count): OrientedPoints => {
    const points = createOrientedPoints(count);
    for (let i = 0; i < count; i++) {
      const [position, normal] = some[i % some.length]!;
      points.position.set(
        position!.map((x) => x + 1e-3 * i),
        3 * i,
      );
      points.normal.set(normal!, 3 * i);
    }
    return points;
  }),
);
const anySource = fc.array(fc.tuple(place, unit, fc.double({ min: 0, max: 1, noNaN: true })), {
  minLength: 1,
  maxLength: 4,
});

function sourceOf(some: readonly (readonly [number[], number[], number])[], law: EmissionLaw): FilamentSource {
  return {
    count: some.length,
    position: Float64Array.from(some.flatMap(([position]) => position)),
    axis: Float64Array.from(some.flatMap(([, axis]) => axis)),
    weight: Float64Array.from(some, ([, , weight]) => weight),
    law,
    shield: null,
  };
}

describe('the SIMD kernel', () => {
  const simd = createSimdKernel();
  const plain = createPlainKernel();

  test('runs here', () => expect(simd?.name).toBe('SIMD'));

  test.each(LAWS.map((law) => [law.kind === 'cosine' ? `cosine power ${law.power}` : law.kind, law] as const))(
    'gives the bits of the plain one: %s',
    (_name, law) => {
      fc.assert(
        fc.property(anyPoints, anySource, fc.boolean(), (points, some, isClear) => {
          const visibility = createVisibility(
            isClear ? { ...scene, solids: { count: 0, records: new Float64Array(0) } } : scene,
          );
          const sources = [sourceOf(some, law), sourceOf(some.slice(0, 1), law)];
          expect(computeColumns(sources, points, visibility, simd!)).toEqual(
            computeColumns(sources, points, visibility, plain),
          );
        }),
        { seed: 20, numRuns: 60 },
      );
    },
  );

  test('is what its source compiles to', () => {
    const build = fileURLToPath(new URL('../../../engine/transport/simd/build.mjs', import.meta.url));
    expect(() => execFileSync(process.execPath, [build, '--check'], { stdio: 'pipe' })).not.toThrow();
  });

  test('gives way where WebAssembly is missing, forbidden or too old', () => {
    vi.stubGlobal('WebAssembly', undefined);
    expect(createSimdKernel()).toBeNull();
    const refuse = (): never => {
      throw new Error('no SIMD here');
    };
    vi.stubGlobal('WebAssembly', {
      Module: class {
        constructor() {
          refuse();
        }
      },
      Instance: class {},
    });
    expect(createSimdKernel()).toBeNull();
    vi.unstubAllGlobals();
  });
});
