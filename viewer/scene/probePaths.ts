/** The straight paths on which vapour reaches the probe: from which filaments, how much, and what is in the way. */
import type { Plant, ProbeReading } from '../../engine/index.ts';
import { createOrientedPoints } from '../../engine/geometry/orientedPoints.ts';
import { surfacePointInto } from '../../engine/geometry/mirrorShape.ts';
import { evaporatedMasses } from '../../engine/plant/plant.ts';
import { addDepositInto } from '../../engine/transport/depositKernels.ts';

export interface ProbePath {
  readonly iFilament: number;
  /** m that the filament would add to the coat here if nothing were in the way */
  readonly open: number;
  /** m that it adds */
  readonly arriving: number;
  /** whether all or part of it is stopped by an obstacle, a shield or the glass */
  readonly isBlocked: boolean;
}

/** Paths that are drawn; more would be a curtain. */
const MAX_PATHS = 24;
/** Share by which two sums of the same terms may differ by rounding: a few hundred terms of 1e-16 each. */
const ROUNDING = 1e-12;

/** The strongest paths to the place of a reading, strongest first. */
export function probePathsOf(plant: Plant, { position, contributions }: ProbeReading): ProbePath[] {
  const masses = evaporatedMasses(plant);
  const at = createOrientedPoints(1);
  surfacePointInto(at.position, at.normal, 0, plant.shape, position[0], position[1]);
  const scale = plant.film.sticking / plant.film.density;
  const sum = new Float64Array(1);
  const paths = plant.filaments.map(({ source }, iFilament) => {
    sum[0] = 0;
    for (let j = 0; j < source.count; j++) addDepositInto(sum, at, 0, 1, source, j);
    const open = sum[0] * masses[iFilament]! * scale;
    const arriving = contributions[iFilament] ?? 0;
    return { iFilament, open, arriving, isBlocked: arriving < open * (1 - ROUNDING) };
  });
  return paths
    .filter(({ open }) => open > 0)
    .toSorted((a, b) => b.open - a.open)
    .slice(0, MAX_PATHS);
}
