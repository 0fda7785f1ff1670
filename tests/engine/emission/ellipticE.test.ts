import { expect, test } from 'vitest';
import { ellipticE, fastEllipticE } from '../../../engine/emission/ellipticE.ts';
import { integrate } from '../../support/quadrature.ts';

/** A few units in the last place, as the docstring states. */
const LAST_PLACES = 2e-15;

test('E takes its tabled values', () => {
  // mpmath 1.3.0 (a general-purpose library), ellipe(m); Abramowitz & Stegun (1964), table 17.1, from memory of it,
  // has the same to nine decimals
  for (const [m, value] of [
    [0, 1.5707963267949],
    [0.1, 1.5307576368978],
    [0.2, 1.4890350580959],
    [0.3, 1.4453630644127],
    [0.4, 1.3993921388974],
    [0.5, 1.3506438810477],
    [0.6, 1.2984280350469],
    [0.7, 1.2416705679458],
    [0.8, 1.1784899243278],
    [0.9, 1.1047747327041],
    [1, 1.0],
  ] as const) {
    expect(Math.abs(ellipticE(1 - m) - value)).toBeLessThanOrEqual(1e-13);
  }
});

test('E equals its power series', () => {
  // E = (π/2) Σ −[(2n−1)!!/(2n)!!]² mⁿ/(2n−1), Abramowitz & Stegun (1964) 17.3.12; 120 terms reach 1e-16 for m ≤ 0.7
  for (const m of [1e-9, 0.01, 0.2, 0.5, 0.7]) {
    let [sum, factor] = [1, 1];
    for (let n = 1; n <= 120; n++) {
      factor *= ((2 * n - 1) / (2 * n)) ** 2 * m;
      sum -= factor / (2 * n - 1);
    }
    expect(Math.abs(ellipticE(1 - m) / ((Math.PI / 2) * sum) - 1)).toBeLessThan(LAST_PLACES);
  }
});

test('E equals its defining integral up to m near 1', () => {
  for (const complement of [0.5, 0.1, 1e-2, 1e-4]) {
    const { PI, sin, sqrt } = Math;
    // panels shrink toward π/2, where the integrand turns within √complement
    const edges = [0, ...Array.from({ length: 24 }, (_, k) => (PI / 2) * (1 - 0.5 ** (k + 1))), PI / 2];
    const integral = integrate((t) => sqrt(1 - (1 - complement) * sin(t) ** 2), edges);
    expect(Math.abs(ellipticE(complement) / integral - 1)).toBeLessThan(1e-14); // the quadrature's own rounding
  }
});

test('E meets Legendre’s relation with the mean that also gives K', () => {
  // E K' + E' K − K K' = π/2, Abramowitz & Stegun (1964) 17.3.13
  const K = (complement: number): number => {
    let [a, b] = [1, Math.sqrt(complement)];
    for (let i = 0; i < 8; i++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    return Math.PI / (2 * a);
  };
  for (const m of [0.05, 0.3, 0.5, 0.9]) {
    const left = ellipticE(1 - m) * K(m) + ellipticE(m) * K(1 - m) - K(m) * K(1 - m);
    expect(Math.abs(left - Math.PI / 2)).toBeLessThan(1e-14); // three products of size 3 cancel to π/2
  }
});

test('E near m = 1 keeps the logarithm of its complement', () => {
  // E ≈ 1 + ½ c²(ln(4/c) − ½), c² = 1 − m; next term (3/16) c⁴ ln: Abramowitz & Stegun (1964) 17.3.11 ff.
  for (const c of [1e-2, 1e-4, 1e-6]) {
    const expected = 1 + (c * c * (Math.log(4 / c) - 0.5)) / 2;
    expect(Math.abs(ellipticE(c * c) - expected)).toBeLessThan(LAST_PLACES + 2 * c ** 4);
  }
  expect(ellipticE(0)).toBe(1);
  expect(ellipticE(1)).toBe(Math.PI / 2);
});

test('the fast E stays within its stated 3.5e-8 of the exact one', () => {
  let worst = 0;
  const steps = 400_000;
  for (let i = 0; i <= steps; i++) {
    const c = i / steps;
    worst = Math.max(worst, Math.abs(fastEllipticE(c) / ellipticE(c * c) - 1));
    const near = c ** 4; // crowds toward c = 0, where E has a logarithm
    worst = Math.max(worst, Math.abs(fastEllipticE(near) / ellipticE(near * near) - 1));
  }
  expect(worst).toBeLessThan(3.5e-8);
});
