import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { valuesAtInto } from '../../../engine/field/evaluateSeries.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { borderPoints, steepestDecay } from '../../../engine/field/kinks.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import { anyKernel, bruteForce, farthest, keyed } from './fieldPlants.ts';
import { pointSource, shapeOf, type Vector } from '../../support/plants.ts';

const FLAT = shapeOf();
const HEIGHT = 0.6;
const cosine = (power: number): EmissionLaw => ({ kind: 'cosine', power });

/** Axis of a source over the middle whose half space ends at x = −reach on the plane below. */
function leaning(reach: number): Vector {
  const length = Math.hypot(HEIGHT, reach);
  return [HEIGHT / length, 0, -reach / length];
}

describe('the decay of a column in the end', () => {
  const powerOf = (law: EmissionLaw, at: Vector, axis: Vector, shape = FLAT): number =>
    steepestDecay(pointSource(law, at, axis), borderPoints(shape));

  test('has no bound where the whole face sees the source on its bright side', () => {
    expect(powerOf(cosine(1), [0, 0, HEIGHT], leaning(1.02))).toBe(Infinity);
    expect(powerOf({ kind: 'isotropic' }, [0.9, 0, HEIGHT], [0, 0, 1])).toBe(Infinity);
  });

  test.each([0, 0.5, 1, 2, 4])('is that of the edge of a beam with power %f, wherever it cuts the face', (power) => {
    for (const reach of [0, 0.5, 0.98]) expect(powerOf(cosine(power), [0, 0, HEIGHT], leaning(reach))).toBe(power + 1);
  });

  test('is that of a corner where part of the face looks away', () => {
    const bulging = shapeOf({ curvature: -1 / 2 });
    expect(powerOf({ kind: 'isotropic' }, [0.8, 0, 0.05], [0, 0, -1], bulging)).toBe(2);
    expect(powerOf(cosine(3), [0.8, 0, 0.05], [0, 0, -1], bulging)).toBe(2);
  });

  test('is that of the open coil’s logarithm', () => {
    expect(powerOf({ kind: 'coil' }, [0.8, 0, HEIGHT], [0, 1, 0])).toBe(3);
  });
});

// the last radii of the nodes lie within the beam, the rim does not
test.each([0.97, 0.99])('a beam that ends at %f of the radius, beyond the last nodes, is stated honestly', (reach) => {
  const plant = {
    sources: [keyed(pointSource(cosine(1), [0, 0, HEIGHT], leaning(reach)))],
    masses: Float64Array.of(1),
  };
  const { points } = createFace(FLAT, 8000);
  for (const wantedError of [5e-2, 1e-2]) {
    const solver = createFieldSolver(FLAT, anyKernel(), { directPoints: 1e6 });
    const { series, error, rough } = solver.solve(plant.sources, plant.masses, { wantedError });
    expect(rough).toEqual([]);
    const found = valuesAtInto(new Float64Array(points.count), series, points);
    expect(farthest(found, bruteForce(plant, points))).toBeLessThan(error);
  }
});

test('a half space that ends on the face is no series: it is left to a direct sum', () => {
  const source = keyed(pointSource(cosine(0), [0, 0, HEIGHT], leaning(0.5)));
  expect(createFieldSolver(FLAT, anyKernel()).solve([source], [1]).rough).toEqual([0]);
});
