/** The mirror blown up to the size of a region. */
import { ALUMINIUM_DIAMETER } from '../../../../engine/gas/freePath.ts';
import type { Coat } from '../../../../engine/index.ts';
import { figureOf } from '../../../../engine/film/figure.ts';
import { firstFiring } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';

const POINTS = 4000;
/** Of a region that takes an hour or so to cross by car, m. */
export const FIRST_REGION = 100e3;
export const LEAST_REGION = 10e3;
export const MOST_REGION = 1000e3;
/** Red laser light of workshops, m; it decides only how waves are counted. */
const WAVELENGTH = 633e-9;

export interface ScaleFacts {
  readonly coat: Coat;
  /** m, of the mirror itself */
  readonly diameter: number;
  /** of the surface: what the coat adds, its mean, tilt and focus taken off, m */
  readonly surfaceRms: number;
  readonly surfacePeakToValley: number;
  readonly filamentHeight: number;
  readonly atom: number;
}

export async function scaleFacts({ plant }: Bench, { evaluate }: Pick<Tools, 'evaluate'>): Promise<ScaleFacts> {
  const coat = await evaluate(plant, { points: POINTS, rays: 0 });
  const { surface } = figureOf(coat, { wavelength: WAVELENGTH }).corrected;
  return {
    coat,
    diameter: 2 * plant.shape.rimRadius,
    surfaceRms: surface.rms.value,
    surfacePeakToValley: surface.peakToValley.value,
    filamentHeight: plant.filaments[firstFiring(plant)]!.center[2],
    atom: ALUMINIUM_DIAMETER,
  };
}

/** How many times the mirror is blown up. */
export const magnification = ({ diameter }: ScaleFacts, region: number): number => region / diameter;
