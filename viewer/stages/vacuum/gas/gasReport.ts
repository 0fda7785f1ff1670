/** What the residual gas does to vapour and surfaces, from the engine's gas kinetics. */
import type { Plant } from '../../../../engine/index.ts';
import {
  CROSS_SECTION_DOUBT,
  DEFAULT_VAPOUR,
  firstFlightSurvival,
  gasFreePath,
  perFreePath,
} from '../../../../engine/gas/freePath.ts';
import { componentsOf, type GasName, type GasState } from '../../../../engine/gas/gases.ts';
import { impingementByGas, impingementRate, monolayerTime } from '../../../../engine/gas/impingement.ts';
import { flowRegime, knudsenNumber, vacuumRange, type FlowRegime } from '../../../../engine/gas/regime.ts';
import { meanThrow, residualGas } from './residualGas.ts';

/** A value with the range in which the model may be wrong. */
export interface Doubted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface GasReport {
  readonly gas: GasState;
  /** by ISO 3529-1, such as "high vacuum" */
  readonly range: string;
  /** 1/m³ */
  readonly density: number;
  /** m, of the gas's own molecules */
  readonly gasPath: number;
  /** m, of vapour as it leaves the filaments */
  readonly vapourPath: Doubted;
  /** m, mean distance from filaments to mirror; NaN if nothing evaporates toward it */
  readonly throwLength: number;
  /** m */
  readonly tankDiameter: number;
  readonly knudsenThrow: number;
  readonly knudsenTank: number;
  readonly regimeThrow: FlowRegime;
  readonly regimeTank: FlowRegime;
  /** share of the vapour that meets no molecule over the mean throw, 1 */
  readonly survival: Doubted;
  /** molecules that strike a surface, 1/(m²·s) */
  readonly impingement: number;
  readonly impingementBy: readonly (readonly [GasName, number])[];
  /** s, if each molecule stays where it strikes */
  readonly monolayer: number;
}

/** Models at both ends of what is known of the cross-section, and the middle. */
const MODELS = [1, 1 + CROSS_SECTION_DOUBT, 1 - CROSS_SECTION_DOUBT].map((crossSectionScale) => ({
  ...DEFAULT_VAPOUR,
  crossSectionScale,
}));

/** A number under the middle model and under the others. */
function doubted(valueOf: (model: (typeof MODELS)[number]) => number): Doubted {
  const [value = NaN, ...others] = MODELS.map(valueOf);
  return { value, low: Math.min(value, ...others), high: Math.max(value, ...others) };
}

/** Share of the vapour that meets no molecule over a distance. */
export function survivalOver(gas: GasState, distance: number): Doubted {
  return doubted((model) => firstFlightSurvival(gas, distance, model));
}

/** The gas of a plant's shot. */
export function gasReport(plant: Plant, gas: GasState = residualGas(plant.vacuum)): GasReport {
  const throwLength = meanThrow(plant);
  const tankDiameter = 2 * plant.tank.radius;
  const gasPath = gasFreePath(gas);
  const knudsenThrow = knudsenNumber(gasPath, throwLength);
  const knudsenTank = knudsenNumber(gasPath, tankDiameter);
  return {
    gas,
    range: vacuumRange(gas.pressure),
    density: componentsOf(gas).reduce((sum, { density }) => sum + density, 0),
    gasPath,
    vapourPath: doubted((model) => 1 / perFreePath(gas, model)),
    throwLength,
    tankDiameter,
    knudsenThrow,
    knudsenTank,
    regimeThrow: flowRegime(knudsenThrow),
    regimeTank: flowRegime(knudsenTank),
    survival: survivalOver(gas, throwLength),
    impingement: impingementRate(gas),
    impingementBy: [...impingementByGas(gas)],
    monolayer: monolayerTime(gas),
  };
}
