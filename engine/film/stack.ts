/** Light on a stack of flat layers, by the characteristic matrix. */

/** Layers from the light's side to the substrate, which comes last; parallel arrays that can be refilled. */
export interface Stack {
  /** real index of the medium that the light comes from */
  ambient: number;
  /** [layers + 1] */
  readonly n: Float64Array;
  /** [layers + 1] ≥ 0 */
  readonly k: Float64Array;
  /** [layers + 1] m; of the substrate, unused */
  readonly thickness: Float64Array;
}

/** An empty stack of so many layers over a substrate. */
export function createStack(layerCount: number): Stack {
  return {
    ambient: 1,
    n: new Float64Array(layerCount + 1).fill(1),
    k: new Float64Array(layerCount + 1),
    thickness: new Float64Array(layerCount + 1),
  };
}

/** Slots of a solution. R + T + absorbed = 1 for each polarisation. */
export const RS = 0;
export const RP = 1;
export const TS = 2;
export const TP = 3;
/** phases of the reflected tangential electric field at the first surface, rad */
export const PHASE_S = 4;
export const PHASE_P = 5;

/** A solution's six numbers. */
export const createSolution = (): Float64Array => new Float64Array(6);

/**
 * Reflectance, transmittance and reflected phase of a stack for both polarisations.
 *
 *     (B, C) = Π [cos δ, −i sin δ / η; −i η sin δ, cos δ] (1, η_m),  δ = 2π d q / λ,  q = √(N² − n₀² sin²θ₀)
 *     η = q (s) or N²/q (p),  r = (η₀B − C)/(η₀B + C),  T = 4 η₀ Re η_m / |η₀B + C|²
 *
 * Field exp(+iqz − iωt), N = n + ik. Each matrix is scaled by exp(−Im δ), so that a thick metal cannot
 * overflow; T carries the scale back. T is the share that enters the substrate, absorbing or not.
 * Valid for: flat, even, isotropic layers, coherent light. Error: rounding.
 *
 * @param out [6] overwritten: RS, RP, TS, TP, PHASE_S, PHASE_P
 * @param wavelength [m] in vacuum
 * @param sinIncidence [1] sine of the angle in the ambient medium, 0 ≤ sin < 1
 * @returns out
 * @see H. A. Macleod, Thin-Film Optical Filters, chapter 2 (from memory; there the field is exp(iωt) and N = n − ik)
 */
export function solveStackInto(
  out: Float64Array,
  stack: Stack,
  wavelength: number,
  sinIncidence: number,
): Float64Array {
  solveOne(out, stack, wavelength, sinIncidence, 0);
  if (sinIncidence === 0) {
    out[RP] = out[RS]!;
    out[TP] = out[TS]!;
    out[PHASE_P] = out[PHASE_S]!;
  } else solveOne(out, stack, wavelength, sinIncidence, 1);
  return out;
}

/** Scratch of `admittanceInto`: q and η, real and imaginary parts. */
const medium = new Float64Array(4);

/** Writes q = √(N² − β²), its root with Im q ≥ 0, and the tilted admittance η into `medium`. */
function admittanceInto(n: number, k: number, betaSquared: number, polarisation: 0 | 1): void {
  const squareR = n * n - k * k;
  const squareI = 2 * n * k;
  const re = squareR - betaSquared;
  const length = Math.hypot(re, squareI);
  // the larger part by a sum without cancellation, the other from their product
  const large = Math.sqrt((length + Math.abs(re)) / 2);
  const small = large > 0 ? squareI / (2 * large) : 0;
  const qR = re >= 0 ? large : small;
  const qI = re >= 0 ? small : large;
  medium[0] = qR;
  medium[1] = qI;
  if (polarisation === 0) {
    medium[2] = qR;
    medium[3] = qI;
    return;
  }
  const scale = 1 / (qR * qR + qI * qI);
  medium[2] = (squareR * qR + squareI * qI) * scale;
  medium[3] = (squareI * qR - squareR * qI) * scale;
}

function solveOne(
  out: Float64Array,
  { ambient, n, k, thickness }: Stack,
  wavelength: number,
  sinIncidence: number,
  polarisation: 0 | 1,
): void {
  const last = n.length - 1;
  const betaSquared = (ambient * sinIncidence) ** 2;
  const q0 = Math.sqrt(ambient * ambient - betaSquared);
  const eta0 = polarisation === 0 ? q0 : (ambient * ambient) / q0;
  admittanceInto(n[last]!, k[last]!, betaSquared, polarisation);
  const substrateEta = medium[2]!;
  let [bR, bI, cR, cI, fading] = [1, 0, substrateEta, medium[3]!, 0];
  for (let j = last - 1; j >= 0; j--) {
    if (thickness[j] === 0) continue;
    admittanceInto(n[j]!, k[j]!, betaSquared, polarisation);
    const turn = (2 * Math.PI * thickness[j]!) / wavelength;
    const x = turn * medium[0]!;
    const y = turn * medium[1]!;
    const etaR = medium[2]!;
    const etaI = medium[3]!;
    // cos δ and sin δ times exp(−y)
    const faded = Math.exp(-2 * y);
    const even = (1 + faded) / 2;
    const odd = (1 - faded) / 2;
    const cosX = Math.cos(x);
    const sinX = Math.sin(x);
    const cosR = cosX * even;
    const cosI = -sinX * odd;
    const sinR = sinX * even;
    const sinI = cosX * odd;
    fading += y;
    // −i sin δ = (sinI, −sinR); over η and times η
    const perEta = 1 / (etaR * etaR + etaI * etaI);
    const overR = (sinI * etaR - sinR * etaI) * perEta;
    const overI = (-sinR * etaR - sinI * etaI) * perEta;
    const timesR = sinI * etaR + sinR * etaI;
    const timesI = sinI * etaI - sinR * etaR;
    const nextBR = cosR * bR - cosI * bI + overR * cR - overI * cI;
    const nextBI = cosR * bI + cosI * bR + overR * cI + overI * cR;
    const nextCR = cosR * cR - cosI * cI + timesR * bR - timesI * bI;
    const nextCI = cosR * cI + cosI * cR + timesR * bI + timesI * bR;
    bR = nextBR;
    bI = nextBI;
    cR = nextCR;
    cI = nextCI;
  }
  const downR = eta0 * bR + cR;
  const downI = eta0 * bI + cI;
  const upR = eta0 * bR - cR;
  const upI = eta0 * bI - cI;
  const norm = 1 / (downR * downR + downI * downI);
  out[RS + polarisation] = (upR * upR + upI * upI) * norm;
  out[TS + polarisation] = 4 * eta0 * substrateEta * norm * Math.exp(-2 * fading);
  out[PHASE_S + polarisation] = Math.atan2(upI * downR - upR * downI, upR * downR + upI * downI);
}
