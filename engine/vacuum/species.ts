/** The gases that a pump-down keeps apart: air, water vapour, and all else that surfaces give off. */
import { AVOGADRO } from '../gas/constants.ts';
import { GASES } from '../gas/gases.ts';
import { meanSpeed } from '../gas/speeds.ts';

/** In the order of every array of partial pressures. */
export const SPECIES = ['air', 'water', 'other'] as const;
export const SPECIES_COUNT = SPECIES.length;
export const AIR = 0;
export const WATER = 1;
export const OTHER = 2;

/**
 * kg/mol. What surfaces give off beside water is a mixture of hydrogen, carbon oxides and hydrocarbons;
 * it is pumped as nitrogen here (common practice, no source).
 */
export const MOLAR_MASSES: readonly number[] = [GASES.air.molarMass, GASES.H2O.molarMass, GASES.N2.molarMass];

/** Mean speed of the molecules of a gas, m/s. */
export function meanSpeedOf(molarMass: number, temperature: number): number {
  return meanSpeed(temperature, molarMass / AVOGADRO);
}

/** Viscosity of air at 20 °C, Pa·s. @see K. Jousten, Handbook of Vacuum Technology, from memory */
const VISCOSITY_20C = 18.2e-6;
const CELSIUS_20 = 293.15;
/** Sutherland's constant of air, K. @see U.S. Standard Atmosphere 1976, from memory */
const SUTHERLAND = 110.4;

/**
 * Viscosity of air.
 *
 *     η = η₂₀ (T/T₂₀)^(3/2) (T₂₀ + S)/(T + S)
 *
 * Valid from 200 K to 1000 K within 2 %.
 *
 * @returns [Pa·s]
 */
export function airViscosity(temperature: number): number {
  return (VISCOSITY_20C * (temperature / CELSIUS_20) ** 1.5 * (CELSIUS_20 + SUTHERLAND)) / (temperature + SUTHERLAND);
}
