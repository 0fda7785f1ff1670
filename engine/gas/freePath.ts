/** How far molecules of the gas, and aluminium atoms in it, fly between collisions. */
import { ALUMINIUM_MASS } from './constants.ts';
import { erf } from './erf.ts';
import { componentsOf, type Component, type GasState } from './gases.ts';
import { meanSpeed, probableSpeed } from './speeds.ts';

/**
 * Hard-sphere diameter of an aluminium atom, m: the middle between twice its metallic radius (2.86 Å)
 * and twice its van der Waals radius (3.68 Å), both from memory. No measured cross-section of aluminium
 * vapour in a gas was found; cross-sections are good to about CROSS_SECTION_DOUBT.
 */
export const ALUMINIUM_DIAMETER = 3.27e-10;
/** Relative doubt of a cross-section between an aluminium atom and a gas molecule. */
export const CROSS_SECTION_DOUBT = 0.25;

/** How aluminium vapour is modelled in the gas. */
export interface VapourModel {
  /** K, of the metal that the atoms leave */
  readonly temperature: number;
  /** m */
  readonly diameter: number;
  /** factor on all cross-sections with the gas; 1 ± CROSS_SECTION_DOUBT spans what is known */
  readonly crossSectionScale: number;
}

/** Vapour from a filament at 1500 K. @see physics of aluminium evaporation: 1 Pa of vapour at 1485 K (Alcock et al. 1984) */
export const DEFAULT_VAPOUR: VapourModel = { temperature: 1500, diameter: ALUMINIUM_DIAMETER, crossSectionScale: 1 };

/** Cross-section of an aluminium atom and a molecule of a gas, σ = scale · π ((d_Al + d_gas)/2)², m². */
export function atomCrossSection({ diameter }: Pick<Component, 'diameter'>, model: VapourModel): number {
  return model.crossSectionScale * Math.PI * ((model.diameter + diameter) / 2) ** 2;
}

/**
 * Mean free path of the gas's own molecules: distance flown by all over collisions made by all.
 *
 *     1/λᵢ = Σⱼ nⱼ π ((dᵢ + dⱼ)/2)² √(1 + mᵢ/mⱼ),     one gas: λ = kT / (√2 π d² p)
 *
 * Assumes: hard spheres of the diameter at 25 °C. Error: sources differ by ±6 %; at other temperatures
 * the real diameter drifts by about 4 % per 100 K.
 *
 * @returns [m], Infinity in a perfect vacuum
 * @see J. H. Jeans, The Dynamical Theory of Gases, chapter X, for mixtures (from memory)
 */
export function gasFreePath(gas: GasState): number {
  const parts = componentsOf(gas);
  let flown = 0;
  let met = 0;
  for (const one of parts) {
    let perPath = 0;
    for (const other of parts)
      perPath +=
        other.density * Math.PI * ((one.diameter + other.diameter) / 2) ** 2 * Math.sqrt(1 + one.mass / other.mass);
    const flux = one.density * meanSpeed(gas.temperature, one.mass);
    flown += flux;
    met += flux * perPath;
  }
  return met > 0 ? flown / met : Infinity;
}

/**
 * Mean relative speed between an atom and a thermal gas, over the gas's most probable speed.
 *
 *     g(s) = (s + 1/2s) erf s + e^(−s²)/√π
 *
 * @param s [1] speed of the atom over the most probable speed of the gas, ≥ 0
 * @see S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, 5.4 (from memory)
 */
export function relativeSpeed(s: number): number {
  if (s < 1e-4) return (2 / Math.sqrt(Math.PI)) * (1 + (s * s) / 3);
  return (s + 0.5 / s) * erf(s) + Math.exp(-s * s) / Math.sqrt(Math.PI);
}

/**
 * Collisions of an aluminium atom per second.
 *
 *     ν(v) = Σⱼ nⱼ σⱼ v_pj g(v/v_pj),  v_p = √(2kT/m)
 *
 * @param speed [m/s] ≥ 0
 */
export function collisionRate(gas: GasState, speed: number, model: VapourModel = DEFAULT_VAPOUR): number {
  let rate = 0;
  for (const part of componentsOf(gas)) {
    const probable = probableSpeed(gas.temperature, part.mass);
    rate += part.density * atomCrossSection(part, model) * probable * relativeSpeed(speed / probable);
  }
  return rate;
}

