import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import type { OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { RUN, singleError } from '../../../engine/transport/depositKernel.ts';
import { planeReceivers, shapeOf } from '../../support/plants.ts';
import {
  anyPoints,
  anyShield,
  EXACT_LAWS,
  nameOf,
  named,
  place,
  plain,
  simdKernel,
  sourceOf,
  sumOf,
  unit,
} from './kernelCases.ts';

const LAWS: readonly EmissionLaw[] = [
  ...EXACT_LAWS.filter(({ kind }) => kind !== 'table'),
  { kind: 'cosine', power: 0.5 },
  { kind: 'cosine', power: 2.5 },
  { kind: 'cosine', power: 12 },
];

/** One rounding to single precision. */
const ROUNDING = 2 ** -24;
/** The power of a cosine: each multiplies in the roundings of the cosine once more. */
const powerOf = (law: EmissionLaw): number => (law.kind === 'cosine' ? law.power : 0);
/**
 * Roundings of a term, as a share of what a point there would catch if it faced the source at the law's peak: those of
 * three coordinates count in two cosines and r⁻², a dozen more in the formula; they seldom add up. Worst of 400 cases
 * each: 7 isotropic, 12 coil, 6 cos⁸, 14 cos¹².
 */
const roundingsOf = (law: EmissionLaw): number => 16 + 2 * powerOf(law);
/** Coats of whole plants, where the roundings of many terms cancel; worst below 2.4e-7, cos³ 2.7e-7, cos¹² 1.3e-6. */
const coatError = (law: EmissionLaw): number => 4e-7 + 1e-7 * powerOf(law);

/** Sub-sources with shares that loops have; below 1e-38 a share would be 0 in single precision. */
const anySource = fc.array(
  fc.tuple(
    place,
    unit,
    fc.integer({ min: 1, max: 100 }).map((percent) => percent / 100),
  ),
  {
    minLength: 1,
    maxLength: 4,
  },
);

/** How near to an edge a rounding decides, as a share of the distances involved. */
const EDGE = 8 * ROUNDING;

const single = simdKernel({ precision: 'single' });

/** Peak intensity of a law, 1/sr. */
function peakOf(law: EmissionLaw): number {
  if (law.kind === 'isotropic') return 1 / (4 * Math.PI);
  return law.kind === 'cosine' ? (law.power + 1) / (2 * Math.PI) : 1 / Math.PI ** 2;
}

/** Half the diagonal of the box about the run that point i belongs to, for every i. */
function runSizes({ count, position: p }: OrientedPoints): Float64Array {
  const sizes = new Float64Array(count);
  for (let begin = 0; begin < count; begin += RUN) {
    const end = Math.min(count, begin + RUN);
    const sides = [0, 1, 2].map((k) => {
      const along = Array.from({ length: end - begin }, (_, i) => p[3 * (begin + i) + k]!);
      return Math.max(...along) - Math.min(...along);
    });
    sizes.fill(Math.hypot(...sides) / 2, begin, end);
  }
  return sizes;
}

/** Worst error of a source's deposits in roundings, as roundingsOf counts them. */
function worstRoundings(source: FilamentSource, points: OrientedPoints): number {
  const { law, position: s, axis, weight } = source;
  const expected = sumOf(plain, source, points).deposit;
  const found = sumOf(single, source, points).deposit;
  const sizes = runSizes(points);
  let worst = 0;
  for (let i = 0; i < points.count; i++) {
    let scale = 0;
    let isOnEdge = false;
    for (let j = 0; j < source.count; j++) {
      const d = [0, 1, 2].map((k) => points.position[3 * i + k]! - s[3 * j + k]!);
      const r = Math.hypot(...d);
      const along = d.reduce((sum, x, k) => sum + x * axis[3 * j + k]!, 0);
      // powers below 1 leap, or rise with an infinite slope, where the cosine leaves 0
      if (law.kind === 'cosine' && law.power < 1 && Math.abs(along) < EDGE * (r + sizes[i]!)) isOnEdge = true;
      scale += ((weight[j]! * peakOf(law)) / r ** 2) * (1 + sizes[i]! / r);
    }
    if (!isOnEdge) worst = Math.max(worst, Math.abs(found[i]! - expected[i]!) / (scale * ROUNDING));
  }
  return worst;
}

describe('the single-precision kernel', () => {
  test.each(named(LAWS))('errs by its stated roundings for any source and points: %s', (_name, law) => {
    fc.assert(
      fc.property(anyPoints, anySource, (points, some) => {
        const source = sourceOf(some, law);
        // within a millimetre of a source the place itself is rounded: see below
        fc.pre(nearest(source, points) > 1e-3);
        expect(worstRoundings(source, points)).toBeLessThan(roundingsOf(law));
      }),
      { seed: 23, numRuns: 40 },
    );
  });

  test.each([
    ['1.2 m mirror under one ring', 0.6, 0.125, [[0.8, 0.5, 12]]],
    [
      '2.6 m mirror under two rings',
      1.3,
      1 / 11.96,
      [
        [1.45, 0.9, 36],
        [0.95, 1, 24],
      ],
    ],
    [
      '8 m mirror under three rings',
      4,
      1 / 29,
      [
        [4.4, 2, 60],
        [3, 2.5, 40],
        [1, 3, 12],
      ],
    ],
    ['0.3 m mirror close under a ring', 0.15, 0, [[0.12, 0.08, 9]]],
  ] as const)('coats whole plants within its stated error: %s', (_name, rimRadius, curvature, rings) => {
    const { points } = createFace(shapeOf({ rimRadius, curvature }), 700);
    for (const law of LAWS) {
      const expected = new Float64Array(points.count);
      const found = new Float64Array(points.count);
      let column = 0;
      for (const filament of ringsOf(rings, law)) {
        const [double, rough] = [sumOf(plain, filament, points).deposit, sumOf(single, filament, points).deposit];
        double.forEach((value, i) => {
          expected[i]! += value;
          found[i]! += rough[i]!;
          if (value > 0) column = Math.max(column, Math.abs(rough[i]! / value - 1) * Math.min(1, value / COUNTS));
        });
      }
      const error = Math.max(...expected.map((value, i) => Math.abs(found[i]! / value - 1)));
      expect(error, nameOf(law)).toBeLessThan(coatError(law));
      expect(column, nameOf(law)).toBeLessThan(singleError(law));
      expect(error, nameOf(law)).toBeGreaterThan(0); // single it is
    }
  });

  test.each(named(LAWS))('gives a number, none below zero, on the source and beside it: %s', (_name, law) => {
    for (const distance of [0, 1e-30, 1e-12, 1e-9, 1e-7, 1e-5]) {
      const points = planeReceivers([
        [0.3 + distance, 0.1],
        [0.3, 0.1 + distance],
        [0.3, 0.1],
        [0, 0],
      ]);
      const { deposit } = sumOf(single, sourceOf([[[0.3, 0.1, distance], [0, 0.6, -0.8], 1]], law), points);
      expect(deposit.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
    }
  });

  test.each(named(LAWS))(
    'leaves bare what is behind the source or faces away, and nearly so what is edge-on: %s',
    (_name, law) => {
      const points = planeReceivers([
        [0.3, 0],
        [0.1, 0.2],
      ]);
      const at = (height: number): Float64Array =>
        sumOf(single, sourceOf([[[0, 0, height], [0.6, 0, -0.8], 1]], law), points).deposit;
      expect([...at(-0.5)]).toEqual([0, 0]); // beneath the plane: the points face away
      for (const value of at(0))
        expect(Math.abs(value)).toBeLessThan((roundingsOf(law) * ROUNDING * 2 * peakOf(law)) / 0.05);
      if (law.kind !== 'cosine') return;
      const above = planeReceivers([[0.3, 0]], 1).normal.fill(0);
      above[2] = -1;
      const ceiling = { ...planeReceivers([[0, 0]], 1), normal: above };
      expect(sumOf(single, sourceOf([[[0, 0, 0.5], [0, 0, -1], 1]], law), ceiling).deposit[0]).toBe(0);
    },
  );

  test('adds many terms in doubles: the mean of 3,000 equal ones is one of them', () => {
    // in single precision throughout, the sum would drift by up to 3,000 roundings, 2e-4
    const points = planeReceivers([[0.2, 0.1]]);
    const many = (count: number): FilamentSource =>
      sourceOf(
        Array.from({ length: count }, () => [[0.1, 0.3, 0.7], [0, 0, -1], 0.1]),
        { kind: 'cosine', power: 1 },
      );
    const [one] = sumOf(single, many(1), points).deposit;
    const [all] = sumOf(single, many(3000), points).deposit;
    expect(Math.abs(all! / (3000 * one!) - 1)).toBeLessThan(16 * ROUNDING); // sixteen at a time
  });

  test('casts the shadow of a shield where the double kernel does, but for a rounding at its edge', () => {
    fc.assert(
      fc.property(anyPoints, anySource, anyShield, (points, some, shield) => {
        const source = sourceOf(some.slice(0, 1), { kind: 'isotropic' }, shield);
        fc.pre(nearest(source, points) > 1e-3);
        const [exact, rough] = [plain, single].map((kernel) => sumOf(kernel, source, points, { isShielded: true }));
        for (let i = 0; i < points.count; i++) {
          const d = [0, 1, 2].map((k) => points.position[3 * i + k]! - source.position[k]!);
          const r = Math.hypot(...d);
          const along = d.reduce((sum, x, k) => sum + x * shield.direction[k]!, 0);
          const facing = d.reduce((sum, x, k) => sum - x * points.normal[3 * i + k]!, 0);
          const room = EDGE * (r + 6); // places are within 6 m of the run's middle
          if (Math.abs(along - shield.cosHalfAngle * r) < room || Math.abs(facing) < room) continue;
          expect(rough!.hidden[0]![i]).toBe(exact!.hidden[0]![i]);
        }
      }),
      { seed: 24, numRuns: 40 },
    );
  });

  test('leaves measured tables to TypeScript, in doubles', () => {
    const table = EXACT_LAWS.find(({ kind }) => kind === 'table')!;
    const points = planeReceivers([
      [0.2, 0.1],
      [0.5, -0.3],
    ]);
    const source = sourceOf([[[0, 0, 1], [0, 0, -1], 1]], table);
    expect(sumOf(single, source, points)).toEqual(sumOf(plain, source, points));
  });
});

/** A column counts where it is at least this, 1/m²: a thousandth of a kilogram spread over 1,000 m². */
const COUNTS = 1e-3;

/** Least distance of any point from any sub-source. */
function nearest(source: FilamentSource, { count, position: p }: OrientedPoints): number {
  let least = Infinity;
  for (let j = 0; j < source.count; j++) {
    const [x, y, z] = source.position.subarray(3 * j, 3 * j + 3);
    for (let i = 0; i < count; i++)
      least = Math.min(least, Math.hypot(p[3 * i]! - x!, p[3 * i + 1]! - y!, p[3 * i + 2]! - z!));
  }
  return least;
}

/** Rings of filaments with four loops each, given as radius, height and count; the cosine looks down, coils along the ring. */
function ringsOf(rings: readonly (readonly [number, number, number])[], law: EmissionLaw): FilamentSource[] {
  return rings.flatMap(([radius, height, count]) =>
    Array.from({ length: count }, (_, f) => {
      const turn = (2 * Math.PI * f) / count + 0.1;
      const tangent = [-Math.sin(turn), Math.cos(turn), 0];
      const loops = [-1.5, -0.5, 0.5, 1.5].map((k): [number[], number[], number] => [
        [radius * Math.cos(turn), radius * Math.sin(turn), height].map((x, i) => x + 0.012 * k * tangent[i]!),
        law.kind === 'cosine' ? [0, 0, -1] : tangent,
        0.25,
      ]);
      return sourceOf(loops, law);
    }),
  );
}
