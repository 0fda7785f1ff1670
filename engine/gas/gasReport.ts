/** The residual gas of a shot in numbers: free paths, regimes, molecules at the surfaces. */
import { createFace } from '../geometry/face.ts';
import type { Plant } from '../plant/plant.ts';
import { evaporatedMasses } from '../plant/plant.ts';
import { ALUMINIUM_MASS } from './constants.ts';
import {
  atomFreePath,
  DEFAULT_VAPOUR,
  firstFlightSurvival,
  gasFreePath,
  perFreePath,
  type VapourModel,
} from './freePath.ts';
import type { GasState } from './gases.ts';
import { impingementRate, monolayerTime } from './impingement.ts';
import { flowRegime, knudsenNumber, vacuumRange, type FlowRegime } from './regime.ts';
import { plantGas } from './scatterProblem.ts';
import { probableSpeed } from './speeds.ts';

/** Straight distances between filaments and mirror, m. */
export interface Throw {
  readonly least: number;
  /** over all loops by their mass and all of the face by its area */
  readonly mean: number;
  readonly greatest: number;
}

/** A Knudsen number with what it was made from. */
export interface RegimeOf {
  readonly what: 'gas across the throw' | 'gas across the tank' | 'vapour across the throw';
  /** m */
  readonly freePath: number;
  readonly length: number;
  readonly knudsen: number;
  readonly regime: FlowRegime;
}

export interface GasReport {
  readonly gas: GasState;
  readonly vacuumRange: string;
  /** mean free path of the gas's own molecules, m */
  readonly gasFreePath: number;
  /** mean free path of an aluminium atom at the mean speed of the vapour, m */
  readonly vapourFreePath: number;
  /** for the ballistic column sum, exact at the mean throw, 1/m */
  readonly perFreePath: number;
  readonly throw: Throw;
  readonly regimes: readonly RegimeOf[];
  /** share of the vapour that has met no molecule after the mean throw, 1 */
  readonly unscattered: number;
  /** molecules on every surface, 1/(m²·s) */
  readonly impingement: number;
  /** s, every molecule sticking */
  readonly monolayerTime: number;
}

/** Points of the face for the throw: its mean changes by less than 1e-3 with more. */
const THROW_POINTS = 500;

/** Distances between the filaments that evaporate and the mirror. */
export function throwOf(plant: Plant): Throw {
  const { points, cells } = createFace(plant.shape, THROW_POINTS);
  const area = new Float64Array(points.count);
  for (const { nodes, weights } of cells) nodes.forEach((node, k) => (area[node]! += weights[k]!));
  const masses = evaporatedMasses(plant);
  let [least, greatest, sum, all] = [Infinity, 0, 0, 0];
  plant.filaments.forEach(({ source }, f) => {
    for (let j = 0; j < source.count && masses[f]! > 0; j++) {
      for (let i = 0; i < points.count; i++) {
        const distance = Math.hypot(
          points.position[3 * i]! - source.position[3 * j]!,
          points.position[3 * i + 1]! - source.position[3 * j + 1]!,
          points.position[3 * i + 2]! - source.position[3 * j + 2]!,
        );
        const weight = masses[f]! * source.weight[j]! * area[i]!;
        least = Math.min(least, distance);
        greatest = Math.max(greatest, distance);
        sum += weight * distance;
        all += weight;
      }
    }
  });
  return { least, mean: sum / all, greatest };
}

/**
 * Mean speed of vapour that leaves a surface, ¾ √π of its most probable thermal speed.
 *
 *     ⟨v⟩ = ¾ √π √(2kT/m)
 */
export function meanVapourSpeed({ temperature }: VapourModel): number {
  return 0.75 * Math.sqrt(Math.PI) * probableSpeed(temperature, ALUMINIUM_MASS);
}

/**
 * Describes the residual gas of a plant's shot.
 *
 * @throws RangeError if the gas is none, or nothing evaporates
 */
export function gasReport(plant: Plant, gas = plantGas(plant), vapour: VapourModel = DEFAULT_VAPOUR): GasReport {
  const distances = throwOf(plant);
  if (!(distances.mean > 0)) throw new RangeError('no filament evaporates anything: there is no throw');
  const ownPath = gasFreePath(gas);
  const vapourPath = atomFreePath(gas, meanVapourSpeed(vapour), vapour);
  const regimeOf = (what: RegimeOf['what'], freePath: number, length: number): RegimeOf => {
    const knudsen = knudsenNumber(freePath, length);
    return { what, freePath, length, knudsen, regime: flowRegime(knudsen) };
  };
  return {
    gas,
    vacuumRange: vacuumRange(gas.pressure),
    gasFreePath: ownPath,
    vapourFreePath: vapourPath,
    perFreePath: perFreePath(gas, vapour, distances.mean),
    throw: distances,
    regimes: [
      regimeOf('gas across the throw', ownPath, distances.mean),
      regimeOf('gas across the tank', ownPath, 2 * plant.tank.radius),
      regimeOf('vapour across the throw', vapourPath, distances.mean),
    ],
    unscattered: firstFlightSurvival(gas, distances.mean, vapour),
    impingement: impingementRate(gas),
    monolayerTime: monolayerTime(gas),
  };
}
