/** The same sum as anybody would first write it, with small objects: the yardstick of the benchmarks. */
import type { OrientedPoints } from '../../engine/geometry/orientedPoints.ts';
import type { Plant } from '../../engine/plant/plant.ts';

interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const minus = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** Deposit per kilogram of every filament together, cosine law aimed at −z, no shadows. */
export function naiveSum(plant: Plant, points: OrientedPoints): number[] {
  const at = (array: Float64Array, i: number): Vector => ({
    x: array[3 * i]!,
    y: array[3 * i + 1]!,
    z: array[3 * i + 2]!,
  });
  const sources = plant.filaments.flatMap(({ source }) =>
    Array.from(source.weight, (weight, j) => ({ weight, position: at(source.position, j) })),
  );
  return Array.from({ length: points.count }, (_, i) => {
    const point = at(points.position, i);
    const normal = at(points.normal, i);
    let sum = 0;
    for (const { weight, position } of sources) {
      const d = minus(point, position);
      const r = Math.sqrt(dot(d, d));
      const cosEmit = Math.max(0, -d.z / r);
      const cosArrive = Math.max(0, -dot(d, normal) / r);
      sum += (weight * cosEmit * cosArrive) / (Math.PI * r * r);
    }
    return sum;
  });
}
