/** From a place near an extreme to the extreme itself, within a range of radii. */
import type { PolarSeries } from './polarSeries.ts';
import { derivativesAt, type Derivatives } from './seriesDerivatives.ts';

/** A place: radius moved to [−1, 1], and azimuth, rad. */
export interface PolarPlace {
  readonly x: number;
  readonly angle: number;
}

export interface Polished extends PolarPlace {
  readonly value: number;
}

const STEPS = 20;
const HALVINGS = 12;
/** Longest step in x and, times the shortest wave, in azimuth. */
const LONGEST = 0.25;
/** Relative gain below which the climb is over: a few roundings. */
const ENOUGH = 1e-15;

/** Newton's step uphill, or along the slope where the field does not bend down; x stays if it is held. */
function stepUp(at: Derivatives, sign: number, isHeld: boolean): readonly [number, number] {
  const [gx, ga] = [isHeld ? 0 : sign * at.x, sign * at.angle];
  const [hxx, hxa, haa] = [sign * at.xx, sign * at.xAngle, sign * at.angleAngle];
  const determinant = hxx * haa - hxa * hxa;
  if (!isHeld && hxx < 0 && determinant > 0) {
    return [(hxa * ga - haa * gx) / determinant, (hxa * gx - hxx * ga) / determinant];
  }
  // each direction by itself: Newton where it bends down, else as far as allowed
  const alone = (g: number, h: number): number => (h < 0 ? -g / h : Math.sign(g));
  return [gx === 0 ? 0 : alone(gx, hxx), ga === 0 ? 0 : alone(ga, haa)];
}

/**
 * Climbs to the nearest extreme of sign·field by Newton's method, never down; edges of the range included.
 *
 * Error: the value's is quadratic in the place's, so that rounding alone remains.
 *
 * @param sign 1 for a maximum, −1 for a minimum
 * @param low lowest x
 * @param high highest x
 */
export function polish(series: PolarSeries, start: PolarPlace, sign: 1 | -1, low: number, high: number): Polished {
  const basis = new Float64Array(3 * series.radialCount);
  const longest = LONGEST / Math.max(1, series.harmonics.at(-1) ?? 0);
  let { x, angle } = start;
  let at = derivativesAt(series, x, angle, basis);
  for (let step = 0; step < STEPS; step++) {
    const slope = sign * at.x;
    const isHeld = (x >= high && slope >= 0) || (x <= low && slope <= 0);
    let [dx, da] = stepUp(at, sign, isHeld);
    dx = Math.min(LONGEST, Math.max(-LONGEST, dx));
    da = Math.min(longest, Math.max(-longest, da));
    const before = at.value;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const nextX = Math.min(high, Math.max(low, x + dx));
      const next = derivativesAt(series, nextX, angle + da, basis);
      if (sign * (next.value - at.value) > 0) {
        x = nextX;
        angle += da;
        at = next;
        break;
      }
      dx /= 4;
      da /= 4;
    }
    if (!(sign * (at.value - before) > ENOUGH * Math.abs(at.value))) break;
  }
  return { x, angle, value: at.value };
}
