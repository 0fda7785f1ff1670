/** Draws that atoms and molecules need: directions, speeds. Exact, without trigonometry. */
import { uniform, type Random } from './random.ts';

/**
 * A direction drawn evenly over the sphere. Overwrites out[at], out[at + 1], out[at + 2].
 *
 * @see G. Marsaglia, Choosing a point from the surface of a sphere, Ann. Math. Stat. 43 (1972) 645
 */
export function drawDirectionInto(out: Float64Array, at: number, random: Random): void {
  for (;;) {
    const x = 2 * uniform(random) - 1;
    const y = 2 * uniform(random) - 1;
    const s = x * x + y * y;
    if (s >= 1) continue;
    const f = 2 * Math.sqrt(1 - s);
    out[at] = f * x;
    out[at + 1] = f * y;
    out[at + 2] = 1 - 2 * s;
    return;
  }
}

/**
 * Speed in a Maxwell distribution, over its most probable speed.
 *
 *     f(x) = (4/√π) x² e^(−x²):  x² is the sum of an exponential and half the square of a normal variate
 */
export function drawMaxwellSpeed(random: Random): number {
  for (;;) {
    const x = 2 * uniform(random) - 1;
    const y = 2 * uniform(random) - 1;
    const s = x * x + y * y;
    // polar method: x √(−2 ln s / s) is a normal variate
    if (s < 1) return Math.sqrt(-Math.log(uniform(random)) - (x * x * Math.log(s)) / s);
  }
}

/**
 * Speed in a Maxwell distribution weighted by the speed, over its most probable speed: molecules that cross a plane.
 *
 *     f(x) = 2 x³ e^(−x²):  x² is the sum of two exponential variates
 */
export function drawFluxSpeed(random: Random): number {
  return Math.sqrt(-Math.log(uniform(random) * uniform(random)));
}
