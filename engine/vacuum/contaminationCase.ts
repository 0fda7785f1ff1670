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
} from '../gas/contamination.ts';
import { plantGas } from '../gas/scatterProblem.ts';
import type { Coat } from '../coat/coat.ts';
import { tankSpace } from './tankSpace.ts';

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

/**
 * The gas in a coat; null if the thinnest place has no film at all.
 *
 * @param duration how long the film grows, s; as the design says unless given
 */
export function contaminationCase(coat: Coat, duration = coat.plant.firing.duration): ContaminationCase | null {
  const { plant, thickness, statistics } = coat;
  const { density } = plant.film;
  const least = statistics.minimum.value;
  if (!(least > 0)) return null;
  const gas = plantGas(plant);
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
