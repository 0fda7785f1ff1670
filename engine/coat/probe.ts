/** One point of the mirror looked at closely: how much arrives, from where, how steeply. */
import { createOrientedPoints } from '../geometry/orientedPoints.ts';
import { isOnGlass, surfacePointInto } from '../geometry/mirrorShape.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { computeArrival, computeColumns } from '../transport/column.ts';
import { createPlainKernel } from '../transport/depositKernel.ts';
import { buildScene } from '../transport/buildScene.ts';
import { sceneDataOf } from '../transport/plantRequests.ts';
import { createVisibility, type Visibility } from '../transport/visibility.ts';

export interface ProbeReading {
  readonly position: readonly [number, number, number];
  /** m */
  readonly thickness: number;
  /** distance from the middle of the glass, m */
  readonly radius: number;
  /** clock angle, rad */
  readonly angle: number;
  /** mean angle of arrival from the normal, weighted by deposit, rad; NaN where nothing arrives */
  readonly meanArrival: number;
  /** share that arrives beyond 60°, 1; NaN where nothing arrives */
  readonly grazingShare: number;
  /** [filaments] thickness that each contributes, m; they sum to the thickness */
  readonly contributions: Float64Array;
}

/** Reads the coat at (x, y), m; null off the glass. */
export type Probe = (x: number, y: number) => ProbeReading | null;

/** The last scene, which most edits leave as it is. */
let last: { readonly key: string; readonly visibility: Visibility } | undefined;

async function visibilityOf(plant: Plant): Promise<Visibility> {
  const data = sceneDataOf(plant);
  if (last?.key !== data.key) last = { key: data.key, visibility: createVisibility(await buildScene(data)) };
  return last.visibility;
}

/** Makes a probe of a plant; each reading is one exact sum over all filaments. */
export async function createProbe(plant: Plant): Promise<Probe> {
  const visibility = await visibilityOf(plant);
  const kernel = createPlainKernel(1);
  const sources = plant.filaments.map(({ source }) => source);
  const masses = evaporatedMasses(plant);
  const scale = plant.film.sticking / plant.film.density;
  const at = createOrientedPoints(1);
  return (x, y) => {
    if (!isOnGlass(plant.shape, x, y)) return null;
    surfacePointInto(at.position, at.normal, 0, plant.shape, x, y);
    const contributions = new Float64Array(masses.length);
    let [thickness, angle, grazing] = [0, 0, 0];
    const columns = computeColumns(sources, at, visibility, kernel);
    sources.forEach((source, f) => {
      if (masses[f] === 0) return;
      const arrival = computeArrival(source, at, visibility, kernel);
      contributions[f] = columns[f]!.deposit[0]! * masses[f]! * scale;
      thickness += contributions[f]!;
      angle += arrival.angle[0]! * masses[f]! * scale;
      grazing += arrival.grazing[0]! * masses[f]! * scale;
    });
    const [px = 0, py = 0, pz = 0] = at.position;
    const [dx, dy] = [px - plant.shape.centerX, py];
    return {
      position: [px, py, pz],
      thickness,
      radius: Math.hypot(dx, dy),
      angle: Math.atan2(dy, dx),
      meanArrival: angle / thickness,
      grazingShare: grazing / thickness,
      contributions,
    };
  };
}
