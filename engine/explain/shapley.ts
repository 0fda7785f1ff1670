/** Sharing out the difference of two products among their factors. */

/** Gauss-Legendre nodes on 0 … 1 and their weights: three are exact up to the fifth power. */
const NODES = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)] as const;
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;
/** Factors that a product may have: with six the integrand is of the fifth power. */
export const MOST_FACTORS = 6;

/**
 * What each factor contributes when the product goes from Π aᵢ to Π bᵢ: the mean over all orders in
 * which the factors can change one after the other (Shapley value).
 *
 *     φᵢ = Σ_S |S|! (n−1−|S|)! / n! · (bᵢ − aᵢ) Π_{j∈S} bⱼ Π_{j∉S, j≠i} aⱼ
 *        = (bᵢ − aᵢ) ∫₀¹ Π_{j≠i} ((1−t) aⱼ + t bⱼ) dt
 *
 * The second line holds because a product is linear in each factor and |S|! (n−1−|S|)! / n! =
 * ∫ t^|S| (1−t)^(n−1−|S|) dt. Its integrand has the power n−1, which the rule here integrates exactly
 * for n ≤ MOST_FACTORS. Then Σ φᵢ = Π bᵢ − Π aᵢ, a factor that doesn't change gets 0, exchanging a
 * and b turns the signs, and no order is preferred. Logarithmic means (LMDI) add up as well but need
 * positive factors; a shadow or a place behind the source is a zero, which this form takes as it is.
 *
 * @param out [n] overwritten; must not alias
 * @param a [n] factors of the first product
 * @param b [n] factors of the second
 * @see L. S. Shapley, A value for n-person games, in Contributions to the Theory of Games II (1953) 307;
 * G. Owen, Multilinear extensions of games, Management Science 18 (1972) 64, for the integral;
 * B. W. Ang, Energy Policy 33 (2005) 867, for LMDI (all from memory)
 */
export function shareProductInto(out: Float64Array, a: Float64Array, b: Float64Array): Float64Array {
  for (let i = 0; i < out.length; i++) {
    const step = b[i]! - a[i]!;
    let integral = 0;
    for (let k = 0; k < NODES.length && step !== 0; k++) {
      const t = NODES[k]!;
      let others = WEIGHTS[k]!;
      for (let j = 0; j < out.length; j++) if (j !== i) others *= a[j]! + t * (b[j]! - a[j]!);
      integral += others;
    }
    out[i] = step * integral;
  }
  return out;
}
