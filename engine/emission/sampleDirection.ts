/** Directions drawn over the sphere in proportion to, or weighted by, an emission law. */
import { emittedIntensity, type EmissionLaw } from './emissionLaw.ts';

/**
 * Draws a direction about an axis and returns its weight, so that the mean of weight·f(direction)
 * over uniform (u1, u2) is ∫ I f dΩ.
 *
 * The cosine power is inverted exactly (weight 1); other laws are drawn evenly over the sphere and weighted by 4π I.
 *
 * @param out [3] unit direction; overwritten
 * @param axis [3] unit vector
 * @param u1 [1] in [0, 1)
 * @param u2 [1] in [0, 1)
 * @returns [1] weight
 */
export function sampleDirectionInto(
  out: Float64Array,
  law: EmissionLaw,
  axis: Float64Array,
  u1: number,
  u2: number,
): number {
  const cosEmit = law.kind === 'cosine' ? (1 - u1) ** (1 / (law.power + 1)) : 1 - 2 * u1;
  turnedDirectionInto(out, axis, cosEmit, 2 * Math.PI * u2);
  return law.kind === 'cosine' ? 1 : 4 * Math.PI * emittedIntensity(law, cosEmit);
}

/** The direction at a polar angle (by its cosine) and a turn about an axis. Overwrites out, which must not alias axis. */
function turnedDirectionInto(out: Float64Array, axis: Float64Array, cosPolar: number, turn: number): void {
  const [ax, ay, az] = axis as unknown as [number, number, number];
  // orthonormal pair without a branch: Duff et al., J. Computer Graphics Techniques 6 (2017) 1
  const sign = az >= 0 ? 1 : -1;
  const a = -1 / (sign + az);
  const b = ax * ay * a;
  const sinPolar = Math.sqrt(Math.max(0, 1 - cosPolar * cosPolar));
  const p = sinPolar * Math.cos(turn);
  const q = sinPolar * Math.sin(turn);
  out[0] = p * (1 + sign * ax * ax * a) + q * b + cosPolar * ax;
  out[1] = p * sign * b + q * (sign + ay * ay * a) + cosPolar * ay;
  out[2] = -p * sign * ax - q * ay + cosPolar * az;
}
