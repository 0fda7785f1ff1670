/**
 * Five-point Gauss–Lobatto quadrature on [0, 1] and the Simpson rule embedded in its nodes 0, 2, 4.
 *
 * Exact to degree 7; both ends are nodes, so that neighbouring panels share them and extremes at
 * an edge are sampled.
 *
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.6
 */
const INNER = Math.sqrt(3 / 7);

export const LOBATTO_NODES: readonly number[] = [0, (1 - INNER) / 2, 0.5, (1 + INNER) / 2, 1];
export const LOBATTO_WEIGHTS: readonly number[] = [1 / 20, 49 / 180, 16 / 45, 49 / 180, 1 / 20];
/** Simpson's rule on the same nodes. */
export const SIMPSON_ON_LOBATTO: readonly number[] = [1 / 6, 0, 2 / 3, 0, 1 / 6];
/** Intervals in a panel. */
export const PANEL = 4;
