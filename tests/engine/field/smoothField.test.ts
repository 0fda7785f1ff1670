import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { columnSeries, depositAtNodes } from '../../../engine/field/columnSeries.ts';
import { valuesAtInto, valuesOnFaceInto } from '../../../engine/field/evaluateSeries.ts';
import { faceNodes } from '../../../engine/field/faceNodes.ts';
import type { FieldKernel } from '../../../engine/field/fieldKernel.ts';
import { createFieldSolver, DEFAULT_WANTED_ERROR } from '../../../engine/field/fieldSolver.ts';
import { domainOf, type PolarSeries } from '../../../engine/field/polarSeries.ts';
import { sumFields } from '../../../engine/field/smoothField.ts';
import { createFace, refineFace } from '../../../engine/geometry/face.ts';
import { honestyOf } from './honesty.ts';
import { anyKernel, bruteForce, farthest, keyed, ringSources, seededPlant } from './fieldPlants.ts';
import { pointSource, shapeOf } from '../../support/plants.ts';

const COSINE: EmissionLaw = { kind: 'cosine', power: 1 };
const SHAPE = shapeOf({ rimRadius: 1.3, holeRadius: 0.275, curvature: 1 / 12, conicConstant: -1 });

/** A kernel that counts sub-sources times points. */
function countingKernel(): { readonly kernel: FieldKernel; readonly pairs: () => number } {
  const inner = anyKernel();
  let [pairs, length] = [0, 0];
  return {
    pairs: () => pairs,
    kernel: {
      load(points, begin, end, perFreePath) {
        length = end - begin;
        inner.load(points, begin, end, perFreePath);
      },
      clear: () => inner.clear(),
      addAll(source) {
        pairs += length * source.count;
        inner.addAll(source);
      },
      readInto: (out) => inner.readInto(out),
    },
  };
}

// npm run bench does the same with a hundred plants
describe('a field of a seeded plant', () => {
  test.each([1, 2, 4, 5, 7, 9, 23, 42, 62, 74])('%i is within its stated error of brute force', (seed) => {
    const { error, stated, rough, filaments } = honestyOf(seed, 3000);
    expect(error).toBeLessThanOrEqual(stated);
    expect(stated).toBeLessThan(2 * DEFAULT_WANTED_ERROR);
    // these plants were chosen to have some filaments in the series
    expect(rough).toBeLessThan(filaments);
  });
});

test('the error falls geometrically with the number of nodes, down to rounding', () => {
  const source = pointSource(COSINE, [0.8, 0, 1]);
  const { points } = createFace(SHAPE, 600);
  const exact = bruteForce({ sources: [keyed(source)], masses: Float64Array.of(1) }, points);
  const errors = [1, 2, 3, 4].map((size) => {
    const counts = { radialCount: 7 * size, azimuthCount: 24 * size };
    const values = depositAtNodes(source, faceNodes(SHAPE, counts, true), anyKernel(), 0);
    const { cosine, amplitude } = columnSeries(values, counts, Infinity);
    const harmonics = Int32Array.from(amplitude.keys());
    const series: PolarSeries = {
      ...domainOf(SHAPE),
      radialCount: counts.radialCount,
      harmonics,
      cosine,
      sine: new Float64Array(cosine.length),
    };
    return farthest(valuesAtInto(new Float64Array(points.count), series, points), exact) / exact[0]!;
  });
  // each step of the size multiplies the error by about the same small factor
  const RATE = 1e-3;
  expect(errors[1]!).toBeLessThan(RATE * errors[0]!);
  expect(errors[2]!).toBeLessThan(RATE * errors[1]!);
  expect(errors[3]!).toBeLessThan(1e-13);
});

