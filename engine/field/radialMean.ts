/** Mean over a ring-shaped area of the polynomials in radius: what makes a column's mean one sum. */
import { chebyshevInto, unitPlace } from './chebyshev.ts';
import { gaussLegendre } from './gaussLegendre.ts';

/**
 * Mean of each T_k over the disc between the radii, flat area.
 *
 *     ∫ T_k(x(r)) r dr / ∫ r dr
 *
 * Error: none but rounding.
 */
export function radialMeans(count: number, inner: number, outer: number): Float64Array {
  const { nodes, weights } = gaussLegendre(Math.ceil(count / 2) + 1, inner, outer);
  const means = new Float64Array(count);
  const row = new Float64Array(count);
  nodes.forEach((r, i) => {
    chebyshevInto(row, 0, count, unitPlace(r, inner, outer));
    for (let k = 0; k < count; k++) means[k]! += (weights[i]! * r * row[k]!) / ((outer ** 2 - inner ** 2) / 2);
  });
  return means;
}
