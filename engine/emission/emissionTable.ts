/** Measured emission: intensity against angle, normalised to 1 over the sphere. */

/** Piecewise linear in the angle, constant beyond the measured range's first angle, zero beyond its last. */
export interface EmissionTable {
  /** [n] rising angles from the axis, rad */
  readonly angles: Float64Array;
  /** [n] 1/sr */
  readonly intensities: Float64Array;
}

/** ∫ (p + q t) sin t dt from a to b. */
function sineMoment(p: number, q: number, a: number, b: number): number {
  return p * (Math.cos(a) - Math.cos(b)) + q * (Math.sin(b) - b * Math.cos(b) - Math.sin(a) + a * Math.cos(a));
}

/**
 * Normalises measured intensities so that they integrate to 1 over the sphere, in closed form.
 *
 * @param angles [rad] rising, from 0 to π; below the first the first intensity holds, beyond the last there is none
 * @param intensities in any unit, at least one above zero
 */
export function emissionTable(angles: readonly number[], intensities: readonly number[]): EmissionTable {
  let total = sineMoment(intensities[0] ?? 0, 0, 0, angles[0] ?? 0);
  for (let i = 0; i + 1 < angles.length; i++) {
    const [a, b] = [angles[i] ?? 0, angles[i + 1] ?? 0];
    const [f, g] = [intensities[i] ?? 0, intensities[i + 1] ?? 0];
    const q = (g - f) / (b - a);
    total += sineMoment(f - q * a, q, a, b);
  }
  const scale = 1 / (2 * Math.PI * total);
  return { angles: Float64Array.from(angles), intensities: Float64Array.from(intensities, (value) => value * scale) };
}

/**
 * Intensity at a direction.
 *
 * @param cosEmit [1] cosine of the angle from the axis
 * @returns [1/sr]
 */
export function tableIntensity({ angles, intensities }: EmissionTable, cosEmit: number): number {
  const angle = Math.acos(Math.min(1, Math.max(-1, cosEmit)));
  const last = angles.length - 1;
  if (angle <= angles[0]!) return intensities[0]!;
  if (angle > angles[last]!) return 0;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (angles[middle]! <= angle) low = middle;
    else high = middle;
  }
  const share = (angle - angles[low]!) / (angles[high]! - angles[low]!);
  return intensities[low]! + share * (intensities[high]! - intensities[low]!);
}
