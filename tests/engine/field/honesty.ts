/** Whether the smooth field's stated error holds: seeded plants against brute force. */
import { createFace } from '../../../engine/geometry/face.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { valuesOnFaceInto } from '../../../engine/field/evaluateSeries.ts';
import { anyKernel, bruteForce, farthest, seededPlant, without } from './fieldPlants.ts';

export interface Honesty {
  readonly seed: number;
  readonly law: string;
  /** largest error at the points over the mean there, 1 */
  readonly error: number;
  /** bound that the field states, over the same mean */
  readonly stated: number;
  /** filaments that the series does not hold, of all */
  readonly rough: number;
  readonly filaments: number;
}

/** Error of one seeded plant's field at `pointCount` points of its face, against direct summation. */
export function honestyOf(seed: number, pointCount: number): Honesty {
  const plant = seededPlant(seed);
  const kernel = anyKernel();
  const { points, ...face } = createFace(plant.shape, pointCount);
  const field = createFieldSolver(plant.shape, kernel).solve(plant.sources, plant.masses);
  const found = valuesOnFaceInto(new Float64Array(points.count), field.series, { ...face, points });
  const brute = bruteForce(without(plant, field.rough), points, kernel);
  const mean = brute.reduce((sum, value) => sum + value, 0) / brute.length;
  return {
    seed,
    law: plant.sources[0]!.source.law.kind,
    error: mean > 0 ? farthest(found, brute) / mean : 0,
    stated: mean > 0 ? field.error / mean : 0,
    rough: field.rough.length,
    filaments: plant.sources.length,
  };
}
