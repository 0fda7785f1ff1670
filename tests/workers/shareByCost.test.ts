import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareByCost } from '../../workers/shareByCost.ts';

const anyCosts = fc.array(fc.integer({ min: 1, max: 1000 }), { maxLength: 60 });

const loadsOf = (shares: readonly number[][], costs: readonly number[]): number[] =>
  shares.map((share) => share.reduce((sum, i) => sum + costs[i]!, 0));

test('every piece goes to exactly one worker', () => {
  fc.assert(
    fc.property(anyCosts, fc.integer({ min: 1, max: 8 }), (costs, workers) => {
      const all = shareByCost(costs, workers).flat();
      expect(all.toSorted((a, b) => a - b)).toEqual(costs.map((_, i) => i));
    }),
    { seed: 4 },
  );
});

test('no worker has more than an even share and one piece', () => {
  fc.assert(
    fc.property(anyCosts, fc.integer({ min: 1, max: 8 }), (costs, workers) => {
      const even = costs.reduce((sum, cost) => sum + cost, 0) / workers;
      const most = Math.max(...loadsOf(shareByCost(costs, workers), costs));
      expect(most).toBeLessThanOrEqual(even + Math.max(0, ...costs));
    }),
    { seed: 5 },
  );
});

test('one dear piece keeps a worker busy while the other takes the cheap ones', () => {
  expect(shareByCost([1, 6, 1, 1, 1, 1, 1], 2)).toEqual([[1], [0, 2, 3, 4, 5, 6]]);
});