describe('values of a field', () => {
  test.each([
    ['round', {}],
    ['hexagonal', { cornerAngle: 0.1 }],
    ['off-axis', { centerX: 1.5 }],
  ])('on a refined %s face are those at its points', (_, overrides) => {
    const shape = { ...SHAPE, ...overrides };
    const sources = ringSources({ count: 5, radius: 1, height: 1.4, law: COSINE, centerX: shape.centerX });
    const field = createFieldSolver(shape, anyKernel()).solve(sources, [1, 2, 3, 4, 5]);
    const { face } = refineFace(createFace(shape, 2000), [3, 17]);
    const { count } = face.points;
    const onFace = valuesOnFaceInto(new Float64Array(count), field.series, face);
    const at = valuesAtInto(new Float64Array(count), field.series, face.points);
    expect(farthest(onFace, at)).toBeLessThan(1e-12 * at[0]!);
    const brute = bruteForce({ sources, masses: Float64Array.of(1, 2, 3, 4, 5) }, face.points);
    expect(farthest(at, brute)).toBeLessThan(field.error);
  });

  test('are within the error that was asked for, whatever it is', () => {
    const { shape, sources, masses } = seededPlant(5);
    const { points } = createFace(shape, 1500);
    const brute = bruteForce({ sources, masses }, points);
    for (const wantedError of [1e-2, 1e-5, 1e-8]) {
      const { series, error, rough } = createFieldSolver(shape, anyKernel()).solve(sources, masses, { wantedError });
      expect(rough).toEqual([]);
      expect(farthest(valuesAtInto(new Float64Array(points.count), series, points), brute)).toBeLessThan(error);
      // means over the flat domain and over the face differ a little
      expect(error).toBeLessThan(1.5 * wantedError * (brute.reduce((sum, value) => sum + value, 0) / brute.length));
    }
  });

  test('are those of the parts together, however the sources are shared out', () => {
    const { shape, sources, masses } = seededPlant(7);
    const { points } = createFace(shape, 1500);
    const parts = [0, 1, 2].map((part) =>
      createFieldSolver(shape, anyKernel()).solve(
        sources.filter((_, f) => f % 3 === part),
        masses.filter((_, f) => f % 3 === part),
      ),
    );
    const { series, error, rough } = sumFields(parts);
    expect(rough).toEqual([]);
    const found = valuesAtInto(new Float64Array(points.count), series, points);
    expect(farthest(found, bruteForce({ sources, masses }, points))).toBeLessThan(error);
  });

  test('thin out in gas as every line of sight does', () => {
    const perFreePath = 0.7;
    const sources = ringSources({ count: 9, radius: 1.2, height: 0.9, law: COSINE });
    const { points } = createFace(SHAPE, 1500);
    const { series, error } = createFieldSolver(SHAPE, anyKernel()).solve(sources, new Float64Array(9).fill(1), {
      perFreePath,
    });
    const one = { position: new Float64Array(3), normal: new Float64Array(3) };
    const found = valuesAtInto(new Float64Array(points.count), series, points);
    for (let i = 0; i < points.count; i += 50) {
      let exact = 0;
      one.position.set(points.position.subarray(3 * i, 3 * i + 3));
      one.normal.set(points.normal.subarray(3 * i, 3 * i + 3));
      for (const { source: s } of sources) {
        for (let j = 0; j < s.count; j++) {
          const d = [0, 1, 2].map((k) => one.position[k]! - s.position[3 * j + k]!);
          const r = Math.hypot(...d);
          const arriving = -d.reduce((sum, x, k) => sum + x * one.normal[k]!, 0) / r;
          exact += (s.weight[j]! * (-d[2]! / r) * arriving * Math.exp(-r * perFreePath)) / (Math.PI * r * r);
        }
      }
      expect(Math.abs(found[i]! - exact)).toBeLessThan(error);
    }
  });
});

describe('work', () => {
  const rings = [
    { count: 48, radius: 1.45, height: 0.9, law: COSINE },
    { count: 48, radius: 0.95, height: 1, law: COSINE },
  ];
  const sources = rings.flatMap(ringSources);
  const masses = new Float64Array(96).fill(1e-3);

  test('for a ring is that of one filament, and none where the ring is known', () => {
    const { kernel, pairs } = countingKernel();
    const solver = createFieldSolver(SHAPE, kernel);
    solver.solve(sources, masses);
    const first = pairs();
    // a direct sum on 20,000 points takes eleven million
    expect(first).toBeLessThan(20_000);
    // uneven charges ask more of the columns, once
    const charges = (seed: number): Float64Array => masses.map((mass, f) => mass * (f % seed));
    solver.solve(sources, charges(5));
    const uneven = pairs();
    expect(uneven).toBeLessThan(40_000);
    solver.solve(sources, charges(3));
    solver.solve(sources, masses);
    expect(pairs()).toBe(uneven);
    const moved = [...ringSources({ ...rings[0]!, height: 0.91 }), ...sources.slice(48)];
    solver.solve(moved, masses);
    expect(pairs()).toBeGreaterThan(uneven);
    expect(pairs() - uneven).toBeLessThan(first);
  });

  test('is not wasted on sources too close to the face: they are handed back', () => {
    const { kernel, pairs } = countingKernel();
    const close = [pointSource(COSINE, [0.8, 0.1, 0.07]), pointSource(COSINE, [0.5, 0.3, 1])].map(keyed);
    const { rough, error } = createFieldSolver(SHAPE, kernel).solve(close, [1, 1]);
    expect(rough).toEqual([0]);
    expect(Number.isFinite(error)).toBe(true);
    expect(pairs()).toBeLessThan(30_000);
  });

  test('is not begun where a source lies on the face, and left to others where it looks away', () => {
    const odd = [pointSource(COSINE, [0.8, 0.1, 0.054]), pointSource(COSINE, [0.5, 0, 1], [0, 0, 1])].map(keyed);
    const { rough, error, series } = createFieldSolver(SHAPE, anyKernel()).solve(odd, [1, 1]);
    expect(rough).toEqual([0, 1]);
    expect(error).toBe(0);
    expect(series.cosine.every((value) => value === 0)).toBe(true);
  });
});
