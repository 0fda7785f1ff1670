/** Value, slope and bend of a polar series at a place. */
import { chebyshevDerivativesInto } from './chebyshev.ts';
import type { PolarSeries } from './polarSeries.ts';

/** Derivatives by x, the radius moved to [−1, 1], and by the azimuth. */
export interface Derivatives {
  value: number;
  x: number;
  angle: number;
  xx: number;
  xAngle: number;
  angleAngle: number;
}

/**
 * Differentiates the series term by term.
 *
 * @param basis [3·radialCount] scratch, overwritten
 */
export function derivativesAt(series: PolarSeries, x: number, angle: number, basis: Float64Array): Derivatives {
  const { radialCount: K, harmonics, cosine, sine } = series;
  chebyshevDerivativesInto(basis, K, x);
  const at: Derivatives = { value: 0, x: 0, angle: 0, xx: 0, xAngle: 0, angleAngle: 0 };
  for (let i = 0; i < harmonics.length; i++) {
    const m = harmonics[i]!;
    const [cos, sin] = [Math.cos(m * angle), Math.sin(m * angle)];
    let [f, fx, fxx, g, gx] = [0, 0, 0, 0, 0];
    for (let k = 0, o = i * K, b = 0; k < K; k++, o++, b += 3) {
      const along = cosine[o]! * cos + sine[o]! * sin;
      const across = sine[o]! * cos - cosine[o]! * sin;
      f += along * basis[b]!;
      fx += along * basis[b + 1]!;
      fxx += along * basis[b + 2]!;
      g += across * basis[b]!;
      gx += across * basis[b + 1]!;
    }
    at.value += f;
    at.x += fx;
    at.xx += fxx;
    at.angle += m * g;
    at.xAngle += m * gx;
    at.angleAngle -= m * m * f;
  }
  return at;
}
