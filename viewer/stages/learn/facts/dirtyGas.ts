/** Foreign molecules that arrive with the aluminium. */
import { ALUMINIUM_MASS } from '../../../../engine/gas/constants.ts';
import { arrivalRatio, contaminationBand, type ContaminationBand } from '../../../../engine/gas/contamination.ts';
import { impingementRate, monolayerTime } from '../../../../engine/gas/impingement.ts';
import type { Plant } from '../../../../engine/index.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';
import type { Bench, Tools } from '../lesson.ts';

const POINTS = 3000;
/** Pa: 1e-3, 1e-5 and 1e-7 mbar. */
export const COMPARED = [0.1, 1e-3, 1e-5] as const;
/** s, for the slider */
export const SHORTEST = 2;
export const LONGEST = 600;

export interface DirtyFacts {
  /** Pa and s, of the design */
  readonly pressure: number;
  readonly duration: number;
  /** m, mean of the coat */
  readonly thickness: number;
}

export async function dirtyFacts({ plant }: Bench, { evaluate }: Pick<Tools, 'evaluate'>): Promise<DirtyFacts> {
  const coat = await evaluate(plant, { points: POINTS, rays: 0 });
  const thickness = coat.statistics.mean.value;
  if (!(thickness > 0))
    throw new RangeError('no aluminium reaches the mirror of this design; choose the teaching tank');
  return { pressure: plant.vacuum.pressure, duration: plant.firing.duration, thickness };
}

export interface Arrivals {
  /** gas molecules that strike a place for each aluminium atom that lands there */
  readonly striking: number;
  /** of them, what stays in the film, by the engine's cautious assumptions */
  readonly staying: number;
  readonly band: ContaminationBand;
  /** 1/(m²·s) */
  readonly atoms: number;
  /** s in which as many molecules strike as one layer holds */
  readonly layer: number;
}

/** What arrives at a place of the mean thickness. */
export function arrivalsAt(
  { vacuum, film }: Plant,
  { thickness }: DirtyFacts,
  pressure: number,
  duration: number,
): Arrivals {
  const gas = residualGas(vacuum, pressure);
  const rate = thickness / duration;
  const atoms = (rate * film.density) / ALUMINIUM_MASS;
  const staying = arrivalRatio(gas, rate, film.density);
  return {
    striking: impingementRate(gas) / atoms,
    staying,
    band: contaminationBand(staying),
    atoms,
    layer: monolayerTime(gas),
  };
}
