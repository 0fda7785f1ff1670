import { describe, expect, test } from 'vitest';
import { ellipticE } from '../../../engine/emission/ellipticE.ts';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { valueAtPolar } from '../../../engine/field/evaluateSeries.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { fieldStatistics } from '../../../engine/field/fieldStatistics.ts';
import { coilPattern } from '../../../engine/field/ringPattern.ts';
import { createRingTrial } from '../../../engine/field/ringTrial.ts';
import type { SmoothField } from '../../../engine/field/smoothField.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { anyKernel, keyed, ringSources } from './fieldPlants.ts';
import { pointSource, relativeError, shapeOf } from '../../support/plants.ts';

const COSINE: EmissionLaw = { kind: 'cosine', power: 1 };
const ISOTROPIC: EmissionLaw = { kind: 'isotropic' };

const solve = (shape: MirrorShape, sources: readonly FilamentSource[], wantedError: number): SmoothField =>
  createFieldSolver(shape, anyKernel()).solve(
    sources.map(keyed),
    sources.map(() => 1 / sources.length),
    { wantedError },
  );

/** Thin ring of cosine emitters at radius R and height h over a plane, per kilogram, at distance p from its axis. */
function cosineRing(R: number, h: number, p: number): number {
  const [A, B] = [h * h + p * p + R * R, 2 * p * R];
  return ((h * h) / Math.PI) * (A / (A * A - B * B) ** 1.5);
}

/** The same of isotropic emitters; ellipticE takes 1 − m. */
function isotropicRing(R: number, h: number, p: number): number {
  const [A, B] = [h * h + p * p + R * R, 2 * p * R];
  return ((h / (4 * Math.PI)) * (2 / Math.PI) * ellipticE((A - B) / (A + B))) / ((A - B) * Math.sqrt(A + B));
}

// physics.md 1.2, after L. Holland and W. Steckelmacher, Vacuum 2 (1952) 346
describe.each([
  ['cosine', COSINE, cosineRing],
  ['isotropic', ISOTROPIC, isotropicRing],
] as const)('a ring of %s emitters over a plane', (_, law, closed) => {
  const [R, h] = [1, 0.8];
  const shape = shapeOf({ holeRadius: 0.2 });
  const radii = [0.2, 0.5, 0.75, 1];

  test('coats it as the closed form says, within the stated error', () => {
    // 48 sources: the ripple is below 1e-12
    const sources = ringSources({ count: 48, radius: R, height: h, loops: 1, length: 0, law }).map((s) => s.source);
    for (const wanted of [1e-2, 1e-4, 1e-8]) {
      const { series, error } = solve(shape, sources, wanted);
      for (const r of radii) expect(Math.abs(valueAtPolar(series, r, 0.3) - closed(R, h, r))).toBeLessThan(error);
      expect(error).toBeLessThan(wanted * closed(R, h, 0));
    }
  });

  test('is judged by the trial as the closed form says', () => {
    const pattern = coilPattern(1, 0, 'tangential', law);
    const trial = createRingTrial(shape, anyKernel(), { wantedError: 1e-5 });
    const found = trial.evaluate([{ pattern, count: 48, radius: R, height: h, charge: 1 / 48 }]);
    const values = Array.from({ length: 40_001 }, (_, i) => closed(R, h, 0.2 + (0.8 * i) / 40_000));
    const bound = found.error + found.ripple;
    expect(Math.abs(found.minimum - Math.min(...values))).toBeLessThan(bound);
    expect(Math.abs(found.maximum - Math.max(...values))).toBeLessThan(bound);
    expect(bound).toBeLessThan(2e-5 * found.mean);
  });
});

// physics.md 1.2, figures by direct sum: ratio of the deposit under a source to that midway, h/R = 0.9556, ρ = R
test.each([
  [6, 1.0425, 1e-4],
  [12, 1.00022, 1e-5],
])('a ring of %i isotropic sources ripples as direct sums say', (count, ratio, tolerance) => {
  const sources = ringSources({ count, radius: 1, height: 0.9556, loops: 1, length: 0, law: ISOTROPIC });
  const { series } = solve(shapeOf(), sources.map((s) => s.source), 1e-7); // prettier-ignore
  const found = valueAtPolar(series, 1, 0) / valueAtPolar(series, 1, Math.PI / count);
  expect(Math.abs(found - ratio)).toBeLessThan(tolerance);
});

// physics.md 1.5: spherical receivers
describe('a concave spherical mirror of radius 2', () => {
  const a = 2;
  const shape = shapeOf({ curvature: 1 / a, rimRadius: 0.9 });
  const even = 1 / (4 * Math.PI * a * a);
  /** Flat to rounding. */
  const FLAT = 1e-12;

  /** A cosine source on the sphere at polar angle t from the top, facing its middle. */
  const onSphere = (t: number, turn: number): FilamentSource => {
    const u = [Math.sin(t) * Math.cos(turn), Math.sin(t) * Math.sin(turn), Math.cos(t)] as const;
    return pointSource(COSINE, [a * u[0], a * u[1], a * (1 + u[2])], [-u[0], -u[1], -u[2]]);
  };

  test.each([
    ['a cosine source at its top', [onSphere(0, 0)]],
    ['cosine sources anywhere on the sphere', [onSphere(0.4, 1), onSphere(1.2, 3), onSphere(0.9, 5)]],
    ['an isotropic source in the middle of the sphere', [pointSource(ISOTROPIC, [0, 0, a])]],
  ])('is coated evenly by %s', (_, sources) => {
    const field = solve(shape, sources, 1e-3);
    const { mean, minimum, maximum, rms, edgeRatio } = fieldStatistics(shape, field);
    for (const { value } of [mean, minimum, maximum]) expect(relativeError(value, even)).toBeLessThan(FLAT);
    expect(rms.value).toBeLessThan(FLAT);
    expect(Math.abs(edgeRatio.value - 1)).toBeLessThan(FLAT);
  });

  test('is coated by an isotropic source off its middle as the closed form says', () => {
    const e = 0.3 * a;
    const { series, error } = solve(shape, [pointSource(ISOTROPIC, [0, 0, a - e])], 1e-9);
    for (const r of [0, 0.3, 0.9]) {
      const cos = Math.sqrt(1 - (r / a) ** 2);
      const exact = (a - e * cos) / (4 * Math.PI * (a * a + e * e - 2 * a * e * cos) ** 1.5);
      expect(Math.abs(valueAtPolar(series, r, 1) - exact)).toBeLessThan(error);
    }
    expect(error).toBeLessThan(1e-9 * 2 * even);
  });
});
