/** Splits work among workers so that all end at about the same time. */

/**
 * Gives each piece, dearest first, to the worker with the least to do: the longest is at most 4/3 of the best.
 *
 * @param costs of each piece, in any unit
 * @returns for each worker the indices of its pieces, ascending; the same for the same costs
 * @see Graham, SIAM J. Appl. Math. 17 (1969) 416, for the bound
 */
export function shareByCost(costs: readonly number[], workerCount: number): number[][] {
  const shares = Array.from({ length: workerCount }, (): number[] => []);
  const loads = shares.map(() => 0);
  const dearestFirst = costs.map((_, i) => i).toSorted((i, j) => costs[j]! - costs[i]! || i - j);
  for (const i of dearestFirst) {
    const least = loads.indexOf(Math.min(...loads));
    shares[least]!.push(i);
    loads[least]! += costs[i]!;
  }
  return shares.map((share) => share.toSorted((i, j) => i - j));
}