/**
 * Mean free path of an aluminium atom of a given speed.
 *
 *     λ(v) = v / ν(v);  fast atom: 1/(nσ);  atom of the gas's temperature, on average: 1/(nσ √(1 + m_Al/m_gas))
 *
 * @param speed [m/s] > 0
 * @returns [m], Infinity in a perfect vacuum
 */
export function atomFreePath(gas: GasState, speed: number, model: VapourModel = DEFAULT_VAPOUR): number {
  return speed / collisionRate(gas, speed, model);
}

/** Steps of Simpson's rule over speeds, and the largest speed over the most probable one. */
const STEPS = 400;
const FASTEST = 6;

/** Speeds of vapour that leaves a surface, as a quadrature. */
export interface SpeedRule {
  /** [STEPS] m/s */
  readonly speeds: Float64Array;
  /** [STEPS] shares; they sum to 1 */
  readonly weights: Float64Array;
}

/**
 * The speeds with which vapour leaves: a Maxwell distribution weighted by the speed.
 *
 *     f(v) dv = 2 x³ e^(−x²) dx,  x = v/√(2kT/m_Al)
 */
export function vapourSpeeds(model: VapourModel = DEFAULT_VAPOUR): SpeedRule {
  const probable = probableSpeed(model.temperature, ALUMINIUM_MASS);
  const speeds = new Float64Array(STEPS);
  const weights = new Float64Array(STEPS);
  let total = 0;
  for (let i = 0; i < STEPS; i++) {
    const x = (FASTEST * (i + 1)) / STEPS;
    speeds[i] = probable * x;
    weights[i] = (i % 2 === 0 ? 4 : 2) * x ** 3 * Math.exp(-x * x); // both ends of the rule are zero
    total += weights[i]!;
  }
  for (let i = 0; i < STEPS; i++) weights[i]! /= total;
  return { speeds, weights };
}

/** Inverse free paths at the speeds of a rule, 1/m. */
function inversePaths(gas: GasState, model: VapourModel, { speeds }: SpeedRule): Float64Array {
  return speeds.map((speed) => collisionRate(gas, speed, model) / speed);
}

/**
 * Share of the vapour that has met no molecule after a straight flight.
 *
 *     S(r) = ∫ f(v) e^(−r/λ(v)) dv
 *
 * Slow atoms are scattered first, so that the survivors grow faster and S falls a little more slowly
 * than any one exponential.
 *
 * @param distance [m] ≥ 0
 */
export function firstFlightSurvival(gas: GasState, distance: number, model: VapourModel = DEFAULT_VAPOUR): number {
  const rule = vapourSpeeds(model);
  const inverse = inversePaths(gas, model, rule);
  let share = 0;
  for (let i = 0; i < inverse.length; i++) share += rule.weights[i]! * Math.exp(-distance * inverse[i]!);
  return share;
}

/**
 * The inverse free path for the ballistic column sum, which weights each line of sight by e^(−r·perFreePath).
 *
 *     reach = 0:   ∫ f(v)/λ(v) dv, the mean inverse free path: exact for r ≪ λ, and never too much beyond
 *     reach > 0:   −ln S(reach)/reach: exact at that distance, such as the mean throw
 *
 * Error, as a share of the vapour, at most (see survivalDefect): for reach = 0 in air, nitrogen, oxygen and argon
 * 0.0025, in water 0.005, in helium 0.018 and in hydrogen 0.027, whose molecules outrun the atoms; for a reach of
 * one free path less than half of that.
 *
 * @param reach [m] ≥ 0
 * @returns [1/m], 0 in a perfect vacuum
 */
export function perFreePath(gas: GasState, model: VapourModel = DEFAULT_VAPOUR, reach = 0): number {
  const rule = vapourSpeeds(model);
  const inverse = inversePaths(gas, model, rule);
  let mean = 0;
  for (let i = 0; i < inverse.length; i++) mean += rule.weights[i]! * inverse[i]!;
  if (reach * mean < 1e-6) return mean;
  return -Math.log(firstFlightSurvival(gas, reach, model)) / reach;
}

/**
 * What one exponential leaves out: S(r) − e^(−r·perFreePath).
 *
 * @param distance [m] ≥ 0
 * @param inversePath [1/m] such as perFreePath gives
 * @returns [1] share of the vapour
 */
export function survivalDefect(
  gas: GasState,
  distance: number,
  inversePath: number,
  model: VapourModel = DEFAULT_VAPOUR,
): number {
  return firstFlightSurvival(gas, distance, model) - Math.exp(-distance * inversePath);
}
