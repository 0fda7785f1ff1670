/** Diffusion of aluminium vapour through a gas: the limit of very many collisions, and its check. */
import { ALUMINIUM_MASS, BOLTZMANN } from './constants.ts';
import { atomCrossSection, DEFAULT_VAPOUR, type VapourModel } from './freePath.ts';
import { componentsOf, type GasState } from './gases.ts';

/**
 * Diffusion coefficient of a trace of aluminium in a gas, first Chapman–Enskog approximation for hard spheres.
 *
 *     D₁₂ = 3/(8 n d₁₂²) √(kT/(2π μ)) = 3/(8 n σ) √(π kT/(2 μ)),  σ = π d₁₂²,  μ = m_Al m_gas/(m_Al + m_gas)
 *     mixtures: 1/D = Σ 1/D₁ⱼ (Blanc's law)
 *
 * Error: below the exact coefficient by 0 to 2 % in gases lighter than argon, 3 % in argon (see secondApproximation).
 *
 * @returns [m²/s], Infinity in a perfect vacuum
 * @see S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, 14.2 (from memory)
 */
export function diffusionCoefficient(gas: GasState, model: VapourModel = DEFAULT_VAPOUR): number {
  let inverse = 0;
  for (const part of componentsOf(gas)) {
    const reduced = (ALUMINIUM_MASS * part.mass) / (ALUMINIUM_MASS + part.mass);
    const speed = Math.sqrt((Math.PI * BOLTZMANN * gas.temperature) / (2 * reduced));
    inverse += (8 * part.density * atomCrossSection(part, model)) / (3 * speed);
  }
  return 1 / inverse;
}

/**
 * Second over first Chapman–Enskog approximation for a trace of aluminium among hard spheres of mass m_gas.
 *
 *     1/(1 − Δ),  Δ = m_gas² / (13 m_gas² + 30 m_Al² + 16 m_Al m_gas)
 *
 * Limits: Δ = 1/13 for a light trace, 1/59 for equal masses, 0 for a heavy trace. The exact coefficient lies
 * little above: by 0.2 % for equal masses.
 *
 * @param gasMass [kg]
 * @see S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, 14.3 (from memory)
 */
export function secondApproximation(gasMass: number): number {
  const delta = gasMass ** 2 / (13 * gasMass ** 2 + 30 * ALUMINIUM_MASS ** 2 + 16 * ALUMINIUM_MASS * gasMass);
  return 1 / (1 - delta);
}
