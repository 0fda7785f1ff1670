/** What the residual gas leaves in the film of a shot. */
import {
  contaminationBand,
  contaminationMap,
  gettered,
  recommend,
  steadyPace,
  type ContaminationBand,
  type Gettered,
  type Recommendation,
} from '../../../../engine/gas/contamination.ts';
import { firingSchema } from '../../../../engine/design/firingSchema.ts';
import type { Coat, DesignFile } from '../../../../engine/index.ts';
import { tankSpace } from '../../../../engine/vacuum/tankSpace.ts';
import { residualGas } from '../gas/residualGas.ts';

export interface ContaminationCase {
  /** s, how long the film grows */
  readonly duration: number;
  /** m/s, at the mean thickness and at the thinnest place */
  readonly meanRate: number;
  readonly leastRate: number;
  /** molecules that stick for each aluminium atom, at the mean thickness and at the thinnest place */
  readonly mean: number;
  readonly worst: number;
  /** of the thinnest place */
  readonly band: ContaminationBand;
  /** [points] of the coat; NaN where there is no film */
  readonly map: Float64Array;
  readonly gettered: Gettered;
  /** m², fresh film on the tank's wall and the mirror */
  readonly freshArea: number;
  readonly recommendation: Recommendation;
}

/** How long the film grows, s, as the design says or leaves to its default. */
export function firingDuration({ firing }: DesignFile): number {
  return firingSchema.parse(firing ?? {}).duration;
}

/** The gas in a coat; null if the thinnest place has no film at all. */
export function contaminationCase(coat: Coat, duration: number): ContaminationCase | null {
  const { plant, thickness, statistics } = coat;
  const { density } = plant.film;
  const least = statistics.minimum.value;
  if (!(least > 0)) return null;
  const gas = residualGas(plant.vacuum);
  const pace = steadyPace(duration);
  const map = contaminationMap(gas, thickness, density, pace);
  const [mean = 0, worst = 0] = contaminationMap(gas, Float64Array.of(statistics.mean.value, least), density, pace);
  const { wallArea, faceArea } = tankSpace(plant);
  return {
    duration,
    meanRate: statistics.mean.value / duration,
    leastRate: least / duration,
    mean,
    worst,
    band: contaminationBand(worst),
    map: map.map((value) => (Number.isFinite(value) ? value : NaN)),
    gettered: gettered(gas, wallArea + faceArea, pace),
    freshArea: wallArea + faceArea,
    recommendation: recommend(gas, least / duration, density),
  };
}
