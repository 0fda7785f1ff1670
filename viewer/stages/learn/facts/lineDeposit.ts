/** What each filament lays along a line across the mirror. */
import type { Plant } from '../../../../engine/index.ts';
import { isOnGlass, surfacePointInto } from '../../../../engine/geometry/mirrorShape.ts';
import { createOrientedPoints, type OrientedPoints } from '../../../../engine/geometry/orientedPoints.ts';
import { evaporatedMasses } from '../../../../engine/plant/plant.ts';
import { computeColumns } from '../../../../engine/transport/column.ts';
import { createPlainKernel } from '../../../../engine/transport/depositKernel.ts';
import { buildScene } from '../../../../engine/transport/buildScene.ts';
import { sceneDataOf } from '../../../../engine/transport/plantRequests.ts';
import { createVisibility } from '../../../../engine/transport/visibility.ts';

/** A line through the middle of the glass; what lies in its hole is left out. */
export interface FaceLine {
  /** [points] signed distance from the middle of the glass, m, rising */
  readonly along: Float64Array;
  readonly points: OrientedPoints;
}

/** Places along the diameter at a clock angle. */
export function diameterLine({ shape }: Plant, angle: number, count: number): FaceLine {
  const along = Float64Array.from(
    { length: count },
    (_, i) => shape.rimRadius * ((2 * i) / (count - 1) - 1) * 0.9999,
  ).filter((s) => isOnGlass(shape, shape.centerX + s * Math.cos(angle), s * Math.sin(angle)));
  const points = createOrientedPoints(along.length);
  along.forEach((s, i) =>
    surfacePointInto(
      points.position,
      points.normal,
      i,
      shape,
      shape.centerX + s * Math.cos(angle),
      s * Math.sin(angle),
    ),
  );
  return { along, points };
}

/** Thickness that each filament lays at each place, shadows included: [filaments][points], m. */
export async function thicknessByFilament(plant: Plant, points: OrientedPoints): Promise<Float64Array[]> {
  const visibility = createVisibility(await buildScene(sceneDataOf(plant)));
  const masses = evaporatedMasses(plant);
  const scale = plant.film.sticking / plant.film.density;
  const sources = plant.filaments.map(({ source }) => source);
  return computeColumns(sources, points, visibility, createPlainKernel()).map(({ deposit }, f) =>
    deposit.map((value) => value * masses[f]! * scale),
  );
}

/** Sum over filaments. */
export function summed(each: readonly Float64Array[]): Float64Array {
  const total = new Float64Array(each[0]?.length ?? 0);
  for (const one of each) for (let i = 0; i < total.length; i++) total[i]! += one[i]!;
  return total;
}
