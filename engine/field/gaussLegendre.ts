/** Gauss–Legendre quadrature. */

export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const known = new Map<number, Quadrature>();

/** Nodes and weights on [−1, 1] by Newton's method on the Legendre polynomial. */
function unitRule(count: number): Quadrature {
  const found = known.get(count);
  if (found) return found;
  const rule = { nodes: new Float64Array(count), weights: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0, change = 1; step < 20 && Math.abs(change) > 1e-15; step++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= count; k++) [p, before] = [((2 * k - 1) * x * p - (k - 1) * before) / k, p];
      slope = (count * (x * p - before)) / (x * x - 1);
      change = p / slope;
      x -= change;
    }
    rule.nodes[i] = x;
    rule.weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  known.set(count, rule);
  return rule;
}

/**
 * Rule on [from, to], nodes ascending; exact to degree 2·count − 1.
 *
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 25.4.29
 */
export function gaussLegendre(count: number, from: number, to: number): Quadrature {
  const { nodes, weights } = unitRule(count);
  const half = (to - from) / 2;
  return {
    nodes: nodes.map((x) => (from + to) / 2 + half * x),
    weights: weights.map((w) => half * w),
  };
}
