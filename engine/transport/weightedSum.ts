/** Sums of columns by their filaments' masses. */
import type { Column } from './column.ts';

/** Overwrites `sum` with Σ factors[k] · columns[k], always in the same order; those that are empty are left out. */
export function weightedSum(sum: Float64Array, columns: readonly Column[], factors: Float64Array): Float64Array {
  sum.fill(0);
  const full = columns.flatMap(({ deposit }, k) => (deposit.length > 0 ? [{ deposit, factor: factors[k]! }] : []));
  let k = 0;
  for (; k + 4 <= full.length; k += 4) {
    const [p, q, r, s] = [full[k]!, full[k + 1]!, full[k + 2]!, full[k + 3]!];
    addFourInto(sum, [p.deposit, q.deposit, r.deposit, s.deposit], [p.factor, q.factor, r.factor, s.factor]);
  }
  for (; k < full.length; k++) addScaledInto(sum, full[k]!.deposit, full[k]!.factor);
  return sum;
}

type Four<T> = readonly [T, T, T, T];

/** out += Σ factors[k] · columns[k], one after the other. */
function addFourInto(out: Float64Array, [p, q, r, s]: Four<Float64Array>, [a, b, c, d]: Four<number>): void {
  for (let i = 0; i < out.length; i++) out[i] = out[i]! + a * p[i]! + b * q[i]! + c * r[i]! + d * s[i]!;
}

/** out += values. */
export function addInto(out: Float64Array, values: Float64Array): void {
  for (let i = 0; i < out.length; i++) out[i]! += values[i]!;
}

/** out += factor · values. */
export function addScaledInto(out: Float64Array, values: Float64Array, factor: number): void {
  if (factor === 0) return;
  for (let i = 0; i < out.length; i++) out[i]! += factor * values[i]!;
}
