/** Free path against pressure, and against the size of the tank. */
import { gasFreePath, perFreePath } from '../../../../engine/gas/freePath.ts';
import { flowRegime, knudsenNumber, vacuumRange, type FlowRegime } from '../../../../engine/gas/regime.ts';
import { logSpaced } from '../../../../engine/gas/pressureSweep.ts';
import type { Plant } from '../../../../engine/index.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';

/** Pa */
export const LOWEST = 1e-6;
export const HIGHEST = 1e3;
const POINTS = 55;

export interface PathFacts {
  /** Pa, of the design */
  readonly pressure: number;
  /** m */
  readonly tankDiameter: number;
  /** Pa, rising */
  readonly pressures: Float64Array;
  /** m, of an aluminium atom and of the gas itself */
  readonly atomPaths: Float64Array;
  readonly gasPaths: Float64Array;
}

/** Free path of an aluminium atom in the gas of a plant, m. */
export const atomPath = ({ vacuum }: Plant, pressure: number): number => 1 / perFreePath(residualGas(vacuum, pressure));

/** How the gas of a tank behaves at a pressure. */
export function stateAt(
  { vacuum, tank }: Plant,
  pressure: number,
): { readonly knudsen: number; readonly regime: FlowRegime; readonly range: string } {
  const knudsen = knudsenNumber(gasFreePath(residualGas(vacuum, pressure)), 2 * tank.radius);
  return { knudsen, regime: flowRegime(knudsen), range: vacuumRange(pressure) };
}

export function pathFacts(plant: Plant): PathFacts {
  const pressures = logSpaced(LOWEST, HIGHEST, POINTS);
  return {
    pressure: plant.vacuum.pressure,
    tankDiameter: 2 * plant.tank.radius,
    pressures,
    atomPaths: pressures.map((pressure) => atomPath(plant, pressure)),
    gasPaths: pressures.map((pressure) => gasFreePath(residualGas(plant.vacuum, pressure))),
  };
}

/** Pressure at which an aluminium atom flies a given way on average, Pa: the free path is inverse to the pressure. */
export const pressureOfPath = (plant: Plant, way: number): number => atomPath(plant, 1) / way;
