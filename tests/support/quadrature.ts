/** Gauss–Legendre quadrature for tests: independent of the engine's own rules. */

export interface Rule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Gauss–Legendre nodes and weights on [from, to], by Newton's method on the Legendre polynomial.
 *
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 25.4.29
 */
export function gaussLegendre(count: number, from = -1, to = 1): Rule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= count; k++) [p, before] = [((2 * k - 1) * x * p - (k - 1) * before) / k, p];
      slope = (count * (x * p - before)) / (x * x - 1);
      const change = p / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes.push(from + ((to - from) * (1 - x)) / 2);
    weights.push((to - from) / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/** ∫ f from a to b by a rule over each of the panels between neighbouring edges. */
export function integrate(f: (x: number) => number, edges: readonly number[], count = 32): number {
  let sum = 0;
  for (let i = 0; i + 1 < edges.length; i++) {
    const { nodes, weights } = gaussLegendre(count, edges[i], edges[i + 1]);
    nodes.forEach((x, k) => (sum += (weights[k] ?? 0) * f(x)));
  }
  return sum;
}
