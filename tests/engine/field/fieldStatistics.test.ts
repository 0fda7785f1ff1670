import { describe, expect, test } from 'vitest';
import { faceWeights } from '../../../engine/coat/faceWeights.ts';
import { statisticsOf } from '../../../engine/coat/statistics.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { fieldStatistics, hasRoundAperture } from '../../../engine/field/fieldStatistics.ts';
import { valueAtPolar } from '../../../engine/field/evaluateSeries.ts';
import type { SmoothField } from '../../../engine/field/smoothField.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import { anyKernel, bruteForce, seededPlant, without } from './fieldPlants.ts';
import { relativeError, shapeOf } from '../../support/plants.ts';

/** Sums of a few hundred terms, and a Newton step that is done. */
const EXACT = 1e-12;

/** a + b T₂(x) + c x cos 3θ over radii 0 … 1, x = 2r − 1. */
function knownField(a: number, b: number, c: number): SmoothField {
  const series = {
    centerX: 0,
    inner: 0,
    outer: 1,
    radialCount: 3,
    harmonics: Int32Array.of(0, 3),
    cosine: Float64Array.of(a, 0, b, 0, c, 0),
    sine: new Float64Array(6),
  };
  return { series, error: 0, rough: [] };
}

describe('statistics of a known field on a flat disc', () => {
  const [a, b, c] = [5, 0.25, 0.5];
  const found = fieldStatistics(shapeOf(), knownField(a, b, c));
  // ∫ T₂(2r − 1) 2r dr = −1/3 over 0 … 1; the harmonic has no mean
  const mean = a - b / 3;

  test('has its mean and RMS', () => {
    expect(relativeError(found.mean.value, mean)).toBeLessThan(EXACT);
    // ∫ T₂² 2r dr = 7/15, ∫ x² 2r dr / 2 = 1/6
    const variance = b * b * (7 / 15 - 1 / 9) + (c * c) / 6;
    expect(relativeError(found.rms.value, Math.sqrt(variance) / mean)).toBeLessThan(EXACT);
  });

  test('has its extremes at the rim and between', () => {
    expect(relativeError(found.maximum.value, a + b + c)).toBeLessThan(EXACT);
    // where cos 3θ = −1 or 1 and 4bx ± c = 0: a − b − c²/8b
    expect(relativeError(found.minimum.value, a - b - (c * c) / (8 * b))).toBeLessThan(EXACT);
    const [x, y] = found.minimum.position;
    expect(relativeError(Math.abs(2 * Math.hypot(x, y) - 1), c / (4 * b))).toBeLessThan(1e-6);
    expect(relativeError(Math.hypot(...found.maximum.position), 1)).toBeLessThan(EXACT);
  });
});

test('a smooth minimum between all nodes is found to rounding', () => {
  const field = knownField(5, 1, 0.5);
  const { minimum } = fieldStatistics(shapeOf(), field);
  expect(relativeError(minimum.value, 5 - 1 - 0.25 / 8)).toBeLessThan(EXACT);
  const [x, y] = minimum.position;
  expect(relativeError(valueAtPolar(field.series, Math.hypot(x, y), Math.atan2(y, x)), minimum.value)).toBeLessThan(
    EXACT,
  );
});

test('a clear aperture that a hexagon cuts is refused, one inside its sides is not', () => {
  const cut = shapeOf({ cornerAngle: 0 });
  expect(hasRoundAperture(cut)).toBe(false);
  expect(() => fieldStatistics(cut, knownField(1, 0, 0))).toThrow(RangeError);
  expect(hasRoundAperture(shapeOf({ cornerAngle: 0, clearOuterRadius: 0.86 }))).toBe(true);
});

describe('statistics of a seeded plant', () => {
  const seeds = [1, 2, 3, 5, 6, 7, 8, 9, 11, 12].filter((seed) => hasRoundAperture(seededPlant(seed).shape));

  test('are looked at for enough plants', () => {
    expect(seeds.length).toBeGreaterThan(5);
  });

  test.each(seeds)('%i are those of its map by brute force, within both errors', (seed) => {
    const plant = seededPlant(seed);
    const field = createFieldSolver(plant.shape, anyKernel()).solve(plant.sources, plant.masses);
    const face = createFace(plant.shape, 4000);
    const areal = bruteForce(without(plant, field.rough), face.points);
    const direct = statisticsOf(face, faceWeights(face), [], areal, 0.1, { value: 0, error: 0 });
    const series = fieldStatistics(plant.shape, field);
    for (const name of ['mean', 'minimum', 'maximum', 'uniformity', 'rms', 'edgeRatio'] as const) {
      const [one, other] = [direct[name], series[name]];
      expect(Math.abs(one.value - other.value)).toBeLessThan(one.error + other.error);
    }
    expect(series.mean.error / series.mean.value).toBeLessThan(1e-3);
  });
});
