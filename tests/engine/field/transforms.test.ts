import { describe, expect, test } from 'vitest';
import { chebyshevDerivativesInto, chebyshevInto, chebyshevNodes, unitPlace } from '../../../engine/field/chebyshev.ts';
import { columnSeries } from '../../../engine/field/columnSeries.ts';
import { tailOf, tailTerm } from '../../../engine/field/decay.ts';
import { gaussLegendre } from '../../../engine/field/gaussLegendre.ts';
import { radialMeans } from '../../../engine/field/radialMean.ts';
import { gaussLegendre as independentRule } from '../../support/quadrature.ts';

/** Sums of a few dozen terms of size 1. */
const ROUNDING = 1e-13;

type Polar = (r: number, angle: number) => number;
const [INNER, OUTER] = [0.2, 1.1];

/** Values on full or half circle nodes. */
function nodeValues(f: Polar, radialCount: number, azimuthCount: number, isHalf: boolean): Float64Array {
  const radii = chebyshevNodes(radialCount, INNER, OUTER);
  const azimuths = isHalf ? azimuthCount / 2 + 1 : azimuthCount;
  return Float64Array.from({ length: azimuths * radialCount }, (_, i) =>
    f(radii[i % radialCount]!, (2 * Math.PI * Math.floor(i / radialCount)) / azimuthCount),
  );
}

describe('a column from values at the nodes', () => {
  const counts = { radialCount: 7, azimuthCount: 20 };
  const term: Polar = (r, angle) =>
    1 +
    2 * (unitPlace(r, INNER, OUTER) ** 2 - 0.5) * Math.cos(3 * angle) -
    unitPlace(r, INNER, OUTER) * Math.sin(5 * angle);

  test('has the coefficients that the field was made of, and no others', () => {
    const { cosine, sine } = columnSeries(nodeValues(term, 7, 20, false), counts, Infinity);
    const at = (m: number, k: number): number => 7 * m + k;
    // 2(x² − ½) = T₂
    const wanted = new Map([[at(0, 0), 1], [at(3, 2), 1]]); // prettier-ignore
    cosine.forEach((value, i) => expect(Math.abs(value - (wanted.get(i) ?? 0))).toBeLessThan(ROUNDING));
    sine?.forEach((value, i) => expect(Math.abs(value - (i === at(5, 1) ? -1 : 0))).toBeLessThan(ROUNDING));
    expect(sine).not.toBeNull();
  });

  test('is the same from half the circle where it is even', () => {
    const even: Polar = (r, angle) => Math.exp(r * Math.cos(angle)) / (2 - Math.cos(2 * angle));
    const full = columnSeries(nodeValues(even, 7, 20, false), counts, Infinity);
    const half = columnSeries(nodeValues(even, 7, 20, true), counts, Infinity);
    full.cosine.forEach((value, i) => expect(Math.abs(value - half.cosine[i]!)).toBeLessThan(ROUNDING));
    full.sine?.forEach((value) => expect(Math.abs(value)).toBeLessThan(ROUNDING));
    expect(half.sine).toBeNull();
  });
});

describe('Chebyshev polynomials', () => {
  test('are cosines, and their derivatives those of cosines', () => {
    const t = 0.7;
    const x = Math.cos(t);
    const values = chebyshevInto(new Float64Array(9), 0, 9, x);
    const derivatives = chebyshevDerivativesInto(new Float64Array(27), 9, x);
    for (let k = 0; k < 9; k++) {
      const first = (k * Math.sin(k * t)) / Math.sin(t);
      const second = (-k * k * Math.cos(k * t)) / Math.sin(t) ** 2 + (first * x) / Math.sin(t) ** 2;
      expect(Math.abs(values[k]! - Math.cos(k * t))).toBeLessThan(ROUNDING);
      expect(Math.abs(derivatives[3 * k]! - Math.cos(k * t))).toBeLessThan(ROUNDING);
      expect(Math.abs(derivatives[3 * k + 1]! - first)).toBeLessThan(ROUNDING * 10);
      expect(Math.abs(derivatives[3 * k + 2]! - second)).toBeLessThan(ROUNDING * 1000);
    }
  });

  test('have the means of an independent quadrature', () => {
    const means = radialMeans(8, INNER, OUTER);
    const { nodes, weights } = independentRule(20, INNER, OUTER);
    for (let k = 0; k < 8; k++) {
      const sum = nodes.reduce(
        (all, r, i) => all + weights[i]! * r * Math.cos(k * Math.acos(unitPlace(r, INNER, OUTER))),
        0,
      );
      expect(Math.abs(means[k]! - (2 * sum) / (OUTER ** 2 - INNER ** 2))).toBeLessThan(ROUNDING);
    }
  });
});

test('Gauss–Legendre integrates degree 2n − 1 exactly', () => {
  const { nodes, weights } = gaussLegendre(5, 0, 2);
  const ninth = nodes.reduce((sum, x, i) => sum + weights[i]! * x ** 9, 0);
  expect(Math.abs(ninth - 2 ** 10 / 10)).toBeLessThan(ROUNDING * 1000);
});

describe('what a series leaves out', () => {
  const terms = (count: number, f: (m: number) => number): Float64Array =>
    Float64Array.from({ length: count }, (_, m) => f(m));
  const beyond = (count: number, f: (m: number) => number): number => {
    let sum = 0;
    for (let m = count; m < 200_000; m++) sum += f(m);
    return sum;
  };
  /** What the nodes show: term m and all that pass for it. */
  const seen = (f: (m: number) => number, wrap: number) => (m: number) => f(m) + f(wrap - m) + f(wrap + m);
  /** How much more than the truth the model may say of an algebraic decay. */
  const CLOSE = 2;

  test.each([2, 3, 4])('is found for terms that fall as m^−%i', (power) => {
    const f = (m: number): number => (m + 1) ** -power;
    const found = tailOf(terms(32, seen(f, 66)), 66).sum;
    expect(found).toBeGreaterThan(beyond(32, f));
    expect(found).toBeLessThan(CLOSE * beyond(32, f));
  });

  test.each([0.3, 0.6, 0.8])('is not less than it is for terms that fall as %f^m', (rate) => {
    const f = (m: number): number => rate ** m;
    const found = tailOf(terms(24, seen(f, 50)), 50).sum;
    expect(found).toBeGreaterThan(beyond(24, f));
  });

  test('adds up to the terms of its model', () => {
    const f = (m: number): number => (m + 1) ** -3;
    const tail = tailOf(terms(32, f), Infinity);
    expect(Math.abs(beyond(32, (m) => tailTerm(tail, m)) / tail.sum - 1)).toBeLessThan(0.05);
  });

  test('is unbounded where terms do not fall off, or are no numbers', () => {
    expect(
      tailOf(
        terms(20, () => 1),
        42,
      ).sum,
    ).toBe(Infinity);
    expect(
      tailOf(
        terms(20, (m) => (m === 3 ? NaN : 1 / (1 + m) ** 4)),
        42,
      ).sum,
    ).toBe(Infinity);
  });
});
