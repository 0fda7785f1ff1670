/** Water on the walls: how venting loads it, how fast it can leave, and a bound that needs no model. */
import type { PumpingDesign } from '../design/designSchema.ts';
import { BOLTZMANN } from '../gas/constants.ts';
import { MONOLAYER } from '../gas/impingement.ts';

export type Venting = NonNullable<PumpingDesign['venting']>;

/** Venting to which published rates of outgassing refer: a day open to room air. */
export const USUAL_VENTING: Venting = { open: 24 * 3600, air: 'humid' };

/** Water that clings on even if the tank is closed again at once, over that after a day. */
const LEFT = 0.05;
/** What dry air or nitrogen brings, over what room air brings. */
const DRY = 0.1;
/** s, after which the outermost layers are filled and deeper pores follow with the logarithm of time. */
const SURFACE_FILLS = 360;

/**
 * Water that surfaces hold after a venting, over what they hold after a day in room air.
 *
 *     f = 0.05 + 0.95 w ln(1 + t/6 min)/ln(1 + 24 h/6 min),  w = 1 in room air, 0.1 in dry air
 *
 * An assumption, within a factor of three: smooth steel takes its water within a second, while the oxide and
 * old deposits of a coating tank go on filling for hours.
 *
 * @see amounts: 2.5e16 molecules per cm² (25 layers) on electropolished steel at 32 % relative humidity and
 * 25 °C, reached within 1 s, by conductivity of hydrogen fluoride (abstract); logarithm: M. Li, H. F. Dylla,
 * J. Vac. Sci. Technol. A 11 (1993) 1702, from memory
 */
export function waterAfter({ open, air }: Venting): number {
  const filled = Math.log1p(open / SURFACE_FILLS) / Math.log1p(USUAL_VENTING.open / SURFACE_FILLS);
  return LEFT + (1 - LEFT) * (air === 'dry' ? DRY : 1) * filled;
}

/** Gas in one layer of adsorbed molecules, Pa·m: n₀ k T. */
export function layerGas(temperature: number): number {
  return MONOLAYER * BOLTZMANN * temperature;
}

/**
 * Highest pressure that the water of some layers can cause at a time, whatever holds it.
 *
 *     p(t) < layers · n₀ k T A/(e S t),   the maximum of (n₀/τ) e^(−t/τ) over τ
 *
 * @param area [m²]
 * @param speed [m³/s] pumping speed for water
 * @param time [s] since desorption began
 * @see D. Edwards (1976), by its abstract, for the bound; own derivation of its constant
 */
export function waterBound(layers: number, area: number, speed: number, time: number, temperature: number): number {
  return (layers * layerGas(temperature) * area) / (Math.E * speed * time);
}

/**
 * Desorption from sites whose times of stay are spread evenly in their logarithm.
 *
 *     q(t) = n₀ k T (e^(−t/τ₂) − e^(−t/τ₁))/(t ln(τ₂/τ₁))
 *
 * Between τ₁ and τ₂ this is the 1/t law; all of it together is one layer.
 *
 * @param shortest τ₁ [s] of the loosest sites
 * @param longest τ₂ [s] of the firmest
 * @returns [Pa·m/s] per layer
 */
export function spreadDesorption(time: number, shortest: number, longest: number, temperature: number): number {
  const left = Math.exp(-time / longest) - Math.exp(-time / shortest);
  return (layerGas(temperature) * left) / (time * Math.log(longest / shortest));
}
