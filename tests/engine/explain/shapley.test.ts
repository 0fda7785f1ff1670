import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareProductInto } from '../../../engine/explain/shapley.ts';

/** Of sums of 120 products of five factors; worst of 2e4 random cases: 1.6e-15. */
const ROUNDING = 5e-15;

const shared = (a: readonly number[], b: readonly number[]): Float64Array =>
  shareProductInto(new Float64Array(a.length), Float64Array.from(a), Float64Array.from(b));
const product = (values: readonly number[]): number => values.reduce((all, value) => all * value, 1);

function permutations(count: number): number[][] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, i) => [...order.slice(0, i), count - 1, ...order.slice(i)]),
  );
}

/** Shapley's own definition: change the factors one after the other, in every order, and average. */
function byAllOrders(a: readonly number[], b: readonly number[]): number[] {
  const orders = permutations(a.length);
  const sums = a.map(() => 0);
  for (const order of orders) {
    const now = [...a];
    for (const i of order) {
      const before = product(now);
      now[i] = b[i]!;
      sums[i]! += (product(now) - before) / orders.length;
    }
  }
  return sums;
}

/** A zero is what a shadow or a place behind the source is. */
const factor = fc.oneof(fc.constant(0), fc.constant(1), fc.double({ min: 1e-3, max: 10, noNaN: true }));
const five = fc.array(factor, { minLength: 5, maxLength: 5 });
const largest = (a: readonly number[], b: readonly number[]): number =>
  product(a.map((value, i) => Math.max(value, b[i]!)));

describe('the shares of a difference of products', () => {
  test('are the mean over all orders of change', () => {
    fc.assert(
      fc.property(five, five, (a, b) => {
        const expected = byAllOrders(a, b);
        shared(a, b).forEach((value, i) =>
          expect(Math.abs(value - expected[i]!)).toBeLessThanOrEqual(ROUNDING * largest(a, b)),
        );
      }),
      { seed: 20260801, numRuns: 300 },
    );
  });

  test('sum to the difference, zeros included', () => {
    fc.assert(
      fc.property(five, five, (a, b) => {
        const sum = shared(a, b).reduce((all, value) => all + value, 0);
        expect(Math.abs(sum - (product(b) - product(a)))).toBeLessThanOrEqual(ROUNDING * largest(a, b));
      }),
      { seed: 20260802, numRuns: 1000 },
    );
  });

  test('turn their signs when the products change places', () => {
    fc.assert(
      fc.property(five, five, (a, b) => {
        const back = shared(b, a);
        shared(a, b).forEach((value, i) =>
          expect(Math.abs(value + back[i]!)).toBeLessThanOrEqual(ROUNDING * largest(a, b)),
        );
      }),
      { seed: 20260803, numRuns: 300 },
    );
  });

  test('follow their factors when these change places', () => {
    const there = shared([2, 3, 5, 1, 0.5], [1, 4, 2, 0, 0.7]);
    const turned = shared([0.5, 1, 5, 3, 2], [0.7, 0, 2, 4, 1]);
    there.forEach((value, i) => expect(turned[4 - i]).toBeCloseTo(value, 14));
  });

  test('are zero for a factor that stays', () => {
    expect([...shared([2, 1, 3], [2, 0, 7])][0]).toBe(0);
  });

  test('are all the difference for the only factor that changes', () => {
    expect([...shared([2, 1, 3], [2, 0, 3])]).toEqual([0, -6, 0]);
  });

  // closed form of two players: each gets its step times the mean of the other factor
  test('of two factors are step times mean', () => {
    const [x, y] = shared([2, 3], [5, 7]);
    expect(x).toBeCloseTo((5 - 2) * ((3 + 7) / 2), 14);
    expect(y).toBeCloseTo((7 - 3) * ((2 + 5) / 2), 14);
  });

  // closed form of three players from 1, 1, 1: (x − 1)(1/3 + (y + z)/6 + yz/3)
  test('of three factors from one follow the closed form', () => {
    const [x, y, z] = [0.3, 0.8, 1.9];
    const got = shared([1, 1, 1], [x, y, z]);
    expect(got[0]).toBeCloseTo((x - 1) * (1 / 3 + (y + z) / 6 + (y * z) / 3), 14);
    expect(got[1]).toBeCloseTo((y - 1) * (1 / 3 + (x + z) / 6 + (x * z) / 3), 14);
    expect(got[2]).toBeCloseTo((z - 1) * (1 / 3 + (x + y) / 6 + (x * y) / 3), 14);
  });
});
