import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { createOrientedPoints, type OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { relativeError } from '../../support/plants.ts';
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

/** Units in the last place of one factor, as simdKernel.ts states: exp in SIMD, Math.exp and a product, each below one. */
const FACTOR_ULPS = 3;
/** The published values have six digits. */
const SIX_DIGITS = 5e-7;
/** Two products and a quotient of single numbers. */
const ROUNDING = 1e-15;
/** A factor below this is 0 in SIMD: 2⁻¹⁰²¹, under which its exponent would leave the normal numbers. */
const LEAST_FACTOR = 2 ** -1021;
/** In single precision, 2⁻²⁴ = 6e-8 a rounding: a dozen of them, those of r/λ counted as often as r/λ is large. */
const SINGLE_ROUNDING = 8e-7;

const ISOTROPIC: EmissionLaw = { kind: 'isotropic' };
const simd = simdKernel();
const single = simdKernel({ precision: 'single' });

/** Points straight below the origin at given distances that face it. */
function below(distances: readonly number[]): OrientedPoints {
  const points = createOrientedPoints(distances.length);
  distances.forEach((r, i) => {
    points.position[3 * i + 2] = -r;
    points.normal[3 * i + 2] = 1;
  });
  return points;
}

describe.each([plain, simd, single])('the $name kernel', (kernel) => {
  const rounding = kernel === single ? SINGLE_ROUNDING : ROUNDING;

  // exp(−r/λ) at r/λ = 0.01 … 2: any table of the exponential, such as Abramowitz & Stegun (1964), table 4.4; the law
  // of free paths itself: S. Dushman, Scientific Foundations of Vacuum Technique (1949), from memory
  test.each([
    [0.01, 0.99005],
    [0.1, 0.904837],
    [0.5, 0.606531],
    [1, 0.367879],
    [2, 0.135335],
  ])('lets through the share of atoms that no collision stops, at r/λ = %f', (paths, share) => {
    const points = below([0.7]);
    for (const law of [...EXACT_LAWS, { kind: 'cosine', power: 2.5 } as const]) {
      // sideways, so that the wire emits toward the point too
      const source = sourceOf([[[0, 0, 0], [0.6, 0, -0.8], 1]], law);
      const [vacuum] = sumOf(kernel, source, points).deposit;
      const [gas] = sumOf(kernel, source, points, { perFreePath: paths / 0.7 }).deposit;
      expect(Math.abs(gas! / vacuum! - share)).toBeLessThan(SIX_DIGITS);
    }
  });

  test('takes two stretches as the product of each', () => {
    const points = below([0.3, 0.5, 0.8]);
    const source = downward(ISOTROPIC);
    const share = (perFreePath: number): Float64Array => {
      const { deposit } = sumOf(kernel, source, points, { perFreePath });
      return sumOf(kernel, source, points).deposit.map((value, i) => deposit[i]! / value);
    };
    const [a, b, both] = share(1.7);
    expect(relativeError(a! * b!, both!)).toBeLessThan(4 * rounding);
    expect(relativeError(share(0.9)[2]! * share(0.8)[2]!, both!)).toBeLessThan(4 * rounding);
  });

  test('leaves nothing where the gas is thick, and no number that is none', () => {
    const { deposit } = sumOf(kernel, downward(ISOTROPIC), below([0.5, 1, 3, 0]), { perFreePath: 1e4 });
    expect([...deposit]).toEqual([0, 0, 0, 0]);
  });

  test('takes a free path without end as vacuum, to the bit', () => {
    const points = below([0.1, 0.4, 2]);
    const source = downward({ kind: 'coil' });
    expect(sumOf(kernel, source, points, { perFreePath: 0 }).deposit).toEqual(sumOf(kernel, source, points).deposit);
    // 1e-300 per metre: the factor rounds to 1, by the path through gas
    expect(sumOf(kernel, source, points, { perFreePath: 1e-300 }).deposit).toEqual(
      sumOf(kernel, source, points).deposit,
    );
  });

  test('cuts by the shield what the gas would have let through, and marks it', () => {
    fc.assert(
      fc.property(anyPoints, anySource, anyShield, (points, some, shield) => {
        const source = sourceOf(some, ISOTROPIC, shield);
        const options = { perFreePath: 0.4 };
        const past = sumOf(kernel, sourceOf(some.slice(0, 1), ISOTROPIC, shield), points, {
          ...options,
          isShielded: true,
        });
        const open = sumOf(kernel, sourceOf(some.slice(0, 1), ISOTROPIC), points, options).deposit;
        past.deposit.forEach((value, i) => expect(value).toBe(past.hidden[0]![i] === 1 ? 0 : open[i]));
        // unshielded sources answer with no marks
        const marks = sumOf(kernel, { ...source, shield: null }, points, { ...options, isShielded: true }).hidden;
        expect(marks.every((mark) => mark.every((flag) => flag === 0))).toBe(true);
      }),
      { seed: 7, numRuns: 20 },
    );
  });
});

test('exp in SIMD is within its stated error of Math.exp down to where it is 0', () => {
  // from 1e-18 to 800 free paths, close where physics is
  const paths = Array.from({ length: 60_000 }, (_, i) =>
    i % 3 === 0 ? (20 * i) / 60_000 : i % 3 === 1 ? (800 * i) / 60_000 : 10 ** ((-18 * i) / 60_000),
  );
  const points = below(paths);
  const vacuum = sumOf(plain, downward(ISOTROPIC), points).deposit;
  const expected = sumOf(plain, downward(ISOTROPIC), points, { perFreePath: 1 }).deposit;
  const found = sumOf(simd, downward(ISOTROPIC), points, { perFreePath: 1 }).deposit;
  let worst = 0;
  expected.forEach((value, i) => {
    if (value < LEAST_FACTOR * vacuum[i]! || value < 2 ** -1022) expect(found[i]).toBeLessThan(LEAST_FACTOR);
    else worst = Math.max(worst, ulpsBetween(value, found[i]!));
  });
  expect(worst).toBeLessThanOrEqual(FACTOR_ULPS);
  expect(worst).toBeGreaterThan(0); // two ways of computing: were they one, this would compare nothing
});

test.each(named(EXACT_LAWS))('SIMD in gas equals plain TypeScript in gas within the stated error: %s', (_name, law) => {
  fc.assert(
    fc.property(anyPoints, anySource, fc.double({ min: 0.01, max: 20, noNaN: true }), (points, some, perFreePath) => {
      const source = sourceOf(some, law);
      const expected = sumOf(plain, source, points, { perFreePath }).deposit;
      const found = sumOf(simd, source, points, { perFreePath }).deposit;
      // each term within FACTOR_ULPS, each sum rounded once more
      expected.forEach((value, i) => {
        if (value > 2 ** -1000) expect(ulpsBetween(value, found[i]!)).toBeLessThanOrEqual(FACTOR_ULPS + source.count);
      });
    }),
    { seed: 22, numRuns: 30 },
  );
});
