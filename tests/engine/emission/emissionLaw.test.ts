import { describe, expect, test } from 'vitest';
import { emissionTable, tableIntensity } from '../../../engine/emission/emissionTable.ts';
import { emittedIntensity, type EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { integrate } from '../../support/quadrature.ts';

const DEGREE = Math.PI / 180;
const table = (angles: readonly number[], intensities: readonly number[]): EmissionLaw => ({
  kind: 'table',
  table: emissionTable(
    angles.map((angle) => angle * DEGREE),
    intensities,
  ),
});

/** Angles that no panel of the quadrature may straddle, deg: kinks and ends of tables, the edge of a cosine's half-space. */
const LAWS: readonly { readonly name: string; readonly law: EmissionLaw; readonly kinks?: readonly number[] }[] = [
  { name: 'isotropic', law: { kind: 'isotropic' } },
  ...[0, 0.5, 1, 1.37, 2, 3, 7.9, 8, 9, 40, 200].map((power) => ({
    name: `cos^${power}`,
    law: { kind: 'cosine', power } as const,
  })),
  { name: 'straight wire', law: { kind: 'wire' } },
  { name: 'open coil', law: { kind: 'coil' } },
  { name: 'full table', law: table([0, 30, 60, 90, 180], [1, 0.8, 0.5, 0.2, 0.05]), kinks: [30, 60] },
  { name: 'table that starts late and ends early', law: table([20, 50, 75], [3, 2, 1]), kinks: [20, 50, 75] },
  { name: 'table with a hole in it', law: table([0, 40, 41, 120, 180], [0, 0, 5, 5, 0]), kinks: [40, 41, 120] },
];

/** Shrinking panels reach 1e-12 with 24 nodes each, the square root and the logarithm at their ends included. */
const INTEGRAL = 1e-11;

/** Angles between 0 and π with panels that shrink toward both sides of every kink. */
function edges(kinks: readonly number[]): number[] {
  const hard = [0, 90, 180, ...kinks].map((angle) => angle * DEGREE).toSorted((a, b) => a - b);
  const all = new Set<number>();
  hard.slice(1).forEach((to, i) => {
    const from = hard[i]!;
    for (let k = 0; k <= 20; k++) {
      all.add(from + ((to - from) / 2) * 0.4 ** k);
      all.add(to - ((to - from) / 2) * 0.4 ** k);
    }
    all.add(from).add(to);
  });
  return [...all].toSorted((a, b) => a - b);
}

/** ∫ f over the sphere, f of the angle from the axis. */
const overSphere = (f: (angle: number) => number, kinks: readonly number[] = []): number =>
  integrate((angle) => 2 * Math.PI * Math.sin(angle) * f(angle), edges(kinks), 24);

describe.each(LAWS)('the $name law', ({ law, kinks }) => {
  test('is one over the sphere', () => {
    expect(Math.abs(overSphere((angle) => emittedIntensity(law, Math.cos(angle)), kinks) - 1)).toBeLessThan(INTEGRAL);
  });

  test('is nowhere negative and always finite', () => {
    for (let i = -1000; i <= 1000; i++) {
      const intensity = emittedIntensity(law, i / 1000);
      expect(Number.isFinite(intensity)).toBe(true);
      expect(intensity).toBeGreaterThanOrEqual(0);
    }
  });
});

test('the laws take their textbook values', () => {
  // L. Holland, Vacuum Deposition of Thin Films (1956), from memory of; the coil's by its definition
  expect(emittedIntensity({ kind: 'isotropic' }, -0.3)).toBe(1 / (4 * Math.PI));
  expect(emittedIntensity({ kind: 'cosine', power: 1 }, 0.25)).toBe(0.25 / Math.PI);
  expect(emittedIntensity({ kind: 'cosine', power: 3 }, -0.1)).toBe(0);
  expect(emittedIntensity({ kind: 'wire' }, 0)).toBe(1 / Math.PI ** 2);
  expect(emittedIntensity({ kind: 'wire' }, 1)).toBe(0);
  expect(emittedIntensity({ kind: 'coil' }, 0)).toBeCloseTo(2 / Math.PI ** 3, 15); // E(1) = 1: across the coil
  expect(emittedIntensity({ kind: 'coil' }, -1)).toBeCloseTo(1 / Math.PI ** 2, 15); // E(0) = π/2: along it
});

test('the mean direction of a cosine power leans by (n+1)/(n+2) along its axis', () => {
  for (const power of [0, 0.5, 1, 2.7, 12]) {
    const law: EmissionLaw = { kind: 'cosine', power };
    const lean = overSphere((angle) => Math.cos(angle) * emittedIntensity(law, Math.cos(angle)));
    expect(Math.abs(lean - (power + 1) / (power + 2))).toBeLessThan(INTEGRAL);
  }
});

test('the open coil is the wire law averaged over the turns', () => {
  // a turn at angle t about the coil axis runs along (−sin t, cos t, 0); a direction at θ from the axis sees it at
  // sinα = √(1 − sin²θ sin²t), and the mean of sinα/π² over t is the coil's law
  for (const theta of [0, 0.3, 1, 1.4, 1.55]) {
    const mean =
      integrate(
        (t) => emittedIntensity({ kind: 'wire' }, Math.sin(theta) * Math.sin(t)),
        [0, ...Array.from({ length: 16 }, (_, k) => (Math.PI / 2) * (1 - 0.5 ** (k + 1))), Math.PI / 2],
      ) /
      (Math.PI / 2);
    expect(Math.abs(emittedIntensity({ kind: 'coil' }, Math.cos(theta)) / mean - 1)).toBeLessThan(1e-13); // rounding of 544 terms
  }
});

test('a table that samples a law closely becomes that law', () => {
  // linear interpolation on 1° steps is off by (π/180)²/8 of the second derivative, about 1
  const angles = Array.from({ length: 91 }, (_, i) => i);
  const law = table(
    angles,
    angles.map((angle) => 17 * Math.cos(angle * DEGREE)),
  );
  for (let angle = 0.35; angle < 90; angle += 2.1) {
    const [sampled, exact] = [law, { kind: 'cosine', power: 1 } as const].map((one) =>
      emittedIntensity(one, Math.cos(angle * DEGREE)),
    );
    expect(Math.abs(sampled! - exact!)).toBeLessThan(DEGREE ** 2 / 4 / Math.PI);
  }
});

test('a table holds its first value inwards and stops at its last angle', () => {
  const { table: measured } = table([20, 50], [4, 1]) as Extract<EmissionLaw, { kind: 'table' }>;
  const at = (angle: number): number => tableIntensity(measured, Math.cos(angle * DEGREE));
  expect(at(0)).toBe(at(19));
  expect(at(0) / at(50 - 1e-9)).toBeCloseTo(4, 6);
  expect(at(35) / at(0)).toBeCloseTo(2.5 / 4, 12);
  expect(at(50.001)).toBe(0);
  expect(at(170)).toBe(0);
});
