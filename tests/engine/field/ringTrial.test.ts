import { describe, expect, test } from 'vitest';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { fieldStatistics } from '../../../engine/field/fieldStatistics.ts';
import { coilPattern, ringPattern } from '../../../engine/field/ringPattern.ts';
import { createRingTrial } from '../../../engine/field/ringTrial.ts';
import { anyKernel, coilSource, ringSources } from './fieldPlants.ts';
import { relativeError, shapeOf } from '../../support/plants.ts';

const SHAPE = shapeOf({
  rimRadius: 1.3,
  holeRadius: 0.275,
  clearInnerRadius: 0.3,
  clearOuterRadius: 1.27,
  curvature: 1 / 12,
  conicConstant: -1,
});
/** What the trial promises for its statistics, over the mean. */
const PROMISED = 1e-3;

const LAWS: readonly EmissionLaw[] = [
  { kind: 'cosine', power: 1 },
  { kind: 'cosine', power: 3 },
  { kind: 'isotropic' },
  { kind: 'wire' },
  { kind: 'coil' },
];

describe.each(LAWS)('layouts of rings with law %o', (law) => {
  test.each(['tangential', 'radial'] as const)('are judged as the whole field is, coils %s', (axis) => {
    const random = xoroshiro128plus(77);
    const between = (low: number, high: number): number => low + (high - low) * uniformFloat64(random);
    const pattern = coilPattern(6, 0.064, axis, law);
    const trial = createRingTrial(SHAPE, anyKernel());
    for (let round = 0; round < 4; round++) {
      const rings = Array.from({ length: 1 + (round % 3) }, () => ({
        pattern,
        count: Math.round(between(18, 60)),
        radius: between(0.4, 1.5),
        height: between(0.75, 1.5),
        charge: between(1e-4, 3e-4),
      }));
      const found = trial.evaluate(rings);
      const sources = rings.map((ring) => ringSources({ ...ring, law, axis }));
      const masses = rings.flatMap(({ count, charge }) => Array.from({ length: count }, () => charge));
      const field = createFieldSolver(SHAPE, anyKernel()).solve(sources.flat(), masses, { wantedError: 1e-4 });
      expect(field.rough).toEqual([]);
      const whole = fieldStatistics(SHAPE, field);
      const bound = found.error + found.ripple;
      expect(Math.abs(found.mean - whole.mean.value)).toBeLessThan(found.error + whole.mean.error);
      expect(Math.abs(found.minimum - whole.minimum.value)).toBeLessThan(bound + whole.minimum.error);
      expect(Math.abs(found.maximum - whole.maximum.value)).toBeLessThan(bound + whole.maximum.error);
      expect(Math.abs(found.uniformity - whole.uniformity.value)).toBeLessThan(PROMISED);
      expect(Math.abs(found.rms - whole.rms.value)).toBeLessThan(PROMISED);
      expect(Math.abs(found.edgeRatio - whole.edgeRatio.value)).toBeLessThan(PROMISED);
      expect(found.error).toBeLessThanOrEqual(1.1 * PROMISED * found.mean);
    }
  });
});

test('a ring of few filaments has a ripple that the bound covers', () => {
  const law: EmissionLaw = { kind: 'isotropic' };
  const pattern = coilPattern(1, 0, 'tangential', law);
  const ring = { pattern, count: 6, radius: 1, height: 0.9, charge: 1 };
  const found = createRingTrial(SHAPE, anyKernel()).evaluate([ring]);
  const sources = ringSources({ ...ring, loops: 1, length: 0, law });
  const field = createFieldSolver(SHAPE, anyKernel()).solve(sources, new Float64Array(6).fill(1));
  const { maximum } = fieldStatistics(SHAPE, field);
  expect(found.ripple).toBeGreaterThan(0.01 * found.mean);
  expect(maximum.value - found.maximum).toBeGreaterThan(0.2 * found.ripple);
  expect(maximum.value - found.maximum).toBeLessThan(found.ripple);
});

test('an evaluation leaves nothing behind for the next', () => {
  const pattern = coilPattern(4, 0.05, 'tangential', { kind: 'coil' });
  const trial = createRingTrial(SHAPE, anyKernel());
  const [a, b] = [0.6, 1.4].map((radius) => ({ pattern, count: 30, radius, height: 0.9, charge: 1e-3 }));
  const first = { ...trial.evaluate([a!]) };
  trial.evaluate([a!, b!]);
  expect(trial.evaluate([a!])).toEqual(first);
  const doubled = trial.evaluate([{ ...a!, charge: 2e-3 }]);
  expect(relativeError(doubled.mean, 2 * first.mean)).toBeLessThan(1e-14);
  expect(relativeError(doubled.uniformity, first.uniformity)).toBeLessThan(1e-11);
});

test('no rings leave no coat', () => {
  const { mean, uniformity, error, ripple } = createRingTrial(SHAPE, anyKernel()).evaluate([]);
  expect([mean, uniformity, error, ripple]).toEqual([0, 0, 0, 0]);
});

test('mirrors and filaments without the symmetry are refused', () => {
  expect(() => createRingTrial({ ...SHAPE, centerX: 1 }, anyKernel())).toThrow(/on its own axis/);
  expect(() => createRingTrial({ ...SHAPE, cornerAngle: 0 }, anyKernel())).toThrow(/round clear aperture/);
  const askew = { loops: 3, length: 0.1, law: { kind: 'wire' as const }, at: [0, 0, 0], along: [0.6, 0.8, 0] } as const;
  expect(() => ringPattern(coilSource(askew))).toThrow(/mirror image/);
});
