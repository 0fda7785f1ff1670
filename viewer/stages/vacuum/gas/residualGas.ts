/** The residual gas of a design, and its gases in words. */
import type { GasName, GasState, Mixture } from '../../../../engine/gas/gases.ts';
import { plantGas } from '../../../../engine/gas/scatterProblem.ts';
import type { Plant } from '../../../../engine/index.ts';

type VacuumOfPlant = Plant['vacuum'];

/** The gas around the shot; at another pressure if one is given, Pa. */
export function residualGas(vacuum: VacuumOfPlant, pressure = vacuum.pressure): GasState {
  return { ...plantGas({ vacuum }), pressure };
}

/** Its gases by share of the pressure. */
export const mixtureOf = (vacuum: VacuumOfPlant): Mixture => plantGas({ vacuum }).mixture;

const GAS_WORDS: Readonly<Record<GasName, string>> = {
  air: 'air',
  N2: 'nitrogen',
  O2: 'oxygen',
  H2O: 'water vapour',
  Ar: 'argon',
  H2: 'hydrogen',
  He: 'helium',
};

/** What a gas is called in a sentence. */
export const gasWord = (name: GasName): string => GAS_WORDS[name];
