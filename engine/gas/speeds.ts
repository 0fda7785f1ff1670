/** Thermal speeds of a gas in equilibrium. */
import { BOLTZMANN } from './constants.ts';

/** Most probable speed √(2kT/m), m/s. */
export function probableSpeed(temperature: number, mass: number): number {
  return Math.sqrt((2 * BOLTZMANN * temperature) / mass);
}

/** Mean speed √(8kT/πm), m/s. */
export function meanSpeed(temperature: number, mass: number): number {
  return Math.sqrt((8 * BOLTZMANN * temperature) / (Math.PI * mass));
}
