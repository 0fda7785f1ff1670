import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { createOrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { openPlantFile } from '../../../engine/plant/openPlant.ts';
import { computeColumns } from '../../../engine/transport/column.ts';
import { MIXES, RUN, type DepositKernel } from '../../../engine/transport/depositKernel.ts';
import { buildScene } from '../../../engine/transport/buildScene.ts';
import { sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../../engine/transport/simd/simdKernel.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import { benchDesign } from '../../bench/benchDesign.ts';
import { planeReceivers } from '../../support/plants.ts';
import {
  anyPoints,
  anyShield,
  anySource,
  downward,
  EXACT_LAWS,
  named,
  plain,
  simdKernel,
  sourceOf,
  sumOf,
  ulpsBetween,
} from './kernelCases.ts';

const opened = openPlantFile(benchDesign({ rings: 1, count: 3, obstacles: 6 }));
if (!opened.ok) throw new Error('the bench design is sound');
const scene = await buildScene(sceneDataOf(opened.plant));

/** Least normal number, doubled because the kernel stops one binary exponent above it. */
const LEAST_NORMAL = 2 * 2 ** -1022;

describe('the SIMD kernel', () => {
  const simd = simdKernel();

  test('runs here', () => {
    expect(simd.name).toBe('SIMD');
    expect(createSimdKernel({ precision: 'single' })?.name).toBe('SIMD, single');
  });

  test.each(named(EXACT_LAWS))('gives the bits of the plain one: %s', (_name, law) => {
    fc.assert(
      fc.property(anyPoints, anySource, fc.boolean(), (points, some, isClear) => {
        const visibility = createVisibility(
          isClear ? { ...scene, solids: { count: 0, records: new Float64Array(0) } } : scene,
        );
        const sources = [sourceOf(some, law), sourceOf(some.slice(0, 1), law)];
        expect(computeColumns(sources, points, visibility, simd)).toEqual(
          computeColumns(sources, points, visibility, plain),
        );
      }),
      { seed: 20, numRuns: 60 },
    );
  });

  test.each(named(EXACT_LAWS))('gives the bits of the plain one past a shield: %s', (_name, law) => {
    fc.assert(
      fc.property(anyPoints, anySource, anyShield, (points, some, shield) => {
        const source = sourceOf(some, law, shield);
        expect(sumOf(simd, source, points, { isShielded: true })).toEqual(
          sumOf(plain, source, points, { isShielded: true }),
        );
      }),
      { seed: 21, numRuns: 40 },
    );
  });

  test.each([
    ['at its source', 0],
    ['within a rounding of its source', 1e-200],
    ['a micrometre from its source', 1e-6],
  ])('gives the bits of the plain one for a point %s', (_name, distance) => {
    const points = planeReceivers([
      [distance, 0],
      [0, distance],
      [-distance, distance],
    ]);
    for (const law of EXACT_LAWS) {
      const source = sourceOf([[[0, 0, distance], [0, 0.6, -0.8], 0.7]], law);
      const { deposit } = sumOf(simd, source, points);
      expect(deposit).toEqual(sumOf(plain, source, points).deposit);
      expect(deposit.every((value) => Number.isFinite(value))).toBe(true);
    }
  });

  test.each([0.1, 0.5, 1.3, 2.5, 7.9, 12, 40, 200])(
    'takes the cosine to the power %f within the stated units in the last place',
    (power) => {
      // directions from the axis to 1e-12 rad off its equator, all at distance 1
      const count = 20_000;
      const points = createOrientedPoints(count);
      for (let i = 0; i < count; i++) {
        const cosEmit = i % 2 === 0 ? (i + 1) / count : 10 ** ((-12 * i) / count);
        points.position.set([Math.sqrt(1 - cosEmit * cosEmit), 0, -cosEmit], 3 * i);
        points.normal.set([-0.6, 0, 0.8], 3 * i);
      }
      const source = downward({ kind: 'cosine', power });
      const [expected, found] = [sumOf(plain, source, points).deposit, sumOf(simd, source, points).deposit];
      let worst = 0;
      expected.forEach((value, i) => {
        if (value < LEAST_NORMAL * (power + 1)) expect(found[i]).toBeLessThanOrEqual(LEAST_NORMAL * (power + 1));
        else worst = Math.max(worst, ulpsBetween(value, found[i]!));
      });
      expect(worst).toBeLessThanOrEqual(3 + 1.5 * power);
    },
  );

  test('takes any power of a cosine of 1 as 1, of 0 and less as 0', () => {
    const points = createOrientedPoints(3);
    points.position.set([0, 0, -1, 1, 0, 0, 0.8, 0, 0.6]);
    points.normal.set([0, 0, 1, -1, 0, 0, -1, 0, 0]);
    for (const power of [0, 0.3, 2.5, 9, 200]) {
      const { deposit } = sumOf(simd, downward({ kind: 'cosine', power }), points);
      expect([...deposit]).toEqual([(power + 1) / (2 * Math.PI), 0, 0]);
    }
  });

  test('keeps apart more runs than it has places for', () => {
    // three sets of points that fill its memory more than once, read in turn
    const sets = [0, 1, 2].map((k) => planeReceivers(Array.from({ length: 60 * RUN + 7 }, (_, i) => [1e-4 * i, k])));
    const source = sourceOf([[[0.5, 0.5, 1], [0, 0, -1], 1]], { kind: 'cosine', power: 1 });
    const expected = sets.map((points) => sumOf(plain, source, points).deposit);
    for (let turn = 0; turn < 2; turn++) {
      sets.forEach((points, k) => expect(sumOf(simd, source, points).deposit).toEqual(expected[k]));
    }
  });

  // more sub-sources than the module's memory takes at a time, and than single precision sums before it rounds
  test.each(
    named([...EXACT_LAWS, { kind: 'cosine', power: 2.5 }]).flatMap(([name, law]) =>
      ['double', 'single'].map((precision) => [`${name}, ${precision}`, law, precision] as const),
    ),
  )('sums a long filament in one call as it does one by one: %s', (_name, law, precision) => {
    const kernel = createSimdKernel({ precision: precision as 'double' | 'single' })!;
    const source = sourceOf(
      Array.from({ length: 131 }, (_, j) => [[0.01 * j, 0.3, 1], [0, 0.6, -0.8], 1 + j / 7]),
      law,
    );
    const points = planeReceivers(Array.from({ length: 37 }, (_, i) => [i / 20, i / 90] as const));
    for (const perFreePath of [0, 0.5]) {
      const together = sumOf(kernel, source, points, { perFreePath, isTogether: true });
      expect(together).toEqual(sumOf(kernel, source, points, { perFreePath }));
      expect(together.deposit.every((value) => value > 0)).toBe(true);
    }
  });

  test('mixes sums with the bits of the plain one, and of adding them up', () => {
    const laws: readonly EmissionLaw[] = [{ kind: 'coil' }, { kind: 'isotropic' }, { kind: 'cosine', power: 1 }];
    const sources = laws.map((law, k) => sourceOf([[[0.2 * k, 0, 1], [0, 0, -1], 1]], law));
    const points = planeReceivers(Array.from({ length: 37 }, (_, i) => [i / 20, i / 90] as const));
    const factors = [0.3, 1e-9, 7.1];
    const mixesBy = (kernel: DepositKernel): Float64Array[] => {
      const mixes = Array.from({ length: MIXES }, () => new Float64Array(points.count));
      for (const from of [0, 1]) {
        kernel.load(points, 0, points.count);
        kernel.clearMixes();
        sources.slice(from).forEach((source, f) => {
          kernel.clear();
          kernel.add(source, 0);
          mixes.forEach((_, m) => kernel.addToMix(m, (m + 1) * factors[f]!));
        });
        mixes.forEach((mix, m) => kernel.readMixInto(mix, m));
      }
      return mixes;
    };
    const mixes = mixesBy(simd);
    expect(mixes).toEqual(mixesBy(plain));
    const sums = sources.slice(1).map((source) => sumOf(plain, source, points).deposit);
    expect(mixes[1]).toEqual(sums[0]!.map((value, i) => 2 * factors[0]! * value + 2 * factors[1]! * sums[1]![i]!));
  });

  test('refuses a run that starts between two runs', () => {
    expect(() => simd.load(planeReceivers([[0, 0]]), 1, 1)).toThrow(RangeError);
  });

  test('is what its source compiles to', () => {
    const build = fileURLToPath(new URL('../../../engine/transport/simd/build.mjs', import.meta.url));
    expect(() => execFileSync(process.execPath, [build, '--check'], { stdio: 'pipe' })).not.toThrow();
  });

  test('gives way where WebAssembly is missing, forbidden or too old', () => {
    vi.stubGlobal('WebAssembly', undefined);
    expect(createSimdKernel()).toBeNull();
    expect(createSimdKernel({ precision: 'single' })).toBeNull();
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
