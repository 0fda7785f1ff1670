/** How often molecules of the residual gas strike a surface. */
import { BOLTZMANN } from './constants.ts';
import { componentsOf, type Component, type GasName, type GasState } from './gases.ts';

/** Sites of a surface, 1/m²: the round number of vacuum practice, 1e15 per square centimetre (common practice, no source). */
export const MONOLAYER = 1e19;

/**
 * Molecules of one component that strike a surface.
 *
 *     Φ = p / √(2π m k T) = n v̄/4
 *
 * @returns [1/(m²·s)]
 * @see J. F. O'Hanlon, A User's Guide to Vacuum Technology: 3.513e22 p[Torr]/√(M T) per cm² and second (from memory)
 */
export function componentImpingement({ density, mass }: Component, temperature: number): number {
  return density * Math.sqrt((BOLTZMANN * temperature) / (2 * Math.PI * mass));
}

/** Molecules of each gas that strike a surface, 1/(m²·s). */
export function impingementByGas(gas: GasState): ReadonlyMap<GasName, number> {
  return new Map(componentsOf(gas).map((part) => [part.name, componentImpingement(part, gas.temperature)]));
}

/** Molecules of all kinds that strike a surface, 1/(m²·s). */
export function impingementRate(gas: GasState): number {
  let rate = 0;
  for (const one of impingementByGas(gas).values()) rate += one;
  return rate;
}

/**
 * Time in which a clean surface is covered by one layer if each molecule sticks with the given probability.
 *
 * @param sticking [1] share of the molecules that stay, above 0
 * @param sites [1/m²]
 * @returns [s], Infinity in a perfect vacuum
 */
export function monolayerTime(gas: GasState, sticking = 1, sites = MONOLAYER): number {
  return sites / (sticking * impingementRate(gas));
}
